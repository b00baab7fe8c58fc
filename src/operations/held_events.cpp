#include "operations/held_events.hpp"

#include "measure/text.hpp"

#include <algorithm>
#include <set>
#include <utility>

namespace beadbook {
namespace {

Validity raw_validity(const WelderState &welder, const std::vector<HeldQualification> &all,
                      const HeldQualification &held, const std::map<std::int64_t, std::string> &undone,
                      Day on, std::int64_t before = whole_record, bool with_doubtful = true) {
    return validity_on(on, held.record.welded, held.way(),
                       bearing_on(welder, all, held, undone, before, with_doubtful).events);
}

/// Another test that was welded here with the process of this one.
bool uses_process(const HeldQualification &other, const HeldQualification &held) {
    return other.record.number != held.record.number && !other.record.carried() &&
           same_word(other.weld.word(Trait::process), held.weld.word(Trait::process));
}

QualificationEvent::Kind kind_of(const WelderEvent &event) {
    using Kind = QualificationEvent::Kind;
    return event.kind == "use"         ? Kind::use
           : event.kind == "renewal"   ? Kind::renewal
           : event.kind == "extension" ? Kind::extension
                                       : Kind::revocation;
}

/// One entry that bears on it: what a person wrote, or the weld of another test.
struct Entered {
    std::int64_t seq = 0;
    QualificationEvent event;
    const HeldQualification *weld = nullptr;
    const WelderEvent *written = nullptr;
};

bool holds_no_more(const Validity &validity) {
    return validity.state == Validity::State::lapsed || validity.state == Validity::State::expired;
}

std::string over_as(const Validity &validity) {
    return holds_no_more(validity) ? std::string(name_of(validity.state)) : "out of use";
}

bool prolongs(const WelderEvent &event) { return event.kind == "use" || event.kind == "extension"; }

/// Whether a reason lets it revive what was over when it was entered.
bool let_revive(const WelderEvent &event) {
    return std::any_of(event.overridden.begin(), event.overridden.end(),
                       [](const Shortcoming &one) { return one.kind == Shortcoming::Kind::revives; });
}

/// Nobody here could have entered in time what lies before the day on which it was carried in.
bool before_carried(const WelderState &welder, const HeldQualification &held, Day day) {
    return held.record.carried() && print(day) < welder.granted.at(held.record.number).at.substr(0, 10);
}

/// As it would be entered with a reason.
WelderEvent let_revive_today(WelderEvent event, Day today) {
    event.seq = whole_record - 1;
    event.stamp.at = print(today);
    event.overridden.emplace_back().kind = Shortcoming::Kind::revives;
    return event;
}

} // namespace

bool is_about(const WelderEvent &e, const HeldQualification &held) {
    const std::string &process = held.weld.word(Trait::process);
    if (e.kind == "use") return same_word(e.process, process);
    if (e.kind == "renewal") return same_word(e.process, process) && e.rules == held.record.rules;
    return (e.kind == "extension" || e.kind == "revocation") && e.qualification == held.record.number;
}

bool is_over(const Validity &validity) {
    return holds_no_more(validity) || (validity.state == Validity::State::valid && validity.out_of_use);
}

Bearing bearing_on(const WelderState &welder, const std::vector<HeldQualification> &all,
                   const HeldQualification &held, const std::map<std::int64_t, std::string> &undone,
                   std::int64_t before, bool with_doubtful) {
    std::vector<Entered> entries;
    for (const auto &e : welder.events)
        if (!undone.contains(e.seq) && is_about(e, held))
            entries.push_back({e.seq, {kind_of(e), e.day}, nullptr, &e});
    for (const auto &other : all)
        if (uses_process(other, held) && (other.fate.state == Validity::State::valid ||
                                          (with_doubtful && other.fate.state == Validity::State::in_doubt)))
            entries.push_back({welder.entries.at(other.record.number),
                               {QualificationEvent::Kind::use, other.record.welded},
                               &other});
    std::erase_if(entries, [&](const Entered &one) { return one.seq >= before; });
    std::sort(entries.begin(), entries.end(),
              [](const Entered &a, const Entered &b) { return a.seq < b.seq; });
    Bearing out;
    for (const auto &one : entries) {
        const auto entered = one.weld                                ? one.weld->registered
                             : one.written && prolongs(*one.written) ? entered_later(*one.written)
                                                                     : std::nullopt;
        const bool late = entered && one.event.day >= held.record.welded &&
                          !before_carried(welder, held, one.event.day) &&
                          is_over(validity_on(*entered, held.record.welded, held.way(), out.events));
        if (late && one.weld) {
            out.late_welds.push_back(one.weld);
        } else if (late && !let_revive(*one.written)) {
            out.late_uses.push_back(one.written);
        } else {
            // The reason of the last one is for all that revive something together.
            if (late)
                for (const auto *use : std::exchange(out.late_uses, {}))
                    out.events.push_back({kind_of(*use), use->day});
            out.events.push_back(one.event);
        }
    }
    return out;
}

std::string words_of_late(const Bearing &bearing, const HeldQualification &held, Day on) {
    std::vector<std::string> welds, uses;
    for (const auto *one : bearing.late_welds)
        welds.push_back(one->record.test.id + " of " + print(one->record.welded) + " on " +
                        print(*one->registered));
    auto with_uses = bearing.events;
    for (const auto *one : bearing.late_uses) {
        with_uses.push_back({kind_of(*one), one->day});
        uses.push_back("the " + one->kind + " of " + print(one->day) + " on " + one->stamp.at.substr(0, 10));
    }
    std::string out;
    if (!welds.empty())
        out += "; what was welded since came on record only when it was over (" + listed(welds) +
               "), and revives it as a use that is entered late does: with a reason";
    if (!uses.empty() && !is_over(validity_on(on, held.record.welded, held.way(), with_uses)))
        out += "; entered when it was over without what counts no more (" + listed(uses) +
               "), it revives it only with a reason: take it back, and enter it again with one";
    return out;
}

Bearing bearing_for(const WelderState &welder, const std::vector<HeldQualification> &all,
                    const HeldQualification &held, const std::map<std::int64_t, std::string> &undone,
                    Day on) {
    Bearing proved = bearing_on(welder, all, held, undone, whole_record, false);
    return holds_no_more(validity_on(on, held.record.welded, held.way(), proved.events))
               ? bearing_on(welder, all, held, undone)
               : proved;
}

namespace {

/// Tests in doubt whose welds are uses of its process: "#2 GTAW by asme-ix or #3 ...".
std::string doubtful_uses(const std::vector<HeldQualification> &all, const HeldQualification &held) {
    std::vector<std::string> out;
    for (const auto &other : all)
        if (uses_process(other, held) && other.fate.state == Validity::State::in_doubt)
            out.push_back(title_of(other));
    return listed(out, "or");
}

} // namespace

std::string longer_by_doubtful(const WelderState &welder, const std::vector<HeldQualification> &all,
                               const HeldQualification &held,
                               const std::map<std::int64_t, std::string> &undone, Day on) {
    const std::string by = doubtful_uses(all, held);
    if (by.empty()) return "";
    const auto with = raw_validity(welder, all, held, undone, on).until,
               without = raw_validity(welder, all, held, undone, on, whole_record, false).until;
    return with && without && *with > *without && *without >= on
               ? "; longer, through " + print(*with) + ", by the weld of " + by + ", which is in doubt"
               : "";
}

std::string kept_by_doubtful(const WelderState &welder, const std::vector<HeldQualification> &all,
                             const HeldQualification &held, const std::map<std::int64_t, std::string> &undone,
                             Day on) {
    const std::string by = doubtful_uses(all, held);
    const auto over = [&](bool with_doubtful) {
        return holds_no_more(raw_validity(welder, all, held, undone, on, whole_record, with_doubtful));
    };
    return by.empty() || over(true) || !over(false)
               ? ""
               : "it was used in time only by the weld of " + by + ", which is in doubt";
}

std::vector<LateEntry> late_entries(const WelderState &welder, const std::vector<HeldQualification> &all,
                                    const HeldQualification &held,
                                    const std::map<std::int64_t, std::string> &undone, Day on) {
    std::vector<LateEntry> out;
    auto without = undone;
    for (const auto &e : welder.events) {
        if (!prolongs(e) || !is_about(e, held) || undone.contains(e.seq)) continue;
        const auto entered = entered_later(e);
        if (!entered) continue;
        Validity then = raw_validity(welder, all, held, undone, *entered, e.seq);
        if (!is_over(then)) then = raw_validity(welder, all, held, without, *entered, e.seq);
        if (!is_over(then)) continue;
        out.push_back({&e, *entered, over_as(then), before_carried(welder, held, e.day)});
        without[e.seq];
    }
    if (!out.empty() && !is_over(raw_validity(welder, all, held, without, on))) out.clear();
    return out;
}

std::vector<std::string> words_of(const std::vector<LateEntry> &all) {
    std::vector<std::string> out;
    std::vector<const LateEntry *> told;
    std::set<std::string> reasons;
    for (const auto &one : all)
        if (let_revive(*one.event)) reasons.insert(print(one.event->day));
    for (const auto &one : all) {
        const auto alike = [&](const LateEntry &other) {
            return other.event->kind == one.event->kind && other.entered == one.entered &&
                   other.then == one.then && other.before_carried == one.before_carried;
        };
        if (std::any_of(told.begin(), told.end(), [&](const auto *other) { return alike(*other); })) continue;
        told.push_back(&one);
        std::set<std::string> days, without;
        for (const auto &other : all) {
            if (!alike(other)) continue;
            days.insert(print(other.event->day));
            if (other.event->override_why.empty()) without.insert(print(other.event->day));
        }
        out.push_back((one.event->kind == "use" ? "used as of " : "extended as of ") +
                      listed({days.begin(), days.end()}, "and") +
                      (days.size() > 1 ? " by entries of " : " by an entry of ") + print(one.entered) +
                      ", when it was " + one.then +
                      (one.before_carried ? ", and of before it was carried in, so that no reason was asked"
                       : !without.empty() && !reasons.empty()
                           ? ", and the reason of " + listed({reasons.begin(), reasons.end()}, "and") +
                                 " stands for " + listed({without.begin(), without.end()}, "and") + " too"
                           : ""));
    }
    return out;
}

namespace {

bool would_revive(const WelderStanding &standing, const HeldQualification &held, const WelderEvent &event,
                  Day today) {
    const Validity now = raw_validity(standing.welder, standing.held, held, standing.undone, today);
    if (!is_about(event, held) || event.day >= today || !is_over(now)) return false;
    WelderState with = standing.welder;
    with.events.push_back(let_revive_today(event, today));
    return !is_over(raw_validity(with, standing.held, held, standing.undone, today));
}

} // namespace

bool revives_of_before_carried(const WelderStanding &standing, const HeldQualification &held,
                               const WelderEvent &event, Day today) {
    return before_carried(standing.welder, held, event.day) && would_revive(standing, held, event, today);
}

std::optional<Shortcoming> reviving(const WelderStanding &standing, const HeldQualification &held,
                                    const WelderEvent &event, Day today) {
    const WelderState &welder = standing.welder;
    if (before_carried(welder, held, event.day) || !would_revive(standing, held, event, today))
        return std::nullopt;
    const Bearing now = bearing_on(welder, standing.held, held, standing.undone);
    Shortcoming out;
    out.kind = Shortcoming::Kind::revives;
    out.was = over_as(validity_on(today, held.record.welded, held.way(), now.events));
    out.on = print(today);
    out.lacks = {event.kind, print(event.day)};
    std::set<std::string> others;
    for (const auto *one : now.late_uses) others.insert(print(one->day));
    out.lacks.insert(out.lacks.end(), others.begin(), others.end());
    return out;
}

} // namespace beadbook
