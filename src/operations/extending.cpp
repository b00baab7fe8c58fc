// extend: welds of the work and coupons prolong a qualification.
#include "criteria/methods.hpp"
#include "facts/coupon_weld.hpp"
#include "facts/told_find.hpp"
#include "measure/text.hpp"
#include "operations/entitled.hpp"
#include "operations/evidence.hpp"
#include "operations/failed_work.hpp"
#include "operations/held_events.hpp"
#include "operations/people.hpp"
#include "operations/retest_notes.hpp"
#include "operations/standing.hpp"
#include "operations/test_likeness.hpp"
#include "operations/vouching.hpp"
#include "qualify/examined_weld.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// The mark in "2026-10-05 coupon K-2"; empty: it is a weld of the work.
std::string coupon_in(const std::string &weld) {
    constexpr std::string_view between = " coupon ";
    return weld.compare(std::min<std::size_t>(10, weld.size()), between.size(), between) == 0
               ? weld.substr(10 + between.size())
               : "";
}

/// Whether a weld of the work, as it is stated, may be a coupon: it names it, or is of its day and of
/// nothing.
bool may_be_coupon(const std::string &weld, const std::string &coupon, Day welded) {
    const ExaminedWeld stated = read_examined_weld(weld);
    return names_mark(stated.what, coupon) || (stated.what.empty() && stated.day == welded);
}

/// Whether two statements may be of one weld: of the same day, and nothing tells the welds apart.
bool same_weld(const std::string &a, const std::string &b) {
    if (a == b) return true;
    const std::string coupon = coupon_in(a), other_coupon = coupon_in(b);
    if (!coupon.empty() && !other_coupon.empty()) return coupon == other_coupon;
    try {
        if (!coupon.empty()) return may_be_coupon(b, coupon, parse_day(a.substr(0, 10)));
        if (!other_coupon.empty()) return may_be_coupon(a, other_coupon, parse_day(b.substr(0, 10)));
        const ExaminedWeld one = read_examined_weld(a), other = read_examined_weld(b);
        return one.day == other.day && same_designation(one.what, other.what);
    } catch (const InputError &) {
        return false; // of an older program, which asked less of a statement
    }
}

/// Of the welds in a text, the one that is this one; empty if none is.
std::string weld_among(const std::string &all, const std::string &weld) {
    for (std::size_t begin = 0; begin < all.size();) {
        const std::size_t end = std::min(all.find("; ", begin), all.size());
        std::string one = all.substr(begin, end - begin);
        if (same_weld(one, weld)) return one;
        begin = end + 2;
    }
    return "";
}

/// The welds of an extension as its text; none twice, none that an earlier extension of the qualification
/// used and that still counts.
std::string text_of(const std::vector<std::string> &welds, const WelderStanding &standing, int number) {
    std::string out;
    const auto beside = [](const std::string &weld, const std::string &other) {
        return weld == other ? "" : " as '" + shown(other) + "', unless each says which weld it is of";
    };
    for (const auto &weld : welds) {
        if (const std::string other = weld_among(out, weld); !other.empty())
            throw refused("'" + shown(weld) + "' is given twice" + beside(weld, other)).at("weld");
        for (const auto &e : standing.welder.events) {
            if (e.kind != "extension" || e.qualification != number || standing.undone.contains(e.seq))
                continue;
            if (const std::string other = weld_among(e.text, weld); !other.empty())
                throw refused("'" + shown(weld) + "' extended it already on " + print(e.day) +
                              beside(weld, other))
                    .at("weld");
        }
        out += (out.empty() ? "" : "; ") + weld;
    }
    return out;
}

/// Refuses an extension that does not follow the one before it, or the test weld, by its day and by its
/// welds, and one that adds nothing.
void check_follows(const WelderStanding &standing, const HeldQualification &held, const WelderEvent &event,
                   const std::vector<std::string> &welds) {
    Day last = held.record.welded;
    std::string what = "it begins on " + print(last);
    for (const auto &e : standing.welder.events)
        if (e.kind == "extension" && e.qualification == held.record.number &&
            !standing.undone.contains(e.seq) && e.day >= last) {
            last = e.day;
            what = "it was extended already on " + print(last);
        }
    if (event.day <= last)
        throw refused(title_of(held) + ": " + what + "; an extension is of a later day, not of " +
                      print(event.day) + " (common practice, no source)")
            .at("date");
    for (const auto &weld : welds)
        if (const Day day = parse_day(weld.substr(0, 10)); day <= last)
            throw refused("the weld of " + print(day) + " does not count: " + what +
                          ", and only a weld after that extends it (common practice, no source)")
                .at("weld");
    const auto ends = held.validity.ends;
    if (ends && extended_end(*held.way().extension, *ends, event.day) <= *ends)
        throw refused(title_of(held) + " lasts through " + print(*ends) + "; an extension of " +
                      print(event.day) + " adds nothing to that (common practice, no source)")
            .at("date");
}

/// Of whom the record of people says that he may judge by none of the methods that count accepts no weld, as
/// an exam of his would not count. Of others it knows nothing.
void check_entitled(Office &office, const ExaminedWeld &weld, const std::vector<std::string> &asked) {
    const auto person = person_named(office, weld.who);
    if (!person || person->certificates.empty()) return;
    std::string why;
    for (const auto &name : weld.methods) {
        if (!asked.empty() && std::find(asked.begin(), asked.end(), name) == asked.end()) continue;
        const auto method = exam_named(name);
        if (!method) return; // of other methods it holds no certificates
        const Entitled entitled = entitled_by_record(office, *person, *method, weld.day);
        if (entitled.objection.empty()) return;
        why = name + " on " + print(weld.day) + ": " + why_not_entitled(entitled.objection);
    }
    if (!why.empty())
        throw InputError(shown(weld.who) + " accepts no weld by " + why +
                         "; a weld that another person accepted is asked for");
}

