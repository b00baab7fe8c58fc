#pragma once

#include "report/coupon_document.hpp"
#include "report/exam_document.hpp"

#include <nlohmann/json_fwd.hpp>

namespace beadbook {

std::string json_text(const Registered &done, const std::vector<std::string> &notes = {});
std::string json_text(const RegisteredMany &done, const std::vector<std::string> &notes = {});
std::string json_text(const Changed &done, const std::vector<std::string> &notes = {});
std::string json_text(const ChangedMany &done, const std::vector<std::string> &notes = {});
std::string json_text(const CouponWithdrawn &done, const std::vector<std::string> &notes = {});
std::string json_text(const CouponRestored &done, const std::vector<std::string> &notes = {});
std::string json_text(const Moved &done, const std::vector<std::string> &notes = {});
std::string json_text(const Remark &done, const std::vector<std::string> &notes = {});
std::string json_text(const CouponList &list, const std::vector<std::string> &notes = {});
std::string json_text(const CouponSheet &sheet, const std::vector<std::string> &notes = {});
std::string json_text(const std::vector<Entry> &history, const std::vector<std::string> &notes = {});

std::string json_text(const ExamsRecorded &done, const std::vector<std::string> &notes = {});
std::string json_text(const SheetTaken &done, const std::vector<std::string> &notes = {});
std::string json_text(const ExamRecorded &done, const std::vector<std::string> &notes = {});
std::string json_text(const Logged &done, const std::vector<std::string> &notes = {});
std::string json_text(const ExamFinishedNow &done, const std::vector<std::string> &notes = {});
std::string json_text(const ExamsFinished &done, const std::vector<std::string> &notes = {});
std::string json_text(const ExamReopened &done, const std::vector<std::string> &notes = {});
std::string json_text(const FinishedAll &done, const std::vector<std::string> &notes = {});
std::string json_text(const Corrected &done, const std::vector<std::string> &notes = {});
std::string json_text(const Withdrawn &done, const std::vector<std::string> &notes = {});

} // namespace beadbook
