#include "operations/graded_tests.hpp"
#include "operations/test_likeness.hpp"
#include "operations/unjudged_finds.hpp"

#include <algorithm>
#include <limits>

namespace beadbook {
namespace {

/// When it was entered, if that was after the day.
std::optional<Day> entered_after(const WelderEvent &event, Day day) {
    if (event.stamp.at.size() < 10) return std::nullopt;
    const Day entered = parse_day(std::string_view(event.stamp.at).substr(0, 10));
    return entered > day ? std::optional(entered) : std::nullopt;
}

/// Of what is not on record itself: after all that is.
constexpr std::int64_t never_told = std::numeric_limits<std::int64_t>::max();

bool asks_more_coupons(const RetestState &state, const RetestState &than) {
    return state.needed > than.needed || (!state.known && than.known) ||
           (state.training_first && !than.training_first);
}

bool asks_more(const RetestState &state, const RetestState &than) {
    return asks_more_coupons(state, than) || (!state.satisfied() && than.satisfied());
}

/// Whether what was welded on a day, and told so by that entry, came after it was seen that a test had
/// failed; on the very day, what was on record as welded before that did not.
bool came_after(Day welded, std::int64_t told, const FailureSeen &seen) {
    return std::pair(welded, told) > std::pair(seen.day, seen.entry);
}

std::vector<Attempt> without_training(std::vector<Attempt> attempts,
                                      const std::map<Day, const WelderEvent *> &days) {
    std::erase_if(attempts, [&](const Attempt &one) {
        return one.kind == Attempt::Kind::trained && days.contains(one.day);
    });
    return attempts;
}

} // namespace

bool GradedTests::follows_what_failed(const Test &test, const Weld &weld, const RangeRules &rules) const {
    std::vector<std::string> lacks;
    return std::all_of(tests_.begin(), tests_.end(), [&](const Test &failed) {
        if (failed.passed_by(rules) || !failed.day || *failed.day > *test.day) return true;
        return !failed.seen || came_after(*test.day, test.day_told, *failed.seen) ||
               same_kind(failed.welds, weld, &rules, lacks) != Truth::yes;
    });
}

GradedTests::Retest GradedTests::retest_of(const CouponRecord &coupon, Day welded, const Weld &weld,
                                           const RangeRules &rules,
                                           std::optional<std::int64_t> begun_by) const {
    Retest out;
    const auto unknown = [&](Shortcoming::Kind kind, const std::string &of) -> Shortcoming & {
        out.unknown.emplace_back();
        out.unknown.back().kind = kind;
        out.unknown.back().coupon = of;
        return out.unknown.back();
    };
    std::vector<Attempt> attempts;
    std::set<std::string> unfit;
    const Test *own = find(coupon.id);
    if (own) begun_by = own->begun_by;
    for (const auto &test : tests_) {
        const std::string &id = test.coupon.record.id;
        if (id == coupon.id) continue;
        const bool later = test.day && *test.day > welded;
        const bool passed = test.passed_by(rules);
        if (later && (passed || !begun_by || *begun_by <= test.shown_by)) continue;
        std::vector<std::string> lacks;
        const Truth same = same_kind(test.welds, weld, &rules, lacks);
        if (later) {
            if (same == Truth::yes || (same == Truth::no && takes_in(rules, weld, test.welds)))
                unknown(Shortcoming::Kind::entered_late, id);
            if (same == Truth::unknown) unknown(Shortcoming::Kind::failed_kind, id).lacks = lacks;
            continue;
        }
        if (same == Truth::no || (passed && retests(test.welds, weld, &rules, lacks) != Truth::yes)) continue;
        if (!test.day)
            unknown(Shortcoming::Kind::failed_day, id);
        else if (same == Truth::unknown)
            unknown(Shortcoming::Kind::failed_kind, id).lacks = lacks;
        else {
            const bool closed = passed && closes(test, weld, rules);
            if (passed && !closed && !follows_what_failed(test, weld, rules)) continue;
            if (passed && !closed && !(counts_as_retest(test, weld, rules) && is_whole(test, weld, rules)))
                unfit.insert(id);
            attempts.push_back(
                {passed ? Attempt::Kind::passed : Attempt::Kind::failed, *test.day, id, closed});
            attempts.back().seen = test.seen_on();
        }
    }
    for (const auto &test : perhaps_) {
        std::vector<std::string> lacks;
        const bool later = test.day && *test.day > welded && (!begun_by || *begun_by <= test.shown_by);
        if (test.coupon.record.id == coupon.id || later ||
            same_kind(test.welds, weld, &rules, lacks) == Truth::no)
            continue;
        auto &whose = unknown(Shortcoming::Kind::failed_whose, test.coupon.record.id).lacks;
        whose = {test.coupon.record.get("welder")};
        if (!test.called_then.empty()) whose.push_back(test.called_then);
    }
    for (const auto &test : unjudged_) {
        std::vector<std::string> lacks;
        const std::string &id = test.coupon.record.id;
        const bool later = test.day && *test.day > welded && (!begun_by || *begun_by <= test.shown_by);
        if (id != coupon.id && !later && same_kind(test.welds, weld, &rules, lacks) != Truth::no)
            unknown(Shortcoming::Kind::unjudged, id).lacks = unjudged_finds(test.coupon, {});
    }
    for (const auto &[id, one] : unreadable_) {
        std::vector<std::string> lacks;
        if (id == coupon.id || (one.weld && same_kind({*one.weld}, weld, &rules, lacks) == Truth::no))
            continue;
        unknown(Shortcoming::Kind::unreadable, id).text = one.why;
    }
    for (const auto &e : training_)
        if (same_process(e.process, weld.word(Trait::process)) && e.day <= welded)
            attempts.push_back({Attempt::Kind::trained, e.day, "", false, entered_after(e, welded)});
    // On one day what passed comes last.
    const auto rank = [](const Attempt &a) {
        return a.kind == Attempt::Kind::trained ? 0 : a.kind == Attempt::Kind::failed ? 1 : 2;
    };
    std::stable_sort(attempts.begin(), attempts.end(), [&](const Attempt &a, const Attempt &b) {
        return std::pair(a.day, rank(a)) < std::pair(b.day, rank(b));
    });
    for (std::size_t i = 0; i < attempts.size(); ++i) {
        if (attempts[i].kind != Attempt::Kind::passed || attempts[i].settled) continue;
        const auto late = late_training(weld.word(Trait::process), *find(attempts[i].coupon));
        if (late.empty()) continue;
        const std::vector<Attempt> until(attempts.begin(),
                                         attempts.begin() + static_cast<std::ptrdiff_t>(i) + 1);
        if (asks_more(retest_state(rules.retest, without_training(until, late)),
                      retest_state(rules.retest, until)))
            unfit.insert(attempts[i].coupon);
    }
    attempts.push_back({Attempt::Kind::passed, welded, coupon.id, false});
    out.state = retest_state(rules.retest, attempts);
    if (!unfit.empty()) {
        // What ended the retest before this coupon, or a row of failures, was no retest.
        auto fit = attempts;
        std::erase_if(fit, [&](const Attempt &one) { return unfit.contains(one.coupon); });
        RetestState without = retest_state(rules.retest, fit);
        if (!out.state.after || asks_more_coupons(without, out.state)) {
            attempts = std::move(fit);
            out.state = std::move(without);
        }
    }
    out.unfit = std::move(unfit);
    // That it does not follow what failed is told by itself.
    if (own && own->passed && out.state.after && !counts_as_retest(*own, weld, rules))
        out.unfit.insert(coupon.id);
    if (const Test *failed = out.state.after ? find(out.state.after->coupon) : nullptr)
        for (const auto &id : out.state.passed) {
            const Test *retest = find(id);
            const Day of = id == coupon.id ? welded : *retest->day;
            const std::int64_t told = retest ? retest->day_told : begun_by.value_or(never_told);
            if (const auto &seen = failed->seen; seen && !came_after(of, told, *seen)) {
                auto &one = unknown(Shortcoming::Kind::not_after, id);
                one.lacks = {failed->coupon.record.id};
                one.was = print(of);
                one.on = print(seen->day);
            }
        }
    if (own)
        if (const auto late = late_training(weld.word(Trait::process), *own); !late.empty()) {
            const RetestState without = retest_state(rules.retest, without_training(attempts, late));
            if (asks_more(without, out.state)) {
                auto &one = unknown(Shortcoming::Kind::late_training, "");
                for (const auto &[day, event] : late) one.lacks.push_back(print(day));
                one.on = late.rbegin()->second->stamp.at.substr(0, 10);
                one.after = without.after;
            }
        }
    return out;
}

int GradedTests::Retest::fit() const {
    return static_cast<int>(std::count_if(state.passed.begin(), state.passed.end(),
                                          [&](const std::string &id) { return !unfit.contains(id); }));
}

std::map<Day, const WelderEvent *> GradedTests::late_training(const std::string &process,
                                                              const Test &retest) const {
    std::map<Day, const WelderEvent *> out;
    if (retest.graded_by == 0 || !retest.day) return out;
    const auto is_late = [&](const WelderEvent &e) {
        return e.seq > retest.graded_by && entered_after(e, *retest.day);
    };
    for (const auto &e : training_)
        if (same_process(e.process, process) && is_late(e)) out[e.day] = &e;
    for (const auto &e : training_)
        if (same_process(e.process, process) && !is_late(e)) out.erase(e.day);
    return out;
}

} // namespace beadbook
