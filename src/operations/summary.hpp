#pragma once

#include "judge/judgement.hpp"
#include "measure/share.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace beadbook {

/// Where on a weld a find begins: a quarter round a girth weld by the clock, or along a weld with ends.
enum class WeldPart : std::uint8_t { at_12, at_3, at_6, at_9, first, second, third, fourth, unknown };
constexpr std::size_t weld_part_count = 9;
/// "12:00 to 3:00", "first quarter of the weld", "place not known".
std::string_view name_of(WeldPart part);
/// Exact; at the border the later part. Unknown without a place, or where the weld's length is not known.
WeldPart part_of(const std::optional<Span> &place, const WeldLine &line);

/// What a summary counts of one coupon.
struct CountedCoupon {
    struct Find {
        std::string imperfection;
        WeldPart part = WeldPart::unknown;
        bool rejects = false; ///< it stands in a reason that rejects the class sought
    };
    std::string joint, welder, week; ///< empty: not known
    std::optional<Verdict> verdict;  ///< nothing: it cannot be judged
    bool first = false;              ///< the welder's first of its kind
    std::vector<Find> finds;
    std::vector<std::string> rejected_by; ///< "SET: RULE", one a reason
};

/// How a group of coupons came out. Only what is accepted or rejected counts in a share.
struct Outcome {
    std::string name; ///< of the joint, welder or week; empty: not known
    std::size_t coupons = 0, accepted = 0, rejected = 0, cannot_say = 0, not_judged = 0;
    Share share;      ///< accepted of those decided
    Share first_pass; ///< the same of first coupons: the first-pass yield
};
/// Finds of one kind.
struct FindCount {
    std::string name;
    std::size_t finds = 0, rejecting = 0, coupons = 0; ///< coupons with any
};
/// What one rule rejects.
struct RuleCount {
    std::string name;
    std::size_t reasons = 0;
    Share coupons; ///< rejected by it, of all that are rejected
};

struct Summary {
    Outcome all;
    std::size_t finds = 0;
    std::vector<FindCount> imperfections;        ///< most finds first, then by name
    std::vector<FindCount> places;               ///< in the order round or along
    std::vector<RuleCount> rules;                ///< most coupons first, then by name
    std::vector<Outcome> joints, welders, weeks; ///< by name (NaturalOrder), what is not known last
};
/// Pure: the same coupons in any order give the same.
Summary summary_of(const std::vector<CountedCoupon> &coupons);

} // namespace beadbook
