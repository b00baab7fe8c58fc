#include "criteria/weld_words.hpp"
#include "facts/reason.hpp"
#include "measure/text.hpp"
#include "operations/standing.hpp"
#include "operations/vouching.hpp"

namespace beadbook {

Done<StandingChange> revoke(Writing &writing, const RevokeRequest &request) {
    WelderEvent event;
    event.kind = "revocation";
    event.day = past_day(writing.outside(), request.day);
    event.qualification = request.number;
    event.text = checked_reason(request.why, "reason");
    if (event.text.empty()) throw lacking("why", "for which reason?");
    Office &office = writing.office();
    const WelderState welder = office.book().welder(request.mark);
    check_vouches(office, writing.stamp().who, request.mark, "revokes what is held");
    const HeldQualification held = held_by(office, welder, request.number, event.day);
    if (event.day < held.record.welded)
        throw refused("it begins on " + print(held.record.welded) + ", after " + print(event.day) +
                      ", and cannot be revoked before")
            .at("date");
    for (const auto &one : welder.events)
        if (one.kind == "revocation" && one.qualification == request.number)
            throw refused("qualification " + std::to_string(request.number) + " of welder " + request.mark +
                          " is revoked already, as of " + print(one.day) + ": " + one.text);
    Done<StandingChange> out;
    out.value.event = add_event(writing, request.mark, event);
    std::vector<std::string> stay;
    for (const auto &other : held_by(office, request.mark, writing.outside().today()))
        if (other.record.number == request.number)
            out.value.now = other;
        else if ((other.record.rules == held.record.rules || rests_on(other, held.record.test.id)) &&
                 same_word(other.weld.word(Trait::process), held.weld.word(Trait::process)) &&
                 !taken_away(other.validity.state))
            stay.push_back(title_of(other) + " (" + std::string(name_of(other.validity.state)) + ")");
    if (!stay.empty())
        out.notes.push_back(listed(stay, "and") + (stay.size() == 1 ? " is" : " are") +
                            " held beside it and " + (stay.size() == 1 ? "stays" : "stay") +
                            " as before: each is revoked by itself");
    return out;
}

} // namespace beadbook
