#pragma once

#include "operations/grade_standing.hpp"
#include "operations/graded_tests.hpp"
#include "operations/rule_words.hpp"

namespace beadbook {

/// What no reason sets aside: the coupon is no passed test.
struct Impediment {
    std::string text;
    std::optional<Remedy> remedy;
};
/// All of them as one refusal.
Refusal refusal_of(const std::vector<Impediment> &impediments);

/// Of a test as it was welded, whether here or elsewhere: its day is not known or is to come, it was
/// practice, its mechanical tests failed, nobody knows the process. `name` is how sentences call it.
std::vector<Impediment> impediments_of(const CouponRecord &test, const std::string &name, Day today);

/// Words of the test that these rules do not know, each with what they expect. One that stands on a coupon of
/// the record, and that they ask of some tests only, can be taken off it: it may be in the way of nothing.
std::vector<Impediment> unknown_words(const RangeRules &rules, const Weld &test, const std::string &name,
                                      const CouponRecord *on_record = nullptr);

/// Why a coupon that proved something of a welder proves it no longer, as the record stands now; empty if it
/// does. Its grade or what was corrected since may say so.
std::string no_longer_proves(const CouponState &coupon, const std::string &welder);

/// What one that passed lacks by itself to qualify by these rules, or to stand in a retest: a verdict that is
/// no accept, an examination, a description that is so no more.
std::vector<Shortcoming> lacks_of_pass(const RangeRules &rules, const GradedTests::Test &test,
                                       const Weld &weld);

/// What one process of a coupon proves.
struct PartEvidence {
    std::size_t part = 0;
    Weld weld;
    Evidence evidence;
    std::vector<Shortcoming> lacks; ///< what the rules ask beyond it; a reason sets it aside
};

/// What a coupon proves of its welder by some rules.
struct TestEvidence {
    CouponRecord test; ///< in the rules' own words
    Day welded;        ///< if nothing impedes
    std::vector<Impediment> impediments;
    std::vector<PartEvidence> parts; ///< one a process
};

/// The one gate that everything passes by which a coupon qualifies a welder, or renews or extends what a
/// welder holds. Impediments: it was not graded passed, and those of impediments_of. Lacks: a grade that is
/// to be given again, a verdict, taken afresh, that is no accept, examinations that the rules ask and that
/// are not on record or do not count, and whatever a failed coupon before it asks or leaves unknown. Throws
/// DataError: a word in the coupon's stead that contradicts it.
TestEvidence evidence(Office &office, const GradedTests &tests, const CouponState &coupon,
                      const RangeRules &rules, const RuleWords &words = {});

/// Coupons that are given to renew or extend what a welder holds in one process.
struct GivenCoupons {
    std::vector<Evidence> evidence; ///< in the order given
    std::vector<Day> welded;
    std::vector<Shortcoming> lacks;
};
/// Asks the gate about each. Throws Refusal with all impediments of all coupons: also a coupon of another
/// welder or process, or given twice.
GivenCoupons evidence_of(Office &office, const GradedTests &tests, const std::string &mark,
                         const std::string &process, const RangeRules &rules,
                         const std::vector<std::string> &coupons, const RuleWords &words = {});

/// What was set aside, and why; both are kept and printed.
struct SetAside {
    std::vector<Shortcoming> what;
    std::string why; ///< empty if nothing had to be
};
/// Something lacks that a reason would set aside, and none is given (field "override").
struct NotSetAside : Refusal {
    NotSetAside(Refusal refusal, std::vector<std::string> lacking)
        : Refusal(std::move(refusal)), lacks(std::move(lacking)) {}
    std::vector<std::string> lacks; ///< a sentence each
};
/// Throws NotSetAside, which `opening` begins.
SetAside set_aside(const std::string &opening, const std::vector<Shortcoming> &lacks, const RangeRules &rules,
                   const std::string &why);
/// A reason that was not needed.
void note_reason_unused(const SetAside &aside, const std::string &why, std::vector<std::string> &notes);

} // namespace beadbook
