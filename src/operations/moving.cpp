#include "operations/moving.hpp"

#include "facts/plausibility.hpp"
#include "measure/text.hpp"
#include "operations/finishing.hpp"
#include "operations/logging.hpp"
#include "operations/turned_verdicts.hpp"
#include "operations/vouching.hpp"
#include "records/codecs/bodies.hpp"

namespace beadbook {
namespace {

/// Another method has other rules.
void note_method(const ExamRecord &from, const ExamRecord &to, int number, std::vector<std::string> &notes) {
    if (from.method == to.method) return;
    const std::string was(name_of(from.method)), is(name_of(to.method));
    notes.push_back("#" + std::to_string(number) + " was found by " + was + " and is judged as found by " +
                    is + " from now on; the rules for " + was + " do not speak of it any more");
}

/// One that comes from elsewhere does not stand in for one that went: the number that a finished exam found
/// would be whole again, and nobody said so.
const ExamRecord &target_exam(const CouponState &coupon, int number) {
    const ExamRecord &exam = coupon.needed_exam(number);
    if (exam.finished && coupon.finds_of(number) < exam.finished->found)
        throw refused(
            "exam " + std::to_string(number) + " of coupon " + coupon.record.id +
            " was finished with more finds than it has; open it again first, and finish it with what "
            "it found")
            .at("exam")
            .mend({"reopen", {coupon.record.id, std::to_string(number)}, {"why"}});
    return exam;
}

IndicationRecord moved_within(Writing &writing, const MoveRequest &request, IndicationRecord now) {
    const CouponState &state = writing.coupon(request.coupon);
    if (now.exam == state.needed_exam(request.exam).number)
        throw refused("#" + std::to_string(now.number) + " lies under exam " + std::to_string(now.exam) +
                      " already")
            .at("exam");
    now.moved_from = MovedFrom{request.coupon, now.exam, now.number, needed_reason(request.why)};
    now.exam = target_exam(state, request.exam).number;
    now.sure = set_aside_by(
        Plausibility::shipped().of(state.record, now, state.needed_exam(now.exam).method, state.indications),
        request.sure, now.sure);
    Entry e = codec::entry_of(request.coupon, now);
    e.supersedes = state.indication_seq.at(now.number);
    e.reason = request.why;
    writing.add(std::move(e));
    return now;
}

IndicationRecord moved_over(Writing &writing, const MoveRequest &request, const IndicationRecord &old,
                            Exam method) {
    const std::string why = needed_reason(request.why);
    const CouponState &target = writing.coupon(request.to);
    const int exam =
        request.exam > 0 ? target_exam(target, request.exam).number : exam_for(target, 0, "", method);
    IndicationRecord now = old;
    try {
        now = replaced_on(old, target.record.facts().line, target.record.unit());
    } catch (const InputError &e) {
        throw refused("#" + std::to_string(old.number) + " does not fit on coupon " + request.to + ": " +
                      e.what());
    }
    now.number = target.last_indication + 1;
    now.exam = exam;
    now.file.clear();
    now.moved_from = MovedFrom{request.coupon, old.exam, old.number, why};
    now.sure = set_aside_by(
        Plausibility::shipped().of(target.record, now, target.needed_exam(exam).method, target.indications),
        request.sure, old.sure);
    Entry gone;
    gone.kind = "indication";
    gone.subject = request.coupon;
    gone.exam = old.exam;
    gone.number = old.number;
    gone.supersedes = writing.coupon(request.coupon).indication_seq.at(old.number);
    gone.reason = why;
    gone.body = withdrawal_by_move(old.number, {request.to, exam, now.number});
    writing.add(std::move(gone));
    writing.add(codec::entry_of(request.to, now));
    return now;
}

} // namespace

Done<Moved> move_indication(Writing &writing, const MoveRequest &request) {
    const IndicationRecord old = writing.coupon(request.coupon).needed_indication(request.number);
    const bool over = !request.to.empty() && request.to != request.coupon;
    if (!over && request.exam == 0) throw lacking("exam", "under which exam does it belong?");
    const std::string to = over ? request.to : request.coupon;
    const ExamRecord from = writing.coupon(request.coupon).needed_exam(old.exam);
    check_may_judge(writing, writing.coupon(request.coupon), from);
    const auto before = as_it_stands(writing, request.coupon);
    const auto before_there = over ? as_it_stands(writing, to) : std::nullopt;
    Done<Moved> out{{request.coupon, old.number, old.exam, to, {}}, {}};
    out.value.now =
        over ? moved_over(writing, request, old, from.method) : moved_within(writing, request, old);
    note_contradictions(writing, request.coupon, old.exam, out.notes);
    note_contradictions(writing, out.value.coupon, out.value.now.exam, out.notes);
    note_method(from, writing.coupon(to).needed_exam(out.value.now.exam), out.value.now.number, out.notes);
    note_turned_verdicts("the move", before, as_it_stands(writing, request.coupon), out.notes);
    if (over) note_turned_verdicts("the move", before_there, as_it_stands(writing, to), out.notes);
    keep_what_may_go(writing, to);
    return out;
}

} // namespace beadbook
