#include "operations/granted_to.hpp"

#include "operations/welder_meant.hpp"

#include <algorithm>

namespace beadbook {

std::string granted_to_another(Book &book, const WelderState &welder, const HeldQualification &held) {
    const std::int64_t granted = welder.entries.at(held.record.number);
    if (welder.record_seq < granted) return ""; // nothing was said of the welder since
    using Kind = StruckOut::Kind;
    const WelderRecord &now = welder.record;
    const bool same = std::find(now.sure.begin(), now.sure.end(), renamed_welder) != now.sure.end();
    if (const std::string was = said_at(book, now.mark, Kind::name, granted);
        !same && of_two_persons(was, now.name))
        return "it was granted to " + was + ", as " + now.mark + " was called then, who is " + now.name +
               " now; another person has a mark of his own";
    if (const std::string was = said_at(book, now.mark, Kind::employer, granted);
        held.way().same_employer && !was.empty() && was != now.employer)
        return "it holds with the same employer [" + authority(held.way().from) + "], and that was " + was +
               (now.employer.empty() ? "" : ", and is " + now.employer);
    return "";
}

void check_employer_told(const WelderRecord &welder, const std::string &way, const RangeRules &rules) {
    const ValidityWay *asked = rules.way(way);
    if (asked && asked->same_employer && welder.employer.empty())
        throw refused("by way " + way + " it holds with the same employer [" + authority(asked->from) +
                      "], and for whom " + welder.mark + " works is not on record")
            .mend({"enrol", {welder.mark}, {"employer", "why"}});
}

} // namespace beadbook
