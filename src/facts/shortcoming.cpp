#include "facts/shortcoming.hpp"

#include <algorithm>
#include <array>

namespace beadbook {
namespace {

constexpr std::array<std::string_view, 28> shortcoming_ids{"told",
                                                           "grade",
                                                           "verdict",
                                                           "purpose",
                                                           "not examined",
                                                           "exam",
                                                           "same exam",
                                                           "retest",
                                                           "retest unknown",
                                                           "failed day",
                                                           "failed kind",
                                                           "failed whose",
                                                           "unreadable",
                                                           "coupons",
                                                           "training",
                                                           "by machine",
                                                           "entered late",
                                                           "accepted by",
                                                           "described otherwise",
                                                           "rejected before",
                                                           "revoked",
                                                           "revives",
                                                           "late training",
                                                           "nameless",
                                                           "renamed",
                                                           "employer",
                                                           "not after",
                                                           "unjudged"};

/// Whether a reason for what one failure asked holds for what is asked now: by no other failure, nor for more
/// coupons.
bool is_of_same_failure(const Shortcoming &lack, const Shortcoming &then) {
    const bool same = !lack.after || !then.after || lack.after->coupon == then.after->coupon;
    return same ? lack.asked <= then.asked : lack.asked < then.asked;
}

} // namespace

bool is_of_retest(Shortcoming::Kind kind) {
    using Kind = Shortcoming::Kind;
    constexpr Kind of_retest[] = {Kind::same_exam,     Kind::retest,      Kind::retest_unknown,
                                  Kind::failed_day,    Kind::failed_kind, Kind::failed_whose,
                                  Kind::unreadable,    Kind::training,    Kind::entered_late,
                                  Kind::late_training, Kind::not_after,   Kind::unjudged};
    return std::find(std::begin(of_retest), std::end(of_retest), kind) != std::end(of_retest);
}

bool is_aside(const Shortcoming &lack, const std::vector<Shortcoming> &aside) {
    using Kind = Shortcoming::Kind;
    return std::any_of(aside.begin(), aside.end(), [&](const Shortcoming &one) {
        const bool all = std::all_of(lack.lacks.begin(), lack.lacks.end(), [&](const std::string &what) {
            return std::find(one.lacks.begin(), one.lacks.end(), what) != one.lacks.end();
        });
        return one.kind == Kind::told ||
               (one.kind == lack.kind && one.coupon == lack.coupon && one.rule == lack.rule &&
                one.given <= lack.given && is_of_same_failure(lack, one) && all);
    });
}

std::string_view id_of(Shortcoming::Kind kind) { return shortcoming_ids[static_cast<std::size_t>(kind)]; }

std::optional<Shortcoming::Kind> shortcoming_named(std::string_view id) {
    const auto found = std::find(shortcoming_ids.begin(), shortcoming_ids.end(), id);
    if (found == shortcoming_ids.end()) return std::nullopt;
    return static_cast<Shortcoming::Kind>(found - shortcoming_ids.begin());
}

bool is_told_otherwise(Shortcoming::Kind kind) {
    using Kind = Shortcoming::Kind;
    return kind == Kind::grade || kind == Kind::unreadable || kind == Kind::revoked;
}

} // namespace beadbook
