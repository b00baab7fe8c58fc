#include "operations/grading_many.hpp"

#include "measure/text.hpp"
#include "operations/looking_back.hpp"
#include "operations/notes_by_mark.hpp"
#include "operations/selecting.hpp"
#include "operations/turned.hpp"

#include <set>

namespace beadbook {
namespace {

/// Why a coupon is not to be graded at all; empty if it is.
std::string nothing_to_grade(CouponAtHand &one, bool passed) {
    const CouponRecord &record = one.coupon().record;
    if (!record.withdrawn.empty()) return "withdrawn: " + record.withdrawn;
    if (one.grade() == (passed ? GradeState::passed : GradeState::failed)) return "graded so already";
    return "";
}

/// Why it cannot be graded so among many; empty if it can.
std::string why_not_so(Office &office, CouponAtHand &one, const JudgedOrNot &judged,
                       const GradeManyRequest &request) {
    const bool passed = request.passed;
    if (!judged.judged) return judged.why_not;
    if (one.grade() == (passed ? GradeState::failed : GradeState::passed))
        return "it is graded " + std::string(name_of(one.grade())) + " already";
    // Why it passes now is to be said of that coupon, not of all.
    if (passed && one.coupon().grade && !one.coupon().grade->passed)
        return "it was graded failed; to pass it after that, grade it by itself";
    if (!judged.judged->sought)
        return "it names no class; its criteria have " + listed(judged.judged->set->class_names());
    const Verdict verdict = passed ? judged.judged->verdict() : judged.judged->outcome();
    if (verdict != (passed ? Verdict::accept : Verdict::reject))
        return "the verdict for class " + judged.judged->set->classes[*judged.judged->sought].id + " is '" +
               std::string(name_of(verdict)) + "'; against it a coupon is graded by itself, with a remark";
    if (passed && !request.by.own())
        if (const auto own = one.judged().judged; own && own->verdict() != Verdict::accept)
            return "for what it was registered the verdict is '" + std::string(name_of(own->verdict())) +
                   "'; against it a coupon is graded by itself, with a remark";
    if (passed && judged.judged->bends_failed()) return "its mechanical tests failed";
    if (passed)
        for (const auto &before : turned(office, one.coupon().record.id))
            if (before.accepted) return before.words() + "; to pass it after that, grade it by itself";
    return "";
}

/// `named` are those alone that are graded; none: all that are selected.
Done<GradedMany> grade_named(Writing &writing, const GradeManyRequest &request,
                             std::optional<std::set<std::string>> named) {
    Done<GradedMany> out;
    out.value.passed = request.passed;
    std::string faults;
    std::size_t bad = 0, all = 0;
    select(writing, request.of, [&](CouponAtHand &one) {
        const std::string &mark = one.coupon().record.id;
        if (named && named->erase(mark) == 0) return;
        if (std::string why = nothing_to_grade(one, request.passed); !why.empty()) {
            out.value.left_out.push_back({mark, std::move(why)});
            return;
        }
        ++all;
        JudgedOrNot judged =
            request.by.own() ? one.judged() : judge_with_cautions(writing.office(), one.coupon(), request.by);
        if (const std::string why = why_not_so(writing.office(), one, judged, request); !why.empty()) {
            ++bad;
            faults += "\n" + mark + ": " + why;
            keep_if_refused(writing, mark, request.by);
            return;
        }
        out.value.graded.push_back(
            {{mark, {}, {}}, std::move(*judged.judged), one.coupon().record.get("welder")});
    });
    if (named)
        for (const auto &mark : *named) {
            ++bad, ++all;
            faults += "\n" + shown(mark) + ": it is not among those asked for, or not any more";
        }
    if (bad > 0)
        throw refused(std::to_string(bad) + " of " + std::to_string(all) + " cannot be graded " +
                      (request.passed ? "passed" : "failed") + " among many, nothing was stored:" + faults);
    NotesByMark notes;
    for (auto &one : out.value.graded) {
        auto done = grade_coupon(writing, {one.graded.mark, request.passed, request.remark, request.by});
        one.graded = std::move(done.value);
        notes.take(one.graded.mark, std::move(done.notes));
    }
    out.notes = notes.told();
    return out;
}

} // namespace

Done<GradedMany> grade_many(Writing &writing, const GradeManyRequest &request) {
    return grade_named(writing, request, std::nullopt);
}

Done<GradedMany> grade_these(Writing &writing, const GradeManyRequest &request,
                             const std::vector<std::string> &marks) {
    return grade_named(writing, request, std::set<std::string>(marks.begin(), marks.end()));
}

} // namespace beadbook
