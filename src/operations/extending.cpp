// extend: welds of the work and coupons prolong a qualification.
#include "measure/text.hpp"
#include "operations/evidence.hpp"
#include "operations/standing.hpp"
#include "qualify/examined_weld.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// The welds of an extension as its text; none twice, none that an earlier extension of the qualification
/// used.
std::string text_of(const std::vector<std::string> &welds, const WelderState &welder, int number) {
    std::string out;
    const auto among = [](const std::string &all, const std::string &weld) {
        return ("; " + all + "; ").find("; " + weld + "; ") != std::string::npos;
    };
    for (const auto &weld : welds) {
        if (among(out, weld)) throw refused("'" + shown(weld) + "' is given twice").at("weld");
        for (const auto &e : welder.events)
            if (e.kind == "extension" && e.qualification == number && among(e.text, weld))
                throw refused("'" + shown(weld) + "' extended it already on " + print(e.day)).at("weld");
        out += (out.empty() ? "" : "; ") + weld;
    }
    return out;
}

/// A weld of the work as its text, if it is stated that it was examined, as the rules ask, and accepted.
std::string stated_weld(const std::string &text, const ValidityWay::Extension &extension) {
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
        if (!examined)
            throw InputError("'" + shown(out) + "': a weld counts that was examined by " +
                             listed(asked, "or") + " [" + authority(extension.from) + "]");
    } catch (const InputError &e) {
        throw Refusal(e).at("weld");
    }
    return out;
}

} // namespace

Done<StandingChange> extend(Writing &writing, const ExtendRequest &request) {
    Office &office = writing.office();
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
    for (const auto &weld : request.welds) welds.push_back(stated_weld(weld, *extension));
    GivenCoupons given =
        evidence_of(office, welder, held.weld.word(Trait::process), *held.rules, request.coupons);
    // The rules say what accepts a test weld; what extends is a weld as the work asks it.
    std::erase_if(given.lacks,
                  [](const Shortcoming &one) { return one.kind == Shortcoming::Kind::accepted_by; });
    for (std::size_t i = 0; i < given.evidence.size(); ++i)
        welds.push_back(print(given.welded[i]) + " coupon " + given.evidence[i].coupon);
    const std::string error = extension_refused(*extension, event.day, welds);
    if (!error.empty()) throw refused(error).at("weld");
    event.text = checked_text(text_of(welds, welder, request.number), "welds");
    const SetAside aside =
        set_aside(title_of(held) + " is not extended", given.lacks, *held.rules, request.override_why);
    event.overridden = aside.what;
    event.override_why = aside.why;
    event.evidence = std::move(given.evidence);
    auto notes = late_training_notes(event.evidence);
    WelderEvent kept = add_event(writing, request.mark, event);
    return {{std::move(kept),
             held_by(office, office.book().welder(request.mark), request.number, writing.outside().today())},
            std::move(notes)};
}

} // namespace beadbook
