#pragma once

#include "operations/judging.hpp"

namespace beadbook {

/// A set that a page rests on, and how sure its limits are.
struct PaperBasis {
    std::string title, edition, hash;
    StandingCount limits; ///< of every rule, required exam and relevance clause, each once
    std::string own_file; ///< that it is none of those shipped; empty: it is one
};
/// What stands at the foot of every page on paper: when, from which state of the record, by what.
struct PaperFoot {
    std::string head; ///< hash of the newest entry
    Day on;
    std::vector<PaperBasis> by; ///< each set once, by title
};
PaperFoot paper_foot(Office &office, const std::vector<std::shared_ptr<const CriteriaSet>> &sets);
/// The sets that coupons name; of one that cannot be had nothing is said.
std::vector<std::shared_ptr<const CriteriaSet>> sets_of(Office &office,
                                                        const std::vector<CouponRecord> &coupons);

/// One exam with its coupon, for a report of its own.
struct ExamPaper {
    CouponState coupon;
    int number = 0;
    std::string welder_name = {}; ///< as enrolled today; empty: the welder is not

    const ExamRecord &exam() const { return coupon.needed_exam(number); }
};
/// Throws DataError: no such coupon or exam.
ExamPaper exam_paper(Office &office, const std::string &mark, int number);

/// Coupons to be labelled.
struct CouponLabels {
    std::vector<CouponRecord> coupons;
    std::string at; ///< what is put before "/coupon/MARK" in the code; empty: the code is the mark alone
};
/// The marks, or else those that are asked for, without withdrawn ones. Throws DataError: no such coupon, or
/// nothing to label.
CouponLabels coupon_labels(Office &office, const std::vector<std::string> &marks, const Selection &of,
                           const std::string &at);

/// What the code of a label says.
std::string code_text(const CouponLabels &labels, const CouponRecord &coupon);

} // namespace beadbook
