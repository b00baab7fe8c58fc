#pragma once

#include "facts/coupon_line.hpp"
#include "measure/share.hpp"

#include <optional>
#include <string>
#include <vector>

namespace beadbook {

/// What a summary counts of one coupon.
struct CountedCoupon {
    std::string joint, welder, week; ///< empty: not known
    std::optional<Verdict> verdict;  ///< nothing: it cannot be judged
    bool first = false;              ///< the welder's first of its kind
    std::vector<CouponLine::Find> finds;
    std::vector<std::string> rejected_by; ///< "SET: RULE", one a reason
    bool own_file = false;                ///< judged by criteria of one's own
    bool with_cautions = false;           ///< accepted, and something stands beside that
    bool bends_failed = false;            ///< its mechanical tests failed, whatever the verdict
    bool withdrawn = false;               ///< though its finds reject it: counted as a first attempt alone
};

/// How a group of coupons came out. Only what is accepted or rejected counts in a share; what its
/// examinations accept and its mechanical tests failed counts there as not accepted.
struct Outcome {
    std::string name; ///< of the joint, welder or week; empty: not known
    std::size_t coupons = 0, accepted = 0, rejected = 0, cannot_say = 0, not_judged = 0;
    std::size_t bends_failed = 0; ///< accepted by their examinations, but their mechanical tests failed
    Share share;                  ///< accepted of those decided
    Share first_pass;             ///< the same of first coupons: the first-pass yield
};
/// Finds of one kind.
struct FindCount {
    std::string name;
    std::size_t finds = 0, rejecting = 0, coupons = 0; ///< coupons with any
};
/// What one rule rejects.
struct RuleCount {
    std::string name; ///< "SET: RULE"
    std::size_t reasons = 0;
    Share coupons;          ///< rejected by it, of all that are rejected
    std::string title = {}; ///< of the rule, in a sentence's words; empty: its set cannot be read
};

struct Summary {
    Outcome all;
    std::size_t finds = 0;         ///< imperfections
    std::size_t held = 0;          ///< what was measured and held: no imperfection, and counted nowhere else
    std::size_t unjudged = 0;      ///< what was measured and no rule judged: the same
    std::size_t with_cautions = 0; ///< coupons that are accepted, with something that stands beside that
    std::size_t by_own_files = 0;  ///< coupons that were judged by criteria of one's own
    /// Coupons that were withdrawn and whose finds reject them: counted nowhere else, but as first attempts,
    /// so that nobody's yield rises by it.
    std::size_t withdrawn_rejects = 0;
    std::vector<FindCount> imperfections;        ///< most finds first, then by name
    std::vector<FindCount> places;               ///< in the order round or along
    std::vector<RuleCount> rules;                ///< most coupons first, then by name
    std::vector<Outcome> joints, welders, weeks; ///< by name (NaturalOrder), what is not known last
};
/// Pure: the same coupons in any order give the same.
Summary summary_of(const std::vector<CountedCoupon> &coupons);

} // namespace beadbook
