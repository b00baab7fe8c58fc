#pragma once

#include "facts/stamp.hpp"
#include "judge/judgement.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace beadbook {

/// What a coupon comes to: what failed its mechanical tests did not pass, whatever its examinations say.
inline std::optional<Verdict> outcome_of(std::optional<Verdict> by_exams, bool bends_failed) {
    return bends_failed ? Verdict::reject : by_exams;
}

/// An instructor's decision on a coupon.
struct Grade {
    bool passed = false;
    std::string class_id;
    std::string remark;
    bool against_verdict = false;    ///< the decision differs from the tool's verdict
    bool against_mechanical = false; ///< passed, though the mechanical tests had failed
    bool after_fail = false;         ///< passed, though it had been graded failed before
    bool after_turn = false; ///< passed, though it was rejected until it or its criteria read otherwise
    Stamp stamp;
    std::int64_t seq = 0; ///< its entry

    std::string decision() const { return passed ? "passed" : "failed"; }
};

/// Whether a coupon's grade still says what it said: it holds for the state that it was given on, and
/// whatever was written on the coupon since and changes the verdict of its class makes it one to be given
/// again.
struct GradeStanding {
    enum class State : std::uint8_t { none, stands, again };
    State state = State::none;
    Verdict now = Verdict::cannot_say; ///< of the graded class, judged afresh; if there is a grade
    std::string was;                   ///< the verdict that it was given on; empty if that is not on record
    std::string why;                   ///< State::again: what has changed
    bool moved = false;                ///< what it was given on is not so any more; else only the description
    std::vector<std::string> described; ///< fields of the weld that are said otherwise since it was given
    std::string by_other; ///< the set that it was given by, if the coupon names another now; empty: the same
    /// Of a pass by other criteria or for another class than it is registered for: its own class, and what
    /// its own verdict is, if that is no accept; not kept with lists. Empty: it accepts too, or says nothing.
    std::string own_class;
    Verdict own = Verdict::accept;
    std::int64_t newest_reason = 0; ///< entry about a find that keeps it from an accept; 0: none
};

/// A free remark on a coupon.
struct Remark {
    std::string text;
    Stamp stamp;
};

} // namespace beadbook
