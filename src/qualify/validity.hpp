#pragma once

#include "qualify/range_rules.hpp"

#include <string>
#include <vector>

namespace beadbook {

/// What happened to a qualification after its test weld.
struct QualificationEvent {
    enum class Kind : std::uint8_t {
        use,       ///< the process was used, or the welder confirmed
        renewal,   ///< a coupon brought a lapsed one back
        extension, ///< the period that it lasts was prolonged, from that day, or from its end if that came
                   ///< first
        revocation ///< for a reason to doubt the skill
    };
    Kind kind = Kind::use;
    Day day;
};

/// How a qualification stands on one day.
struct Validity {
    enum class State : std::uint8_t {
        valid,
        lapsed,
        expired,
        revoked,
        not_begun,
        in_doubt, ///< what it rests on has changed since; a person settles it
        unproved, ///< what it rests on proves nothing any more
    };
    State state = State::valid;
    std::optional<Day> until; ///< the last day on which it holds, or held; absent: no end
    std::string reason;       ///< in plain words, with the days
    Authority from;
    std::optional<Day> use_by; ///< the last day on which the next use still counts, while it holds
    std::optional<Day> ends;   ///< the last day of the period that it lasts
    bool out_of_use = false;   ///< it was not used in time, and holds, if at all, only till its period ends
    bool by_late = false;      ///< what was entered when it was over is behind it
    bool by_name = false;      ///< somebody's word who the welder is, which was asked, is behind it
    bool with_caution = false; ///< something speaks against it, as a revocation that was taken back

    /// Adds it to the reason.
    void caution(const std::string &words) {
        reason += "; caution: " + words;
        with_caution = true;
    }
};
std::string_view name_of(Validity::State state);
/// For good, by a person or because its test proves nothing.
constexpr bool taken_away(Validity::State state) {
    return state == Validity::State::revoked || state == Validity::State::unproved;
}

/// Looks at events up to and including `today`, in any order. The day of the test weld begins it; a period
/// holds through its last day. Pure: the clock is the caller's.
Validity validity_on(Day today, Day welded, const ValidityWay &way, std::vector<QualificationEvent> events);

/// The last day on which a use still follows `last` soon enough.
Day use_by(Day last, const ValidityWay &way);

/// The end that an extension of a day makes of another end. Its welds are of the last months before the end:
/// given earlier it adds the less, so that two of them do not pile up (common practice, no source).
Day extended_end(const ValidityWay::Extension &extension, Day ends, Day on);

/// Why these welds of the work do not extend it on that day; empty if they do. Each text begins with the day
/// of its weld, which must lie within the period before. Throws InputError for a day that is none.
std::string extension_refused(const ValidityWay::Extension &extension, Day on,
                              const std::vector<std::string> &welds);

} // namespace beadbook
