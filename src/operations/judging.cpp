#include "operations/judging.hpp"

#include "criteria/provenance.hpp"
#include "facts/reason.hpp"
#include "measure/text.hpp"
#include "operations/grade_standing.hpp"
#include "operations/looking_back.hpp"
#include "operations/mechanical.hpp"
#include "operations/registered_like.hpp"
#include "operations/said_beside.hpp"
#include "operations/selecting.hpp"
#include "operations/turned.hpp"
#include "operations/turned_by_text.hpp"
#include "operations/unmeasured_fillet.hpp"
#include "operations/unread_measures.hpp"
#include "operations/vouching.hpp"
#include "operations/welder_names.hpp"
#include "records/codecs/bodies.hpp"
#include "records/codecs/verdict.hpp"
#include "technique/known_conditions.hpp"
#include "technique/part_shown.hpp"

#include <algorithm>

namespace beadbook {
namespace {

std::optional<std::size_t> class_sought(const JudgeRequest &request, const CouponState &coupon,
                                        const CriteriaSet &set) {
    const std::string name = request.class_id.empty() ? coupon.record.get("class") : request.class_id;
    if (const auto index = set.class_index(name)) return index;
    // The coupon's class is one of its own set; another set need not have it.
    const bool of_another_set = !request.criteria.empty() && request.class_id.empty();
    if (!name.empty() && !of_another_set)
        throw refused("criteria " + set.name + " have no class '" + shown(name) + "'; they have " +
                      listed(set.class_names()))
            .at("class");
    return set.classes.size() == 1 ? std::optional<std::size_t>(0) : std::nullopt;
}

void keep(Writing &writing, const CouponState &coupon, const Judged &judged) {
    if (!judged.withdrawn.empty()) return; // nothing was judged
    // A file may call its set otherwise tomorrow: then nothing else tells that this was the coupon's own.
    const bool shipped = is_shipped_set(judged.set->name, judged.set->hash);
    std::string body = codec::verdict_body(*judged.set, judged.judgement,
                                           shipped ? std::nullopt : std::optional(judged.own));
    if (!coupon.verdicts.empty()) {
        // The same of something else is said again, or nobody could tell that it was looked at since.
        const StoredVerdict &last = coupon.verdicts.back();
        if (last.body == body && !coupon.changed_after(last.seq)) return;
    }
    writing.ledger().keep_criteria(judged.set->hash, judged.set->name, judged.set->text);
    Entry e;
    e.kind = "verdict";
    e.subject = judged.mark;
    e.body = std::move(body);
    writing.add(std::move(e));
}

const StoredVerdict *by_other_text(Office &office, const CouponState &coupon, const Judged &judged) {
    const CriteriaSet &set = *judged.set;
    const auto other = std::find_if(coupon.verdicts.rbegin(), coupon.verdicts.rend(), [&](const auto &v) {
        if (v.hash == set.hash) return false;
        const bool same_edition = v.set == set.name && v.edition == set.edition;
        return same_edition || (judged.own && v.own && went_by_own(office, coupon, v, set));
    });
    return other == coupon.verdicts.rend() ? nullptr : &*other;
}

Refusal which_class(const Judged &judged) {
    return refused("which class? coupon " + judged.mark + " names none; its criteria have " +
                   listed(judged.set->class_names()))
        .give("class");
}

JudgedOrNot judged_or_not(const std::string &mark, const std::function<Judged()> &work) {
    JudgedOrNot out{mark, {}, {}};
    try {
        out.judged = work();
    } catch (const Refusal &e) {
        if (e.kind() == Refusal::Kind::record) throw;
        out.why_not = e.what();
    }
    return out;
}

/// Exams that count by another text of the practice by which one before was not valid: it may have been
/// softened for them.
void take_other_practice_text(const CouponState &coupon, std::vector<std::string> &out) {
    for (const auto &again : coupon.exams)
        for (const auto &was : coupon.exams)
            if (was.number < again.number && was.method == again.method && was.finished &&
                !was.invalid.empty() && was.practice == again.practice &&
                was.practice_hash != again.practice_hash && again.done().counts)
                out.push_back(title_of(again) + " is held against another text of practice " +
                              again.practice + " than " + title_of(was) +
                              ", which cannot be called valid by it");
}

std::vector<std::string> against(const CouponState &coupon, const CriteriaSet &set) {
    std::vector<std::string> out;
    for (const auto &fact : coupon.record.before)
        if (fact.kind != CarriedFact::Kind::failed_beside && stands_against(fact))
            out.push_back(words_of(fact));
    if (coupon.bends_failed_once())
        out.emplace_back("its mechanical tests were said to have failed, before that was changed");
    for (const auto &find : coupon.indications)
        for (auto &one : unread_measures(set, coupon.needed_exam(find.exam).method, find))
            out.push_back(std::move(one));
    take_other_practice_text(coupon, out);
    return out;
}

} // namespace

std::vector<std::string> Judged::cautions() const {
    std::vector<std::string> out = against;
    for (const auto &exam : exam_records) {
        const std::string about = title_of(exam) + ": ";
        for (const auto &caution : exam.cautions()) out.push_back(about + caution);
        for (const auto &untold : {part_perhaps_not_shown(exam.conditions, coupon),
                                   root_perhaps_not_seen(exam.method, exams, coupon)})
            if (!untold.empty()) out.push_back(about + untold + " (common practice, no source)");
        for (const auto &[name, value] : exam.conditions)
            if (!condition_info(name))
                out.push_back(about + "condition of a name of its own, which nothing is held against: " +
                              shown(name) + "=" + shown(value));
    }
    return out;
}

Verdict Judged::verdict() const {
    if (sought) return judgement.classes[*sought].verdict;
    Verdict best = Verdict::reject;
    for (const auto &c : judgement.classes) best = std::min(best, c.verdict);
    return best;
}

bool Judged::accepts_any() const {
    return std::any_of(judgement.classes.begin(), judgement.classes.end(),
                       [](const ClassJudgement &one) { return one.verdict == Verdict::accept; });
}

Judged judge_by(const CouponState &coupon, std::shared_ptr<const CriteriaSet> set) {
    Judged out;
    out.mark = coupon.record.id;
    out.set = std::move(set);
    out.coupon = coupon.record.facts();
    out.exams = coupon.exams_done();
    out.exam_records = coupon.exams;
    out.indications = coupon.found();
    out.unit = coupon.record.unit();
    out.judgement = judge(*out.set, out.coupon, out.exams, out.indications);
    out.mechanical = coupon.record.get("mechanical");
    out.mechanical_said = coupon.mechanical_said;
    out.said = said_beside(coupon);
    out.sure = coupon.assurances();
    out.against = against(coupon, *out.set);
    if (std::string unmeasured = unmeasured_fillet(*out.set, coupon);
        !unmeasured.empty() && out.accepts_any())
        out.against.push_back(std::move(unmeasured));
    out.withdrawn = coupon.record.withdrawn;
    if (!out.withdrawn.empty())
        for (auto &one : out.judgement.classes) {
            one = {};
            one.verdict = Verdict::cannot_say;
        }
    return out;
}

Judged judge_coupon(Office &office, const CouponState &coupon, const JudgeRequest &request) {
    const std::string name = request.criteria.empty() ? coupon.record.get("criteria") : request.criteria;
    if (name.empty() && !coupon.record.withdrawn.empty()) throw is_withdrawn(coupon.record);
    if (name.empty())
        throw refused("coupon " + coupon.record.id + " names no criteria")
            .give("criteria")
            .mend({"change", {coupon.record.id}, {"criteria", "why"}});
    const auto set = office.criteria(name);
    const auto sought = class_sought(request, coupon, *set);
    Judged out = judge_by(coupon, set);
    out.sought = sought;
    out.own = name == coupon.record.get("criteria");
    if (const auto *other = by_other_text(office, coupon, out)) {
        out.by_other_text = other->stamp.at.substr(0, 10);
        if (other->set != set->name || other->edition != set->edition)
            out.other_text_called = other->set + " (" + other->edition + ")";
        if (sought) out.said_by_other_text = other->verdict_of(set->classes[*sought].id);
    }
    return out;
}

Done<Judged> judge_and_keep(Writing &writing, const std::string &mark, const JudgeRequest &request) {
    const CouponState &coupon = writing.coupon(mark);
    Done<Judged> out{judge_coupon(writing.office(), coupon, request), {}};
    keep(writing, coupon, out.value);
    look_back(writing.office(), coupon, out.value);
    note_said_before_correction(writing.office(), coupon.record, out.notes);
    return out;
}

Done<Judged> judge_without_keeping(Office &office, const std::string &mark, const JudgeRequest &request) {
    const Ledger::Moment moment(office.ledger());
    const CouponState coupon = office.coupon(mark);
    Done<Judged> out{judge_coupon(office, coupon, request), {}};
    look_back(office, coupon, out.value);
    note_said_before_correction(office, coupon.record, out.notes);
    return out;
}

void keep_what_may_go(Writing &writing, const std::string &mark) {
    const CouponState &coupon = writing.coupon(mark);
    const auto set = writing.office().criteria_or_none(coupon.record.get("criteria"));
    if (!set || is_shipped_set(set->name, set->hash)) return;
    // What tells of that text tells of whatever is found later, too: each is judged by it again.
    const std::string class_id = coupon.record.get("class");
    if (!coupon.verdicts.empty() && coupon.verdicts.back().hash == set->hash && coupon.verdicts.back().own &&
        coupon.verdicts.back().verdict_of(class_id) == name_of(Verdict::reject))
        return;
    const JudgedOrNot judged = judge_or_tell(writing.office(), coupon);
    if (judged.judged && judged.judged->verdict() == Verdict::reject) keep(writing, coupon, *judged.judged);
}

void keep_if_refused(Writing &writing, const std::string &mark, const JudgeRequest &by) {
    writing.keep_if_refused([mark, by](Writing &then) {
        if (!then.book().knows_coupon(mark)) return; // that was what it was refused for
        const JudgedOrNot now = judge_or_tell(then.office(), then.coupon(mark), by);
        if (now.judged && now.judged->verdict() != Verdict::accept &&
            !is_shipped_set(now.judged->set->name, now.judged->set->hash))
            keep(then, then.coupon(mark), *now.judged);
    });
    if (!by.own()) keep_if_refused(writing, mark);
}

JudgedOrNot judge_or_tell(Office &office, const CouponState &coupon, const JudgeRequest &request) {
    return judged_or_not(coupon.record.id, [&] { return judge_coupon(office, coupon, request); });
}

void judge_all(Office &office, const JudgeRequest &request, const std::function<void(JudgedOrNot)> &take,
               const Selection &of) {
    // Some in one moment, as each locks the file; what takes them may wait for whoever reads, and does so
    // outside.
    constexpr std::size_t some = 20;
    std::optional<Ledger::Moment> moment;
    std::vector<JudgedOrNot> done;
    const auto hand_on = [&] {
        moment.reset();
        for (auto &one : done) take(std::move(one));
        done.clear();
    };
    try {
        select(office, of, [&](CouponAtHand &one) {
            if (!moment) moment.emplace(office.ledger());
            done.push_back(request.own() ? one.judged() : judge_looking_back(office, one.coupon(), request));
            if (done.size() == some) hand_on();
        });
    } catch (const StoreError &) {
        hand_on();
        throw;
    }
    hand_on();
}

void judge_and_keep_all(Office &office, const JudgeRequest &request,
                        const std::function<void(JudgedOrNot)> &take, const Selection &of,
                        const std::function<void(const std::function<void(Writing &)> &)> &store) {
    constexpr std::size_t some = 200;
    std::vector<std::string> marks;
    bool told = false;
    const auto judge_these = [&] {
        std::vector<JudgedOrNot> done;
        store([&](Writing &writing) {
            for (const auto &mark : marks) {
                const CouponState &coupon = writing.coupon(mark);
                done.push_back(judge_looking_back(writing.office(), coupon, request));
                if (done.back().judged) keep(writing, coupon, *done.back().judged);
            }
        });
        for (auto &one : done) {
            take(std::move(one));
            told = true;
        }
        marks.clear();
    };
    try {
        select(office, of, [&](CouponAtHand &one) {
            marks.push_back(one.mark());
            if (marks.size() == some) judge_these();
        });
        if (!marks.empty()) judge_these();
    } catch (const StoreError &e) {
        if (!told) throw;
        throw StoreError(std::string(e.what()) + "; the verdicts that were told before this are stored");
    }
}

std::vector<DescribedSince> described_after(const std::vector<Entry> &history, const CouponState &coupon) {
    if (coupon.grade) return described_since(history, coupon.grade->seq);
    if (coupon.verdicts.empty()) return {};
    return described_since(history, coupon.verdicts.back().seq);
}

Explained explain(Office &office, const std::string &mark, const JudgeRequest &request) {
    const Ledger::Moment moment(office.ledger());
    const CouponState coupon = office.coupon(mark);
    Explained out{judge_coupon(office, coupon, request),
                  coupon.record.get("welder"),
                  welder_name(office.book(), coupon.record.get("welder")),
                  coupon.grade,
                  standing_of_grade(office, coupon),
                  coupon.remarks};
    const auto history = office.book().history(mark);
    look_back(office, coupon, out.judged);
    out.described_since = described_after(history, coupon);
    out.mechanical_asked_by = lacking_mechanical(office.catalogue(), coupon.record);
    return out;
}

Done<Graded> grade_coupon(Writing &writing, const GradeRequest &request) {
    const CouponState &coupon = writing.coupon(request.mark);
    check_vouches(writing.office(), writing.stamp().who, coupon.record.get("welder"),
                  "grades coupon " + request.mark);
    keep_if_refused(writing, request.mark, request.by);
    const Judged judged = judge_coupon(writing.office(), coupon, request.by);
    if (!judged.sought) throw which_class(judged);
    Graded out{request.mark, {}, judged.verdict()};
    out.grade.passed = request.passed;
    out.own_file = own_file_mark(judged.set->name, judged.set->hash);
    out.grade.class_id = judged.set->classes[*judged.sought].id;
    out.grade.remark = checked_text(request.remark, "remark");
    // What agrees with the verdict needs no reason; what does not, one that says something.
    const auto no_reason = [&] { return checked_reason(out.grade.remark, "remark").empty(); };
    // Passed by other criteria, or for another class, than it was registered for: its own still count.
    const JudgedOrNot own = request.by.own() ? JudgedOrNot{} : judge_or_tell(writing.office(), coupon);
    const bool own_refuse = request.passed && own.judged && own.judged->verdict() != Verdict::accept;
    out.grade.against_verdict =
        request.passed ? out.verdict != Verdict::accept || own_refuse : judged.outcome() == Verdict::accept;
    out.grade.against_mechanical = request.passed && coupon.record.bends_failed();
    out.grade.stamp = writing.stamp();
    if (out.grade.against_mechanical && no_reason())
        throw refused("its mechanical tests failed; to grade it passed all the same, say why").give("remark");
    if (request.passed && coupon.mechanical_failed > 0 && no_reason())
        throw refused("its mechanical tests were said to have failed; to grade it passed after that, say why")
            .give("remark");
    if (out.grade.against_verdict && no_reason())
        throw refused("the verdict for " +
                      (own_refuse ? "the class that it was registered for" : "class " + out.grade.class_id) +
                      " is '" + std::string(name_of(own_refuse ? own.judged->verdict() : out.verdict)) +
                      "'; to grade it " + out.grade.decision() + " all the same, say why")
            .give("remark");
    if (coupon.grade && !coupon.grade->passed && request.passed && no_reason())
        throw refused("it was graded " + coupon.grade->decision() + " by " + coupon.grade->stamp.who +
                      "; to pass it after that, say why")
            .give("remark");
    if (request.passed)
        for (const auto &one : turned(writing.office(), request.mark)) {
            out.grade.after_turn = out.grade.after_turn || one.accepted;
            if (one.accepted && no_reason())
                throw refused(one.words() + "; to pass it after that, say why").give("remark");
        }
    keep(writing, coupon, judged);
    std::vector<std::string> notes;
    if (const std::string &bends = judged.mechanical; !bends.empty())
        notes.push_back("mechanical tests: " + bends + ", as " + judged.mechanical_said.who + " said on " +
                        judged.mechanical_said.at.substr(0, 10));
    if (std::string said = said_beside_words(judged.said); request.passed && !said.empty())
        notes.push_back(std::move(said));
    if (request.passed)
        for (const auto &caution : judged.cautions()) notes.push_back("caution: " + caution);
    if (request.passed)
        if (std::string asked =
                mechanical_asked_words(lacking_mechanical(writing.catalogue(), coupon.record));
            !asked.empty())
            notes.push_back(std::move(asked));
    Entry e;
    e.kind = "grade";
    e.subject = request.mark;
    e.body = codec::body_of(out.grade);
    writing.add(std::move(e));
    return {out, std::move(notes)};
}

} // namespace beadbook
