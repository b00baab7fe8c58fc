#pragma once

#include "operations/graded_tests.hpp"

namespace beadbook {

/// What rules for welders ask after a test that failed, until one of its kind counts again.
struct NextRetest {
    std::string rules, process;
    int coupons = 0;               ///< of its kind, that must pass yet, welded at once; 0: not known here
    int after_training = 0;        ///< the same once the welder was trained; 0: not known here
    bool trained = false;          ///< and was, so that `coupons` are those
    bool training_first = false;   ///< too many failed: nothing counts before
    std::optional<Authority> from; ///< of what is asked next
    /// What they accept a test by, "asme-ix-tests", where they do not by what this one failed by: it counts
    /// as a failed one of its kind all the same. Empty: they do.
    std::vector<std::string> takes = {};
    /// Methods, or mechanical, by all of which a retest is examined, as its test failed by them and the rules
    /// ask that. Empty: they do not, or training came between.
    std::vector<std::string> exams = {};
    /// One that passed since and is no retest of it.
    struct Otherwise {
        std::string coupon;
        std::vector<std::string> in; ///< as welded_otherwise (test_likeness.hpp)
    };
    std::vector<Otherwise> otherwise = {};
};

/// As the next coupon of its kind would find it: it is counted as one that passed. Of a test that failed.
NextRetest asked_next(const RangeRules &rules, const GradedTests &tests, const GradedTests::Retest &retest);
/// ", examined by RT, by which it failed, besides what every such test needs"; empty where no methods are
/// asked.
std::string exams_words(const NextRetest &next);

/// Whether a test that is judged by this set may be one of these rules for the welder.
bool may_be_test_by(const RangeRules &rules, const CouponRecord &test, const std::string &set,
                    const WelderState &welder);
/// Whether the welder is to be qualified by the rules: he holds something by them, or another test of his is
/// by criteria that they take.
bool is_meant_by(const RangeRules &rules, Office &office, const GradedTests &tests,
                 const WelderState &welder);

/// Of each test of the welder's that failed last and none is done with: by the shipped rules that accept a
/// test by its criteria, and by those that the welder is to be qualified by. Of other rules nobody can say
/// that the test was for them. By the mark of its coupon.
std::map<std::string, std::vector<NextRetest>> next_retests(Office &office, const GradedTests &tests,
                                                            const WelderState &welder, Day on);

} // namespace beadbook
