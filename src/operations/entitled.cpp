#include "operations/entitled.hpp"

#include "operations/people.hpp"
#include "records/codecs/people.hpp"
#include "records/codecs/typed.hpp"
#include "records/fold.hpp"

#include <algorithm>

namespace beadbook {
namespace {

std::vector<Entry> history_before(Office &office, const std::string &name,
                                  std::optional<std::int64_t> before) {
    auto out = office.book().person_history(name);
    leave_out_since(out, before);
    return out;
}

/// It goes on where the other ended; else one is a correction of the other.
bool renews(const Certificate &newer, const Certificate &older) {
    return name_of(newer) == name_of(older) && older.until && (!newer.until || *older.until < *newer.until);
}

Entitled entitled_by(const PersonRecord &person, Exam method, Day day) {
    const Entitlement found = entitlement(person, method, day);
    Entitled out{{}, found.objection};
    if (found.certificate) out.certificate = *found.certificate;
    return out;
}

} // namespace

Entitled entitled_by_record(Office &office, const PersonRecord &person, Exam method, Day day,
                            std::optional<std::int64_t> before) {
    Entitled now = entitled_by(person, method, day);
    if (now.objection != "certificate-later") return now;
    const auto history = history_before(office, person.name, before);
    for (auto e = history.rbegin(); e != history.rend(); ++e) {
        const PersonRecord earlier = codec::person_from(person.name, codec::parsed(e->body));
        Entitled then = entitled_by(earlier, method, day);
        if (then.objection == "certificate-later") continue;
        if (then.objection.empty() && renews(*now.certificate, *then.certificate)) return then;
        break;
    }
    return now;
}

std::optional<PersonRecord> person_before(Office &office, const std::string &name,
                                          std::optional<std::int64_t> before) {
    const auto now = person_named(office, name);
    if (!now || !before) return now;
    const auto history = history_before(office, now->name, before);
    if (history.empty()) return std::nullopt;
    return fold_person(now->name, history).record;
}

bool speaks_of(const Practice *practice, std::string_view condition) {
    return practice && std::any_of(practice->rules.begin(), practice->rules.end(),
                                   [&](const PracticeRule &r) { return r.must.subject == condition; });
}

const VisionTest *vision_over(const PersonRecord &person, Day day, const Practice *practice) {
    const VisionTest *test = person.vision_on(day);
    return test && !speaks_of(practice, "vision") && test->on + parse_period("1 year") < day ? test : nullptr;
}

} // namespace beadbook
