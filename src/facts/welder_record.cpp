#include "facts/welder_record.hpp"

#include "facts/coupon_weld.hpp"
#include "measure/text.hpp"
#include "qualify/range.hpp"

#include <algorithm>

namespace beadbook {

std::string QualificationRecord::process() const { return welds_of(test).at(part).word(Trait::process); }

std::string process_of(const QualificationRecord &held) {
    try {
        return held.process();
    } catch (const DataError &) {
        return "";
    }
}

std::optional<Day> entered_later(const WelderEvent &event) {
    const std::string &at = std::max(event.stamp.at, event.not_before);
    if (at.size() < 10) return std::nullopt;
    const Day entered = parse_day(std::string_view(at).substr(0, 10));
    return entered > event.day ? std::optional(entered) : std::nullopt;
}

const QualificationRecord *WelderState::qualification(int number) const {
    const auto found = std::find_if(qualifications.begin(), qualifications.end(),
                                    [&](const QualificationRecord &q) { return q.number == number; });
    return found == qualifications.end() ? nullptr : &*found;
}

Refusal WelderState::no_such(int number) const {
    std::vector<std::string> there;
    for (const auto &one : qualifications) there.push_back(std::to_string(one.number) + " by " + one.rules);
    return refused("welder " + record.mark + " has no qualification " + std::to_string(number) +
                   (there.empty() ? ", nor any other" : "; on record are " + listed(there)))
        .at("number");
}

std::vector<GrantedRange> granted(const std::vector<VariableRange> &range) {
    std::vector<GrantedRange> out;
    for (const auto &one : range) {
        // A trait of which nothing was read is no range: the rules that are kept beside say so.
        if (one.variable->unread || !may_matter(range, *one.variable)) continue;
        GrantedRange kept{std::string(info(one.variable->of).name), one.variable->work.text, {}};
        for (const auto &part : one.parts) {
            GrantedPart p{part.rule->id, part.any, part.words, part.edges, {}};
            for (const auto &lack : part.lacks)
                p.lacks.push_back((lack.of == Lack::Of::test ? "test " : "work ") +
                                  std::string(info(lack.trait).name));
            kept.parts.push_back(std::move(p));
        }
        out.push_back(std::move(kept));
    }
    return out;
}

} // namespace beadbook
