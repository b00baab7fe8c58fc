#pragma once

#include "operations/examining.hpp"
#include "operations/log_sheet.hpp"
#include "operations/logging.hpp"
#include "operations/many.hpp"
#include "operations/moving.hpp"
#include "report/document.hpp"

namespace beadbook {

struct ExamRecorded {
    std::string coupon;
    ExamRecord exam;
};
struct ExamFinishedNow {
    std::string coupon;
    ExamRecord exam;
};
struct ExamReopened {
    std::string coupon;
    ExamRecord exam;
};
struct FinishedAll {
    int exams = 0;
};
struct Corrected {
    IndicationRecord now;
};
struct Withdrawn {
    std::string what; ///< exam or indication
    int number = 0;
};

Document document_of(const ExamRecorded &done);
Document document_of(const ExamsRecorded &done);
Document document_of(const SheetTaken &done);
Document document_of(const Logged &done);
Document document_of(const ExamFinishedNow &done);
Document document_of(const ExamsFinished &done);
Document document_of(const ExamReopened &done);
Document document_of(const FinishedAll &done);
Document document_of(const Corrected &done);
Document document_of(const Withdrawn &done);
Document document_of(const Moved &done);

} // namespace beadbook
