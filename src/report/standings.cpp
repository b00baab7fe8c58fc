#include "report/standings.hpp"

#include "measure/text.hpp"

#include <set>

namespace beadbook {
namespace {

/// Where the clause of a finding stands.
enum class Home { scope, required, none };
Home home_of(const Finding &f) {
    if (f.kind == Finding::Kind::outside_scope || f.kind == Finding::Kind::scope_unknown ||
        f.part == ProofPart::scope)
        return Home::scope;
    const bool exam = f.kind == Finding::Kind::exam_missing || f.kind == Finding::Kind::unproven;
    return exam ? Home::required : Home::none;
}

} // namespace

StandingCount standings_behind(const ClassJudgement &judged, const CriteriaSet &set, std::size_t c) {
    if (judged.proof) return standings_behind(*judged.proof, set, c);
    std::set<int> rules, scope, required;
    for (const auto &f : judged.findings) {
        if (f.effect != judged.verdict) continue;
        if (f.rule >= 0) rules.insert(f.rule);
        if (f.rule >= 0 || f.clause < 0) continue;
        const Home home = home_of(f);
        if (home == Home::scope) scope.insert(f.clause);
        if (home == Home::required) required.insert(f.clause);
    }
    StandingCount out;
    for (const int r : rules) out.add(set.rules[static_cast<std::size_t>(r)].standings[c]);
    for (const int s : scope) out.add(set.scope[static_cast<std::size_t>(s)].standing);
    for (const int r : required) out.add(set.required[static_cast<std::size_t>(r)].standing);
    return out;
}

std::string standing_words(const StandingCount &count) {
    std::vector<std::string> parts;
    const auto take = [&](std::size_t n, const std::string &words) {
        if (n > 0) parts.push_back(std::to_string(n) + " " + words);
    };
    take(count.read, count.read == 1 ? "was read in the standard" : "were read in the standard");
    take(count.second_hand, count.second_hand == 1 ? "was read second hand" : "were read second hand");
    take(count.memory, count.memory == 1 ? "is from memory" : "are from memory");
    take(count.house, count.house == 1 ? "is of the house" : "are of the house");
    take(count.common_practice, count.common_practice == 1 ? "is common practice" : "are common practice");
    take(count.own_copy,
         count.own_copy == 1 ? "was held against the owner's copy" : "were held against the owner's copy");
    take(count.blank, count.blank == 1 ? "is a blank that nobody filled" : "are blanks that nobody filled");
    if (parts.empty()) return "How sure: no clause stands behind it";
    if (parts.size() == 1 && count.all() > 1) {
        const std::string all = std::to_string(count.all());
        return "How sure: all " + all + " clauses behind it " + parts.front().substr(all.size() + 1);
    }
    if (count.all() == 1) return "How sure: the one clause behind it " + parts.front().substr(2);
    return "How sure: of the " + std::to_string(count.all()) + " clauses behind it " + listed(parts);
}

} // namespace beadbook
