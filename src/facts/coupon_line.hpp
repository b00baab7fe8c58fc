#pragma once

#include "facts/coupon_record.hpp"
#include "facts/grade.hpp"
#include "facts/weld_part.hpp"

#include <optional>
#include <string>
#include <vector>

namespace beadbook {

/// An exam at a glance: whether it is still open, and whether it counts.
struct ExamAtAGlance {
    Exam method = Exam::VT;
    bool open = false, counts = true;
    friend bool operator==(const ExamAtAGlance &, const ExamAtAGlance &) = default;
};

/// A coupon at a glance: what lists, boards and counts say of it.
struct CouponLine {
    struct Find {
        std::string imperfection;
        WeldPart part = WeldPart::unknown;
        bool rejects = false; ///< it stands in a reason that rejects the class sought
        bool held = false; ///< no imperfection: what was measured of the weld, and kept the limits of a rule
        bool unjudged = false; ///< the same, and no rule judged it
        friend bool operator==(const Find &, const Find &) = default;
    };
    CouponRecord record;
    std::vector<ExamAtAGlance> exams;
    bool unfinished =
        false; ///< an exam is open or to be finished again, or none is on record; not if withdrawn
    std::size_t indications = 0;
    std::optional<Verdict> verdict; ///< of its own criteria and class; nothing if it cannot be judged
    std::string why_not;            ///< why there is none
    std::string own_file;           ///< that its set is none of those shipped, in few words; empty: it is one
    bool written_beside = false;    ///< people's words stand beside its verdict, by which none goes
    bool cautions = false;          ///< something speaks against its equipment, or made a reject go
    std::vector<std::string> said_otherwise; ///< of an accept: fields of the weld, since it was examined
    std::vector<Find> finds;
    std::vector<std::string> rejected_by; ///< "SET: RULE", one a reason
    std::optional<Grade> grade;
    GradeStanding grade_standing;

    /// Nothing also of one that was taken back.
    std::optional<Verdict> outcome() const {
        return record.withdrawn.empty() ? outcome_of(verdict, record.bends_failed()) : std::nullopt;
    }
};

} // namespace beadbook
