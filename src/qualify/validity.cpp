#include "qualify/validity.hpp"

#include <algorithm>

namespace beadbook {
namespace {

using State = Validity::State;
using Kind = QualificationEvent::Kind;

Day end_of_month(Day day) {
    const std::chrono::year_month_day date(day);
    return std::chrono::sys_days(date.year() / date.month() / std::chrono::last);
}

} // namespace

std::string_view name_of(State state) {
    constexpr std::string_view names[] = {"valid",     "lapsed",   "expired",         "revoked",
                                          "not begun", "in doubt", "no longer proved"};
    return names[static_cast<std::size_t>(state)];
}

Day use_by(Day last, const ValidityWay &way) {
    const Day day = last + *way.use_every;
    return way.whole_months ? end_of_month(day) : day;
}

Validity validity_on(Day today, Day welded, const ValidityWay &way, std::vector<QualificationEvent> events) {
    Validity out;
    out.from = way.from;
    std::erase_if(events, [&](const QualificationEvent &e) { return e.day > today || e.day < welded; });
    std::stable_sort(events.begin(), events.end(),
                     [](const auto &a, const auto &b) { return a.day < b.day; });
    if (today < welded) {
        out.state = State::not_begun;
        out.reason = "the test weld is of " + print(welded);
        return out;
    }
    std::optional<Day> ends;
    if (way.lasts) ends = welded + *way.lasts;
    Day last = welded;
    std::optional<Day> broken; // the day after which it was not used in time
    for (const auto &event : events) {
        if (event.kind == Kind::revocation) {
            out.state = State::revoked;
            out.until = event.day;
            out.reason = "as of " + print(event.day);
            return out;
        }
        if (event.kind == Kind::extension) {
            if (ends && way.extension) ends = extended_end(*way.extension, *ends, event.day);
            continue;
        }
        if (way.use_every) {
            if (!broken && event.day > use_by(last, way)) broken = use_by(last, way);
            if (event.kind == Kind::renewal) broken.reset();
        }
        if (!broken) last = event.day;
    }
    if (way.use_every) {
        if (!broken && today > use_by(last, way)) broken = use_by(last, way);
        if (!broken) out.use_by = use_by(last, way);
    }
    out.out_of_use = broken.has_value();
    out.ends = ends;
    if (way.kept_by_use) {
        // Either the period still runs, or the use was never broken.
        out.until = broken ? *ends : std::max(*ends, *out.use_by);
        if (today <= *out.until) {
            out.reason = broken ? "not used within " + way.use_every->text + " after " + print(last) +
                                      ", so it ends on " + print(*ends)
                                : "used within every " + way.use_every->text + ", last on " + print(last);
            return out;
        }
        out.state = State::expired;
        out.reason = way.lasts->text + " after " + print(welded) + " were over on " + print(*ends) +
                     " and it was not used within " + way.use_every->text + " after " + print(last);
        return out;
    }
    if (ends && today > *ends && (!broken || *ends <= *broken)) {
        out.state = State::expired;
        out.until = ends;
        out.reason = "it lasted through " + print(*ends);
        return out;
    }
    if (broken) {
        out.state = State::lapsed;
        out.until = broken;
        out.reason = "not used within " + way.use_every->text + " after " + print(last);
        return out;
    }
    if (out.use_by) out.until = ends ? std::min(*ends, *out.use_by) : *out.use_by;
    if (!out.use_by) out.until = ends;
    out.reason = out.until ? "holds through " + print(*out.until) : "has no end";
    if (out.use_by && out.until == out.use_by && out.until != ends)
        out.reason +=
            ", longer if it is used by then" + (ends ? ", at most through " + print(*ends) : std::string());
    return out;
}

Day extended_end(const ValidityWay::Extension &extension, Day ends, Day on) {
    return std::max(ends, std::min(ends, on + extension.within) + extension.adds);
}

std::string extension_refused(const ValidityWay::Extension &extension, Day on,
                              const std::vector<std::string> &welds) {
    const Day first = on - extension.within;
    const std::string needs = std::to_string(extension.welds) + " welds of the last " +
                              extension.within.text + " are needed [" + extension.from.clause + "]";
    for (const auto &weld : welds) {
        const Day day = parse_day(weld.substr(0, 10));
        if (day < first || day > on)
            return "the weld of " + print(day) + " does not count, the days are " + print(first) + " to " +
                   print(on) + "; " + needs;
    }
    if (welds.size() < static_cast<std::size_t>(extension.welds))
        return std::to_string(welds.size()) + " given; " + needs;
    return "";
}

} // namespace beadbook
