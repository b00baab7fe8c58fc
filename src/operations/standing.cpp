#include "operations/standing.hpp"

#include "criteria/provenance.hpp"
#include "criteria/weld_words.hpp"
#include "facts/coupon_weld.hpp"
#include "measure/text.hpp"
#include "operations/carried_in.hpp"
#include "operations/changed_rules.hpp"
#include "operations/failed_in_range.hpp"
#include "operations/failed_tests.hpp"
#include "operations/fates.hpp"
#include "operations/graded_tests.hpp"
#include "operations/granted_to.hpp"
#include "operations/held_events.hpp"
#include "operations/looking_back.hpp"
#include "operations/looser_rules.hpp"
#include "operations/retest_notes.hpp"
#include "operations/taken_back.hpp"
#include "operations/test_fate.hpp"
#include "operations/test_likeness.hpp"
#include "operations/to_qualify.hpp"
#include "operations/unjudged_finds.hpp"
#include "operations/vouching.hpp"
#include "operations/who_is_meant.hpp"
#include "records/codecs/bodies.hpp"
#include "records/described_since.hpp"

#include <algorithm>
#include <functional>
#include <set>
#include <utility>

namespace beadbook {
namespace {

/// What was accepted by a file of one's own says so wherever it is told to be valid.
void tell_own_criteria(const QualificationRecord &record, Validity &validity) {
    if (validity.state != Validity::State::valid || !record.evidence || record.evidence->criteria.empty())
        return;
    const std::string own = own_file_mark(record.evidence->criteria, record.evidence->criteria_hash);
    if (!own.empty()) validity.reason += "; accepted by " + record.evidence->criteria + ", " + own;
}

/// Whether both stand on one test, or one paper, in one process.
bool shows_the_same(const QualificationRecord &one, const QualificationRecord &other) {
    return one.carried() == other.carried() &&
           (one.carried() ? one.document == other.document : one.test.id == other.test.id) &&
           same_process(process_of(one), process_of(other));
}

/// That what the same test showed by another code was revoked for a cause: each is revoked by itself, and
/// whoever reads this one hears of the other.
void tell_revoked_beside(const WelderState &welder, const std::vector<HeldQualification> &all, Day on,
                         HeldQualification &held) {
    for (const auto &other : all) {
        if (other.record.number == held.record.number || !shows_the_same(other.record, held.record)) continue;
        for (const auto &e : welder.events)
            if (e.kind == "revocation" && e.qualification == other.record.number && e.day <= on)
                held.validity.caution(title_of(other) + ", by the same test, was revoked on " + print(e.day) +
                                      ": " + e.text);
    }
}

void tell_revoked_no_more(const WelderState &welder, Day on, HeldQualification &held) {
    // As long as it stood, nothing welded until then was granted in that process.
    const auto stood_in_the_way = [&](const WelderEvent &event, const QualificationRecord &of) {
        return same_process(process_of(of), process_of(held.record)) && held.record.welded <= event.day &&
               welder.entries.at(held.record.number) > event.seq;
    };
    for (const auto &[event, why, of] : welder.revocations_gone)
        if (event.day <= on &&
            (is_about(event, held) || shows_the_same(of, held.record) || stood_in_the_way(event, of)))
            held.validity.caution(
                (is_about(event, held) ? "it"
                                       : "#" + std::to_string(of.number) +
                                             (shows_the_same(of, held.record) ? ", by the same test,"
                                                                              : ", in the same process,")) +
                " was revoked on " + print(event.day) + ": " + event.text + ", which was taken back: " + why);
}

/// What stands beside the verdict of its test stands beside what it holds by that, unless a reason let it.
void tell_beside_accept(Office &office, const WelderState &welder,
                        const std::map<std::int64_t, std::string> &undone, Day on, HeldQualification &held) {
    std::set<std::string> coupons;
    const auto take = [&](const std::vector<std::string> &proving, const std::vector<Shortcoming> &aside) {
        if (std::none_of(aside.begin(), aside.end(),
                         [](const Shortcoming &one) { return one.kind == Shortcoming::Kind::turned; }))
            coupons.insert(proving.begin(), proving.end());
    };
    if (!held.record.carried()) take(test_coupons(held.record), held.record.overridden);
    for (const auto &e : welder.events)
        if (is_about(e, held) && !undone.contains(e.seq) && e.day <= on)
            for (const auto &proof : e.evidence) take(Fates::coupons_of(proof), e.overridden);
    for (const auto &coupon : coupons) try {
            const auto beside = beside_accept(office, office.coupon(coupon));
            if (!beside.empty()) held.validity.caution("of coupon " + coupon + ": " + listed(beside, "and"));
        } catch (const Refusal &) {
            continue; // told of the coupon itself
        }
}

/// A use or an extension that was entered when what it keeps was over says so.
void tell_late_entries(const std::vector<LateEntry> &late, Validity &validity) {
    if (validity.state != Validity::State::valid) return;
    for (const auto &words : words_of(late)) validity.reason += "; " + words;
    validity.by_late = !late.empty();
}

/// Who the welder is, where that was asked and somebody's word is behind it.
void tell_who_is_meant(const std::vector<std::string> &words, Validity &validity) {
    for (const auto &one : words) validity.reason += "; " + one;
    validity.by_name = validity.by_name || !words.empty();
}

/// All that was set aside for what counts of it on that day; of uses, where it holds by them.
std::vector<Aside> asides_of(const WelderState &welder, const HeldQualification &held, Day on,
                             const std::map<std::int64_t, std::string> &undone,
                             const std::vector<LateEntry> &late) {
    const auto is_late = [&](const WelderEvent &e) {
        return std::any_of(late.begin(), late.end(), [&](const LateEntry &one) { return one.event == &e; });
    };
    std::vector<Aside> out;
    if (!held.record.overridden.empty())
        out.push_back({"", {}, held.record.overridden, held.record.override_why});
    for (const auto &e : welder.events)
        if (is_about(e, held) && !undone.contains(e.seq) && e.day <= on && !e.overridden.empty() &&
            (e.kind != "use" || is_late(e)))
            out.push_back({e.kind, e.day, e.overridden, e.override_why});
    return out;
}

/// The weld of its test. One that cannot be read hides none of the others: nothing is known of it then.
Weld weld_of(const QualificationRecord &record, std::string &unreadable) {
    try {
        const auto welds = welds_of(record.test);
        if (record.part < welds.size()) return welds[record.part];
        unreadable = "its test has no process " + std::to_string(record.part + 1);
    } catch (const DataError &e) {
        unreadable = e.what();
    }
    return {};
}

std::vector<HeldQualification> held_by(Office &office, const WelderState &welder, Day on, Fates &fates,
                                       const std::map<std::int64_t, std::string> &undone) {
    std::vector<HeldQualification> out;
    for (const auto &q : welder.qualifications) {
        if (q.carried()) needed_paper(office.ledger(), q);
        const auto rules = office.catalogue().kept_rules(office.ledger(), q.rules_hash);
        if (!rules)
            throw StoreError("the rules of qualification " + std::to_string(q.number) + " of welder " +
                             welder.record.mark + " are missing or no longer load");
        std::string unreadable;
        Weld weld = weld_of(q, unreadable);
        out.push_back({welder.record.mark, q, rules, std::move(weld), {}, {}});
        out.back().unreadable = std::move(unreadable);
        out.back().range = range_of(*rules, out.back().weld);
    }
    for (auto &held : out) {
        held.fate = fate_of_test(office.book(), welder, held, fates);
        if (out.size() > 1) held.registered = registered_later(office.book(), welder, held);
    }
    const auto meant = who_is_meant(office.book(), welder.record);
    for (auto &held : out) {
        const Bearing bearing = bearing_for(welder, out, held, undone, on);
        held.validity = validity_on(on, held.record.welded, held.way(), bearing.events);
        if (is_over(held.validity)) held.validity.reason += words_of_late(bearing, held, on);
        held.validity.reason += longer_by_doubtful(welder, out, held, undone, on);
        if (!taken_away(held.validity.state) && held.fate.state != Validity::State::valid) {
            const Validity before = std::exchange(held.validity, held.fate);
            if (is_over(before)) {
                held.validity.until = before.until;
                held.validity.reason +=
                    "; before that it was " + std::string(name_of(before.state)) + ": " + before.reason;
            }
        }
        put_in_doubt(kept_by_doubtful(welder, out, held, undone, on), held.validity);
        const auto late = late_entries(welder, out, held, undone, on);
        tell_late_entries(late, held.validity);
        tell_own_criteria(held.record, held.validity);
        tell_who_is_meant(meant, held.validity);
        tell_who_is_meant(who_welded(office.book(), held.record), held.validity);
        held.aside = asides_of(welder, held, on, undone, late);
        if (taken_away(held.validity.state)) continue;
        tell_revoked_beside(welder, out, on, held);
        tell_revoked_no_more(welder, on, held);
        tell_beside_accept(office, welder, undone, on, held);
        tell_changed_rules(office, held);
        for (const auto &words : looser_rules_words(*held.rules)) held.validity.caution(words);
        tell_failed_in_range(fates.tests(welder), on, held);
        if (const auto &proof = held.record.evidence; proof && proof->after)
            for (const auto &note : retest_notes(fates.tests(welder), {*proof}, {held.record.welded}))
                held.validity.caution(note);
        tell_day_moved(office.book(), held);
        if (held.record.carried() && held.way().same_employer)
            held.validity.caution("it holds with the same employer [" + authority(held.way().from) +
                                  "], and for whom its paper was issued nobody is asked here");
    }
    return out;
}

bool may_be_renewed(const HeldQualification &held) {
    return held.validity.state == Validity::State::lapsed && held.rules->renewal;
}

bool must_be_tested(const HeldQualification &held) {
    using State = Validity::State;
    const State state = held.validity.state;
    return state != State::valid && state != State::in_doubt && state != State::not_begun &&
           !may_be_renewed(held) && held.unreadable.empty();
}

/// Of a test of its kind that follows one that failed, how many must pass yet.
void take_failed_tests(const GradedTests &tests, Day on, HeldQualification &held) {
    const auto retest = tests.retest_of({}, on, held.weld, *held.rules);
    if (!retest.state.after || !retest.state.known) return;
    if (const int left = asked_next(*held.rules, tests, retest).coupons; left > 1) held.retested_by = left;
}

/// A coupon that failed asks for a retest, of as many as the rules say.
void take_failed_renewals(const GradedTests &tests, Day on, std::vector<HeldQualification> &all) {
    for (auto &held : all) {
        if (!may_be_renewed(held)) continue;
        for (const auto &test : tests.all()) {
            if (test.passed_by(*held.rules) || !test.day || *test.day > on) continue;
            std::vector<std::string> lacks;
            // One that failed while it was held is asked about by a renewal of its kind.
            if (*test.day <= *held.validity.until &&
                same_kind(test.welds, held.weld, held.rules.get(), lacks) != Truth::yes)
                continue;
            for (const auto &weld : test.welds) {
                if (!same_process(weld.word(Trait::process), held.weld.word(Trait::process))) continue;
                const RetestState asked = tests.retest_of({}, on, weld, *held.rules).state;
                if (asked.needed <= held.renewed_by) continue;
                held.renewed_by = asked.needed;
                held.renewed_after = asked.after;
            }
        }
    }
}

} // namespace

WelderStanding standing_of(Office &office, WelderState welder, Day on) {
    office.ledger().check_chain();
    Fates fates(office, welder.record.mark);
    WelderStanding out{std::move(welder), {}, {}, on};
    out.undone = fates.undone(out.welder);
    out.held = held_by(office, out.welder, on, fates, out.undone);
    if (std::any_of(out.held.begin(), out.held.end(), may_be_renewed))
        take_failed_renewals(fates.tests(out.welder), on, out.held);
    for (auto &held : out.held)
        if (must_be_tested(held)) take_failed_tests(fates.tests(out.welder), on, held);
    return out;
}

namespace {

/// While it holds. A use that is missed may end it at once, or take away only that it goes on.
NextStep step_while_valid(const HeldQualification &held) {
    const Validity &v = held.validity;
    const ValidityWay &way = held.way();
    NextStep out;
    const bool use_first = v.use_by && (way.kept_by_use || !v.ends || *v.use_by < *v.ends);
    out.by = use_first ? v.use_by : v.until;
    if (use_first)
        out.to_do = ToDo::use;
    else if (way.extension)
        out.to_do = ToDo::extend;
    if (use_first && way.kept_by_use && *v.ends > *v.use_by) out.otherwise = v.ends;
    return out;
}

} // namespace

const ValidityWay &HeldQualification::way() const {
    const ValidityWay *found = rules->way(record.way);
    return found ? *found : rules->validity.front();
}

std::string title_of(const HeldQualification &held) {
    const std::string &process = held.weld.word(Trait::process);
    const std::string own = held.rules->own_file_mark();
    return "#" + std::to_string(held.record.number) + " " + (process.empty() ? "?" : process) + " by " +
           held.rules->name + (own.empty() ? "" : " (" + own + ")");
}

bool rests_on(const HeldQualification &held, const std::string &coupon) {
    if (held.record.carried()) return false;
    const auto all = test_coupons(held.record);
    return std::find(all.begin(), all.end(), coupon) != all.end();
}

std::vector<HeldQualification> held_by(Office &office, const WelderState &welder, Day on) {
    return standing_of(office, welder, on).held;
}

std::vector<HeldQualification> held_by(Office &office, const std::string &mark, Day on) {
    return held_by(office, office.book().welder(mark), on);
}

HeldQualification held_by(Office &office, const WelderState &welder, int number, Day on) {
    for (auto &held : held_by(office, welder, on))
        if (held.record.number == number) return std::move(held);
    throw welder.no_such(number);
}

const RangeRules *rules_of(const WelderEvent &event, const std::vector<HeldQualification> &held) {
    for (const auto &one : held)
        if (event.qualification == one.record.number ||
            (event.qualification == 0 && event.rules == one.record.rules))
            return one.rules.get();
    return nullptr;
}

WelderStanding standing_of(Office &office, const std::string &mark, std::optional<Day> on) {
    const Day day = on.value_or(office.outside().today());
    WelderStanding out = standing_of(office, office.book().welder(mark), day);
    const GradedTests tests(office, out.welder);
    out.failed = failed_tests(office, tests, out.welder, day);
    for (const auto &test : tests.unjudged()) {
        const CouponRecord &record = test.coupon.record;
        if (!test.day || *test.day <= day)
            out.not_judged.push_back(
                {record.id, record.get("process"), test.day, unjudged_finds(test.coupon, {})});
    }
    for (const auto &coupon : office.book().coupons_of(mark)) try {
            if (auto what = gone_of(office, office.coupon(coupon).record); !what.empty())
                out.gone.push_back({coupon, std::move(what)});
        } catch (const Refusal &) {
            continue; // one coupon that cannot be read hides none of the others
        }
    out.struck = struck_out(office.book(), mark);
    out.to_qualify = to_qualify(office, tests, out);
    return out;
}

std::vector<WelderStanding> standing_of_all(Office &office, std::optional<Day> on) {
    std::vector<WelderStanding> out;
    for (const auto &mark : office.book().welders())
        out.push_back(standing_of(office, office.book().welder(mark), on.value_or(office.outside().today())));
    return out;
}

std::optional<NextStep> next_step(const HeldQualification &held) {
    const Validity &v = held.validity;
    switch (v.state) {
    case Validity::State::valid: return v.until ? std::optional(step_while_valid(held)) : std::nullopt;
    case Validity::State::in_doubt: return NextStep{ToDo::settle, {}, 0, {}};
    case Validity::State::lapsed:
        if (const auto &renewal = held.rules->renewal)
            return NextStep{ToDo::renew, v.until, std::max(renewal->coupons, held.renewed_by), {}};
        break;
    case Validity::State::not_begun: return std::nullopt;
    default: break; // over, by whatever
    }
    return NextStep{ToDo::test, v.until, held.retested_by, {}};
}

Day past_day(const Outside &outside, std::optional<Day> given) {
    const Day today = outside.today();
    if (given && *given > today)
        throw refused("'" + print(*given) + "' is to come; log it when it has happened").at("date");
    return given.value_or(today);
}

WelderEvent add_event(Writing &writing, const std::string &mark, WelderEvent event) {
    writing.book().welder(mark);
    Entry entry;
    entry.kind = event.kind;
    entry.subject = mark;
    entry.body = codec::body_of(event);
    event.seq = writing.add(std::move(entry)).seq;
    event.stamp = writing.stamp();
    return event;
}

} // namespace beadbook
