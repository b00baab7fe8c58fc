#include "operations/granted_to.hpp"

#include "operations/struck_out.hpp"
#include "operations/welder_meant.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// When a welder was said to have left an employer.
std::vector<StruckOut> leavings(Book &book, const std::string &mark, const std::string &employer) {
    auto out = struck_out(book, mark);
    std::erase_if(out, [&](const StruckOut &one) {
        return one.kind != StruckOut::Kind::employer || one.was != employer;
    });
    return out;
}

/// For whom an employer was left after an entry; empty if nobody left, or if that was said to be a slip.
std::string left_since(Book &book, const WelderRecord &now, const std::string &employer, std::int64_t entry) {
    if (std::find(now.sure.begin(), now.sure.end(), never_left) != now.sure.end()) return "";
    for (const auto &one : leavings(book, now.mark, employer))
        if (one.entry > entry) return one.now.empty() ? "nobody on record" : one.now;
    return "";
}

} // namespace

bool came_back(Book &book, const WelderRecord &welder) {
    return !welder.employer.empty() && !leavings(book, welder.mark, welder.employer).empty();
}

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
    const std::string with = held.way().same_employer ? said_at(book, now.mark, Kind::employer, granted) : "";
    if (with.empty()) return "";
    const std::string rule = "it holds with the same employer [" + authority(held.way().from) + "], and ";
    if (with != now.employer)
        return rule + "that was " + with + (now.employer.empty() ? "" : ", and is " + now.employer);
    if (const std::string left = left_since(book, now, with, granted); !left.empty())
        return rule + with + " was left for " + left + " since; if that entry was a slip, and " + now.mark +
               " never left, enter the employer once more, as meant so";
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
