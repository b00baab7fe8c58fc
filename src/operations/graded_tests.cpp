#include "operations/graded_tests.hpp"

#include "criteria/weld_words.hpp"
#include "facts/coupon_weld.hpp"
#include "measure/text.hpp"
#include "operations/carried_facts.hpp"
#include "operations/failed_by.hpp"
#include "operations/failed_by_others.hpp"
#include "operations/grade_standing.hpp"
#include "operations/passed_on_name.hpp"
#include "operations/test_likeness.hpp"
#include "operations/turned.hpp"
#include "operations/unjudged_finds.hpp"
#include "operations/vouching.hpp"
#include "operations/weld_day.hpp"
#include "records/codecs/facts.hpp"
#include "records/codecs/typed.hpp"

#include <algorithm>
#include <utility>

namespace beadbook {
namespace {

/// What the other fields tell of a test whose process cannot be read.
Weld without_process(const CouponRecord &coupon) {
    Weld out;
    for (const Trait trait : {Trait::joint, Trait::form, Trait::position})
        out.word(trait) = coupon.get(field_of(trait));
    return out;
}

/// What a coupon was when it was graded failed, or rejected until somebody said that it was another's, welded
/// or judged otherwise. What is changed later does not undo whose test that was, and by which process.
struct OnceFailed {
    std::vector<CouponRecord> as; ///< oldest first; one at least
    bool graded = false;          ///< a person graded it failed; else it was rejected
    bool accepted = false;        ///< after a change its criteria rejected it no more
};

/// Changes that took a coupon from a welder to whom it was given by mistake: nothing but its description was
/// entered while it bore his name.
template <class Ours>
std::set<std::int64_t> slips_mended(const std::vector<Entry> &history, Ours ours) {
    std::set<std::int64_t> out;
    bool his = false, since = false;
    for (const auto &entry : history) {
        if (entry.kind != "coupon" || is_withdrawal(entry)) {
            since = true;
            continue;
        }
        const bool is = ours(codec::coupon_from(codec::parsed(entry.body)));
        if (his && !is && !since && !entry.reason.empty()) out.insert(entry.seq);
        if (is && !his) since = false;
        his = is;
    }
    return out;
}

/// As a test of this welder; nothing, if it never failed as one.
template <class Ours>
std::optional<OnceFailed> as_it_failed(Office &office, const std::vector<Entry> &history, Ours ours) {
    std::optional<CouponRecord> now;
    OnceFailed out;
    for (const auto &entry : history) {
        if (entry.kind == "coupon" && !is_withdrawal(entry)) {
            // Bends fail whatever is said of the coupon afterwards.
            if (now && now->bends_failed() && ours(*now) && of_the_test(changed_values(history, entry))) {
                out.as.push_back(*now);
                out.accepted = true;
            }
            now = codec::coupon_from(codec::parsed(entry.body));
        } else if (entry.kind == "grade" && !is_withdrawal(entry) &&
                   !codec::grade_from(codec::parsed(entry.body), {}).passed && ours(*now)) {
            out.as.push_back(*now);
            out.graded = true;
        }
    }
    const auto slips = slips_mended(history, ours);
    std::vector<CouponRecord> rejected;
    for (const auto &one : turned(office, history.front().subject))
        if ((one.accepted || one.of_the_test()) && ours(one.before) && !slips.contains(one.entry)) {
            rejected.push_back(one.before);
            out.accepted = out.accepted || one.accepted;
        }
    out.as.insert(out.as.begin(), rejected.begin(), rejected.end());
    return out.as.empty() ? std::nullopt : std::optional(std::move(out));
}

/// What could not be read then is not held against what can be read now.
void add_welds(const CouponRecord &as, std::vector<Weld> &welds) {
    try {
        for (auto &weld : welds_named(as))
            if (std::find(welds.begin(), welds.end(), weld) == welds.end()) welds.push_back(std::move(weld));
    } catch (const Refusal &) {
        return;
    }
}

/// The entry by which a failure showed: the first grade that says so, else the first examination.
std::int64_t shown_by(const std::vector<Entry> &history) {
    std::int64_t examined = 0;
    for (const auto &entry : history) {
        if (entry.kind == "exam" && examined == 0) examined = entry.seq;
        if (entry.kind == "grade" && !is_withdrawal(entry) &&
            !codec::grade_from(codec::parsed(entry.body), {}).passed)
            return entry.seq;
    }
    return examined == 0 ? history.back().seq : examined;
}

/// The entry that first graded it; 0: none.
std::int64_t first_graded(const std::vector<Entry> &history) {
    const auto found = std::find_if(history.begin(), history.end(),
                                    [](const Entry &e) { return e.kind == "grade" && !is_withdrawal(e); });
    return found == history.end() ? 0 : found->seq;
}

/// Coupons of the welder, and of those who are called so and by no mark.
std::vector<std::string> coupons_of(Office &office, const WelderNames &welder) {
    auto out = office.book().coupons_of(welder.mark());
    const auto add = [&](std::string id) {
        if (std::find(out.begin(), out.end(), id) == out.end()) out.push_back(std::move(id));
    };
    for (const auto &who : office.welders_by_no_mark())
        if (welder.may_be(who) || welder.seen_as(who))
            for (auto &id : office.book().coupons_of(who.text)) add(std::move(id));
    for (auto &id : coupons_once_his(office.book(), welder)) add(std::move(id));
    for (const auto &[id, text] : office.book().failed_elsewhere()) {
        CouponRecord as;
        as.set("welder", text);
        if (welded_as(office.book(), as, welder) || may_be_welded_as(office.book(), as, welder)) add(id);
    }
    return out;
}

} // namespace

bool examined_by(const std::string &exam, const CouponState &coupon) {
    if (exam == "mechanical") return coupon.record.get("mechanical") == "passed";
    return std::any_of(coupon.exams.begin(), coupon.exams.end(),
                       [&](const ExamRecord &e) { return e.done().counts && name_of(e.method) == exam; });
}

bool was_test(const std::vector<Entry> &history) {
    std::optional<std::string> purpose;
    for (const auto &entry : history) {
        if (entry.kind == "coupon" && !is_withdrawal(entry)) {
            const CouponRecord said = codec::coupon_from(codec::parsed(entry.body));
            const auto before = std::exchange(purpose, said.get("purpose"));
            if (const auto elsewhere = was_test_elsewhere(said)) return *elsewhere;
            // What is known to have failed is not made practice by the same stroke.
            if (!said.get("mechanical").empty()) return before.value_or(*purpose) != "practice";
        } else if (entry.kind == "exam" || entry.kind == "indication" || entry.kind == "grade") {
            break;
        }
    }
    return purpose != "practice";
}

std::vector<Weld> welds_named(const CouponRecord &coupon) {
    try {
        return welds_of(coupon);
    } catch (const DataError &e) {
        throw refused("coupon " + coupon.id + ": " + e.what())
            .mend({"change", {coupon.id}, {"process", "why"}});
    }
}

GradedTests::GradedTests(Office &office, const WelderState &welder) : office_(office) {
    const auto take_words = [&](const std::string &coupon, const std::vector<Shortcoming> &set_aside) {
        using Kind = Shortcoming::Kind;
        for (const auto &one : set_aside)
            if (one.kind == Kind::verdict || one.kind == Kind::grade || one.kind == Kind::turned ||
                one.kind == Kind::told)
                taken_.insert(one.coupon.empty() ? coupon : one.coupon);
    };
    for (const auto &q : welder.qualifications) {
        if (!q.carried()) settled_[q.test.id].push_back({q.rules, words_of_test(q.test), q.overridden});
        take_words(q.test.id, q.overridden);
        if (q.evidence && q.evidence->after) retests_.push_back({q.rules, process_of(q), *q.evidence});
    }
    for (const auto &e : welder.events) {
        for (const auto &proof : e.evidence) take_words(proof.coupon, e.overridden);
        if (e.kind == "training" && as_himself(office, e.stamp.who, welder.record.mark).empty())
            training_.push_back(e);
        if (e.kind == "revocation") {
            const auto *held = welder.qualification(e.qualification);
            revoked_.push_back({held ? process_of(*held) : "", e});
        }
        if (e.rules.empty()) continue;
        RuleWords words;
        for (const auto &q : welder.qualifications)
            if (q.rules == e.rules && same_word(process_of(q), e.process)) words = words_of_test(q.test);
        for (const auto &proof : e.evidence) {
            settled_[proof.coupon].push_back({e.rules, words, e.overridden});
            if (proof.after) retests_.push_back({e.rules, e.process, proof});
        }
    }
    const WelderNames names = office.book().knows_welder(welder.record.mark)
                                  ? WelderNames(office.book(), welder.record.mark)
                                  : WelderNames(welder.record.mark, {});
    for (const auto &id : coupons_of(office, names)) {
        try {
            take(office, names, id);
        } catch (const Refusal &e) {
            unreadable_.emplace(id, Unreadable{e.what(), {}, {}});
        }
    }
    take_beside(office, names);
}

void GradedTests::take(Office &office, const WelderNames &welder, const std::string &id) {
    CouponState coupon = office.coupon(id);
    const CouponRecord &record = coupon.record;
    const auto history = office.book().history(id);
    const auto once_failed = as_it_failed(
        office, history, [&](const CouponRecord &as) { return welded_as(office.book(), as, welder); });
    std::string called_then = called_as_then(office.book(), record, history.front().seq, welder);
    const bool perhaps =
        !once_failed && (!called_then.empty() || may_be_welded_as(office.book(), record, welder));
    const bool ours = perhaps || welded_as(office.book(), record, welder);
    const bool by_mark = record.get("welder") == welder.mark();
    // A grade that passed it as what it is now says nothing of what it was.
    const bool turned_so = once_failed && ((!once_failed->graded && (!ours || !coupon.grade)) ||
                                           (once_failed->accepted && ours && !taken_.contains(id)));
    if (!ours && !once_failed) return;
    const bool practice = record.get("purpose") == "practice", test = was_test(history);
    std::vector<CouponRecord> described;
    if (ours) described.push_back(record);
    if (!ours || turned_so) {
        auto elsewhere = std::move(coupon.record.before);
        coupon.record = once_failed->as.back();
        coupon.record.id = id;
        coupon.record.before = std::move(elsewhere); // by what it failed there
    }
    // What was said of them afterwards does not undo it, unless an override set it aside.
    const bool bends_failed = record.bends_failed() || (coupon.mechanical_failed > 0 && !taken_.contains(id));
    if (practice && !test) return;
    const auto judged = judged_now(office, coupon);
    const bool rejected = judged && judged->verdict == Verdict::reject;
    const GradeStanding grade = standing_of_grade(office, coupon);
    const bool moved = grade.moved;
    const bool failed_so = turned_so || bends_failed || (coupon.grade && !coupon.grade->passed) ||
                           (rejected && !taken_.contains(id));
    const bool settled = settled_.contains(id);
    const auto by_others = failed_so || !coupon.grade || taken_.contains(id)
                               ? std::nullopt
                               : failed_by_others(office, history, coupon);
    const std::string welded = record.get("welded");
    std::optional<Day> day;
    if (!welded.empty()) day = earliest_weld_day(history).value_or(parse_day(welded));
    // One that passed and was taken back proves nothing, nor one that passed as somebody else's.
    const bool passed = by_mark && !failed_so && record.withdrawn.empty() && coupon.grade &&
                        coupon.grade->passed && (!moved || settled) && test && !practice && day;
    const bool failed = failed_so || by_others;
    const bool unjudged =
        ours && !perhaps && !failed && !passed && test && !unjudged_finds(coupon, judged).empty();
    if (!failed && !passed && !unjudged) return;
    std::vector<Weld> welds;
    try {
        welds = welds_named(record);
    } catch (const Refusal &e) {
        // One that passed proves nothing here, and asks nothing either.
        if (failed || unjudged)
            unreadable_.emplace(id, Unreadable{e.what(), without_process(record), record});
        return;
    }
    if (failed) {
        if (once_failed) described.insert(described.end(), once_failed->as.begin(), once_failed->as.end());
        for (const auto &one : described) add_welds(one, welds);
    }
    auto &out = perhaps ? perhaps_ : unjudged ? unjudged_ : tests_;
    auto by = failed ? failed_by(office, history, by_others ? *by_others : coupon, bends_failed) : FailedBy{};
    const auto seen = failed ? failure_seen(history, by.exams, by.methods) : std::nullopt;
    out.push_back({std::move(coupon), day, passed, std::move(welds), std::move(by.methods), seen,
                   shown_by(history), first_graded(history), history.front().seq, weld_day_told(history),
                   std::move(described), std::move(called_then), by_others.has_value(), settled, grade});
}

bool GradedTests::Test::passed_by(const RangeRules &rules) const {
    if (!passed || !failed_by_others) return passed;
    const StoredVerdict *on = coupon.graded_on();
    return on && on->verdict_of(coupon.grade->class_id) == name_of(Verdict::accept) &&
           !rules.accepted_by.empty() && rules.accepts(on->set, coupon.grade->class_id);
}

bool GradedTests::counts_as_retest(const Test &test, const Weld &weld, const RangeRules &rules) const {
    const StoredVerdict *verdict = test.coupon.graded_on();
    if (!rules.accepts(verdict ? verdict->set : "", test.coupon.grade->class_id)) return false;
    if (!rules.retest.same_exam) return true;
    std::vector<std::string> lacks;
    return std::all_of(tests_.begin(), tests_.end(), [&](const Test &failed) {
        if (failed.passed_by(rules) || (failed.day && *failed.day > *test.day) ||
            same_kind(failed.welds, weld, &rules, lacks) == Truth::no)
            return true;
        return std::all_of(failed.failed_by.begin(), failed.failed_by.end(),
                           [&](const std::string &method) { return examined_by(method, test.coupon); });
    });
}

const WelderEvent *GradedTests::revoked_since(const std::string &process, Day welded) const {
    const WelderEvent *out = nullptr;
    for (const auto &[of, event] : revoked_)
        if (event.day >= welded && (of.empty() || same_process(of, process)) &&
            (!out || event.day >= out->day))
            out = &event;
    return out;
}

const Evidence *GradedTests::retest_on_record(const std::string &coupon, const std::string &process,
                                              const std::string &rules) const {
    const auto found = std::find_if(retests_.begin(), retests_.end(), [&](const RetestOnRecord &one) {
        const auto &with = one.evidence.coupons;
        return one.rules == rules && same_process(one.process, process) &&
               (one.evidence.coupon == coupon || std::find(with.begin(), with.end(), coupon) != with.end());
    });
    return found == retests_.end() ? nullptr : &found->evidence;
}

const GradedTests::Test *GradedTests::find(const std::string &coupon) const {
    const auto found = std::find_if(tests_.begin(), tests_.end(),
                                    [&](const Test &t) { return t.coupon.record.id == coupon; });
    return found == tests_.end() ? nullptr : &*found;
}

} // namespace beadbook
