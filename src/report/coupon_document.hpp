#pragma once

#include "operations/looking.hpp"
#include "report/document.hpp"

namespace beadbook {

struct Registered {
    CouponRecord coupon;
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
};
Document document_of(const CouponList &list);
/// That there is no coupon, or none of those asked for.
Document nothing_found(bool of_all);
/// One coupon: what is known, exams with their finds, remarks, last verdict, grade.
Document document_of(const CouponSheet &sheet);
/// Entries as they were made, each with what it says, and otherwise than before.
Document document_of(const std::vector<Entry> &history);

/// "sure in spite of depth-over-wall": what somebody set aside as meant so; empty if nothing was.
std::string sure_text(const std::vector<std::string> &rules);

/// Finds that were withdrawn or corrected, a line each with the reason and who gave it.
void add_taken_back(Document &doc, const std::vector<TakenBack> &finds);

/// "accept" in its tone.
Words verdict_words(Verdict verdict);
/// "against the verdict and failed mechanical tests"; empty if it is against neither.
std::string against_text(const Grade &grade);
/// What is known of the mechanical tests, in a line: that they failed or passed, else by which rules they are
/// asked and lacking; empty: none are on record or asked.
Words mechanical_words(const std::string &result, const std::vector<std::string> &asked_by);
/// "passed for class B by J. Quay: remark", and what it was against.
std::string grade_text(const Grade &grade);
/// The same with the reason why it must be given again, if it must.
Words grade_words(const Grade &grade, const std::string &again);

} // namespace beadbook
