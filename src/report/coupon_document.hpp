#pragma once

#include "operations/looking.hpp"
#include "report/document.hpp"

namespace beadbook {

struct Registered {
    CouponRecord coupon;
    std::string next; ///< the exam that it needs first
};
struct RegisteredMany {
    std::vector<CouponRecord> coupons;
};
struct Changed {
    CouponRecord coupon;
};
struct ChangedMany {
    std::vector<CouponRecord> coupons;
};
struct CouponWithdrawn {
    CouponRecord coupon;
};
struct CouponRestored {
    CouponRecord coupon;
};

Document document_of(const Registered &done);
Document document_of(const RegisteredMany &done);
Document document_of(const Changed &done);
Document document_of(const ChangedMany &done);
Document document_of(const CouponWithdrawn &done);
Document document_of(const CouponRestored &done);
Document document_of(const Remark &remark);

/// A list of coupons, a line each.
struct CouponList {
    std::vector<CouponLine> coupons;
    bool of_all = true; ///< nothing narrower was asked for
    bool more = false;  ///< older ones are left out
};
Document document_of(const CouponList &list);
/// That there is no coupon, or none of those asked for.
Document nothing_found(bool of_all);
/// What is told of a coupon, a fact a line, the welder's name beside the mark.
void add_facts(Document &doc, const CouponRecord &coupon, const std::string &welder_name);
/// The mark, with the name behind it where there is one: "L1, J. Reef".
std::string welder_words(const std::string &mark, const std::string &name);
/// One coupon: what is known, exams with their finds, remarks, last verdict, grade.
Document document_of(const CouponSheet &sheet);
/// Entries as they were made, each with what it says, and otherwise than before.
Document document_of(const std::vector<Entry> &history);

/// "sure in spite of depth-over-wall": what somebody set aside as meant so; empty if nothing was.
std::string sure_text(const std::vector<std::string> &rules);

/// Finds that were withdrawn or corrected, a line each with the reason and who gave it.
void add_taken_back(Document &doc, const std::vector<TakenBack> &things);
std::string taken_back_text(const TakenBack &one);

/// What the coupon is said to be otherwise since `since` ("its grade", "its last verdict"), a line each.
void add_described_since(Document &doc, const std::vector<DescribedSince> &changes, const std::string &since);

/// Each method once an exam, with "(open)" or "(does not count)" behind it.
std::string exams_in_a_cell(const std::vector<ExamAtAGlance> &exams);
/// The verdict of a line with what stands against it or bears on it: that mechanical tests failed, that the
/// set is none of those shipped.
Words verdict_in_a_cell(const CouponLine &one);
/// ", with cautions, words written beside it" behind a verdict, with what stands between; nothing of none.
/// The words are told of an accept alone.
Words told_beside(bool cautions, bool written, const std::string &between);
/// The same of what was judged.
Words told_beside(const Judged &judged, const std::string &between);
/// ", position said otherwise since it was examined", with what stands between; nothing of none.
Words said_otherwise_behind(std::vector<std::string> fields, const std::string &between);

/// "J. Quay", or "J. Quay, signed in".
std::string who_words(const Stamp &stamp);
/// The decision, and what stands against it; empty: there is no grade.
std::string grade_cell(const CouponLine &one);
/// "accept" in its tone.
Words verdict_words(Verdict verdict);
/// "against the verdict and failed mechanical tests"; empty if it is against neither.
std::string against_text(const Grade &grade);
/// What is known of the mechanical tests, in a line: that they failed or passed, else by which rules they are
/// asked and lacking; empty: none are on record or asked.
Words mechanical_words(const std::string &result, const Stamp &said,
                       const std::vector<std::string> &asked_by);
/// "passed for class B by J. Quay: remark", and what it was against.
std::string grade_text(const Grade &grade);
/// The same with why it must be given again, or that it was given by another set than the coupon's own.
Words grade_words(const Grade &grade, const GradeStanding &standing);
/// That in few words, behind a grade in a cell; nothing of one that stands.
Words grade_mark(const GradeStanding &standing);
/// "by SET, look at it again": it was given by another set than the coupon's own; empty: it was not.
std::string by_other_text(const GradeStanding &standing);

} // namespace beadbook
