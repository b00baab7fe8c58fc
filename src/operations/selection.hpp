#pragma once

#include "criteria/model.hpp"
#include "judge/judgement.hpp"
#include "measure/day.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace beadbook {

/// How a coupon's grade stands: one of these holds of every coupon.
enum class GradeState : std::uint8_t { none, passed, failed, again };
std::string_view name_of(GradeState state);

/// Which coupons of a record are meant: all that is given must hold. Texts are compared whole, with their
/// capitals. Of a coupon that does not say what is asked for, nothing holds.
struct Selection {
    std::string welder = {};
    std::string cohort = {};
    std::string class_id = {};       ///< the class sought that it was registered with
    std::string process = {};        ///< that it was welded by, by whatever usual name; of several by all
    std::optional<Day> from = {};    ///< welded on this day or later
    std::optional<Day> to = {};      ///< welded on this day or earlier
    std::optional<Exam> method = {}; ///< an exam by it is on record
    /// Judged afresh, of its own criteria and class; not if withdrawn. What failed its mechanical tests is
    /// rejected.
    std::optional<Verdict> verdict = {};
    std::optional<GradeState> grade = {};
    /// An exam of it is open, or none is on record yet; not if withdrawn.
    bool unfinished = false;
    std::string criteria = {};           ///< that it was registered with: a name, or the whole path of a file
    std::vector<std::string> marks = {}; ///< of these, in this order; none: whatever they are called

    /// Nothing is asked for.
    bool all() const { return *this == Selection{}; }
    friend bool operator==(const Selection &, const Selection &) = default;
};

} // namespace beadbook
