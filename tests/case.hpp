#pragma once

#include "criteria/load.hpp"
#include "facts/coupon_record.hpp"
#include "facts/log_line.hpp"
#include "judge/judgement.hpp"
#include "report/sentence.hpp"

#include <memory>
#include <string>
#include <vector>

namespace beadbook::test {

/// A coupon in the words of the record, for tests:
///   coupon "joint=groove thickness=0.150in", log {"RT gas pore 0.050 at 1"}
struct CaseText {
    std::string coupon;
    std::vector<std::string> log;
    std::string exams = "VT MT PT RT"; ///< done, besides those that the log names
};

/// The judged case, with what a report needs.
struct JudgedCase {
    std::shared_ptr<const CriteriaSet> set;
    Coupon coupon;
    std::vector<ExamDone> exams;
    std::vector<Indication> indications;
    Judgement judgement;

    /// "1 accept, 2 reject, 3 cannot say"
    std::string verdicts() const;
    Case view() const { return {*set, coupon, exams, indications, set->unit}; }
    /// Every finding's sentence of a class.
    std::string sentences(const std::string &class_id) const;
};

CouponRecord coupon_from(const std::string &fields, Unit unit);
JudgedCase judged(std::shared_ptr<const CriteriaSet> set, const CaseText &text);
JudgedCase judged(const std::string &shipped, const CaseText &text);

/// What engine `first` would have been the first to judge otherwise, by the engine before it.
std::string verdicts_before(int first, const JudgedCase &c);

/// A set from YAML that must load.
std::shared_ptr<const CriteriaSet> set_from(const std::string &yaml);
/// The smallest head of a set with classes A and B (inches, T), to put rules under.
std::string head();

} // namespace beadbook::test
