#include "operations/granted_to.hpp"

#include "facts/plausibility.hpp"
#include "operations/struck_out.hpp"
#include "operations/welder_meant.hpp"
#include "records/codecs/typed.hpp"
#include "records/codecs/welder.hpp"

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
    if (is_meant(now.sure, never_left)) return "";
    for (const auto &one : leavings(book, now.mark, employer))
        if (one.entry > entry) return one.now.empty() ? "nobody on record" : one.now;
    return "";
}

/// The name of who bore the mark when that entry was made, or the first one told after it; and where somebody
/// said of another name that it is the same person's, that one.
std::string name_meant(Book &book, const std::string &mark, std::int64_t entry) {
    std::string meant, before;
    for (const auto &one : book.welder_history(mark)) {
        if (one.kind != "welder" || is_withdrawal(one)) continue;
        const WelderRecord said = codec::welder_from(mark, codec::parsed(one.body));
        if (one.seq <= entry || meant.empty() ||
            (of_two_persons(before, said.name) && is_meant(said.sure, renamed_welder)))
            meant = said.name;
        before = said.name;
    }
    return meant;
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
    if (const std::string was = name_meant(book, now.mark, granted); of_two_persons(was, now.name))
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

std::vector<Shortcoming> otherwise_since(Book &book, const WelderRecord &welder, const std::string &coupon,
                                         const std::string &way, const RangeRules &rules) {
    std::vector<Shortcoming> out;
    const auto lack = [&](Shortcoming::Kind kind, const std::string &was, const std::string &now) {
        out.emplace_back();
        out.back().kind = kind;
        out.back().was = was;
        out.back().now = now;
    };
    const std::int64_t begun = book.history(coupon).front().seq;
    if (const std::string was = name_meant(book, welder.mark, begun); of_two_persons(was, welder.name))
        lack(Shortcoming::Kind::renamed, was, welder.name);
    const ValidityWay *asked = rules.way(way);
    if (!asked || !asked->same_employer) return out;
    if (const std::string was = said_at(book, welder.mark, StruckOut::Kind::employer, begun);
        !was.empty() && was != welder.employer)
        lack(Shortcoming::Kind::employer, was, welder.employer);
    return out;
}

} // namespace beadbook