/// A weld of the work as its text, if somebody else than the welder states that it was examined, as the rules
/// ask, and accepted.
std::string stated_weld(Office &office, const std::string &mark, const std::string &text,
                        const ValidityWay::Extension &extension) {
    const std::string out = checked_text(text, "weld");
    if (out.find(';') != std::string::npos)
        throw refused("'" + shown(out) + "': each weld is given by itself, without ';'").at("weld");
    try {
        const ExaminedWeld weld = read_examined_weld(out);
        const auto &asked = extension.one_of;
        const bool examined =
            asked.empty() || std::any_of(asked.begin(), asked.end(), [&](const auto &one) {
                return std::find(weld.methods.begin(), weld.methods.end(), one) != weld.methods.end();
            });
        for (const auto &told : told_in(weld.what))
            if (is_planar_find(told))
                throw InputError("'" + shown(out) + "': it tells of '" + told.word +
                                 "', and only a weld that was accepted counts");
        check_vouches(office, weld.who, mark, "accepts a weld", "weld");
        check_no_failed_work(office, mark, out, "weld");
        if (!examined)
            throw InputError("'" + shown(out) + "': a weld counts that was examined by " +
                             listed(asked, "or") + " [" + authority(extension.from) + "]");
        check_entitled(office, weld, asked);
    } catch (const InputError &e) {
        throw Refusal(e).at("weld");
    }
    return out;
}

/// Where the rules ask for welds that reproduce the test, a coupon of another kind of weld extends nothing.
void check_as_test(Office &office, const HeldQualification &held, const std::vector<std::string> &coupons) {
    if (!held.way().extension->as_test) return;
    for (const auto &id : coupons) {
        const auto welds = welds_of(office.coupon(id).record);
        std::vector<std::string> least;
        for (std::size_t i = 0; i < welds.size(); ++i) {
            auto other = told_otherwise(welds[i], held.weld);
            if (i == 0 || other.size() < least.size()) least = std::move(other);
        }
        if (!least.empty())
            throw refused("coupon " + id + " is not welded as the test was, as the rules ask [" +
                          authority(held.way().extension->from) + "]: " + listed(least))
                .at("coupon");
    }
}

} // namespace

Done<StandingChange> extend(Writing &writing, const ExtendRequest &request) {
    Office &office = writing.office();
    check_vouches(office, writing.stamp().who, request.mark, "extends what is held");
    WelderEvent event;
    event.kind = "extension";
    event.day = past_day(writing.outside(), request.day);
    event.qualification = request.number;
    const WelderState welder = office.book().welder(request.mark);
    const HeldQualification held = held_by(office, welder, request.number, event.day);
    const auto &extension = held.way().extension;
    if (!extension)
        throw refused("by " + held.rules->name + ", way " + held.way().id +
                      ", nothing is extended by welds of the work");
    if (held.validity.state != Validity::State::valid)
        throw refused(title_of(held) + " is " + std::string(name_of(held.validity.state)) + ": " +
                      held.validity.reason);
    std::vector<std::string> welds;
    for (const auto &weld : request.welds)
        welds.push_back(stated_weld(office, request.mark, weld, *extension));
    const GradedTests tests(office, welder);
    for (const auto &coupon : request.coupons) keep_if_refused(writing, coupon);
    GivenCoupons given = evidence_of(office, tests, request.mark, held.weld.word(Trait::process), *held.rules,
                                     request.coupons);
    check_as_test(office, held, request.coupons);
    for (std::size_t i = 0; i < given.evidence.size(); ++i)
        welds.push_back(print(given.welded[i]) + " coupon " + given.evidence[i].coupon);
    const std::string error = extension_refused(*extension, event.day, welds);
    if (!error.empty()) throw refused(error).at("weld");
    const Day today = writing.outside().today();
    const WelderStanding standing = standing_of(office, welder, today);
    event.text = checked_text(text_of(welds, standing, request.number), "welds");
    check_follows(standing, held, event, welds);
    if (const auto lack = reviving(standing, held, event, today)) given.lacks.push_back(*lack);
    const SetAside aside =
        set_aside(title_of(held) + " is not extended", given.lacks, *held.rules, request.override_why);
    event.overridden = aside.what;
    event.override_why = aside.why;
    event.evidence = std::move(given.evidence);
    const HeldQualification before = held_by(office, welder, request.number, today);
    auto notes = retest_notes(tests, event.evidence, given.welded);
    if (extension->as_test && !request.welds.empty())
        notes.push_back(
            "that a weld of the work was welded as the test was, but for its sizes, is the word of "
            "who states it [" +
            authority(extension->from) + "]");
    if (event.day < today && before.validity.state != Validity::State::valid)
        notes.push_back("entered on " + print(today) + " for an earlier day, " + print(event.day) +
                        ": by now " + title_of(before) + " is " +
                        std::string(name_of(before.validity.state)) + ", which the record tells beside it");
    if (const auto ends = held.validity.ends; ends && event.day + extension->within < *ends)
        notes.push_back("given more than " + extension->within.text + " before its end, " + print(*ends) +
                        ", it adds less than " + extension->adds.text + " (common practice, no source)");
    WelderEvent kept = add_event(writing, request.mark, event);
    return {{std::move(kept), held_by(office, office.book().welder(request.mark), request.number, today)},
            std::move(notes)};
}

} // namespace beadbook
