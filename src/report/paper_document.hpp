#pragma once

#include "operations/paper.hpp"
#include "report/coupon_document.hpp"
#include "report/judgement_document.hpp"
#include "report/summary_document.hpp"

namespace beadbook {

/// The document as it goes on paper: below it by which criteria (edition, hash, standing), the head of the
/// record, the day, lines to sign on, and the caution, each once.
Document on_paper(Document document, const PaperFoot &foot, std::vector<std::string> signatures = {});

/// Several that go on paper as one file, each on sheets that name it.
Document each_on_its_sheets(std::string title, std::vector<Document> documents);

/// Everything on record of a coupon, and its verdict explained if it can be.
Document coupon_page(const CouponSheet &sheet, const JudgedOrNot &judged,
                     const std::optional<Explained> &explained);

/// One examination: of what, by whom, how, and what it found, with the map of these finds.
Document document_of(const ExamPaper &paper);

/// A cohort: what came out, who was graded how, and each of its coupons. `names` has those of its welders who
/// are enrolled, by mark.
Document cohort_page(const Summaries &summary, const CouponList &coupons,
                     const std::map<std::string, std::string> &names);

} // namespace beadbook
