#include "qualify/cover_table.hpp"

#include <set>

namespace beadbook {
namespace {

Weld seen(const Weld &weld, const std::vector<Trait> &traits) {
    Weld out;
    for (const Trait t : traits) {
        if (is_size(t))
            out.size(t) = weld.size(t);
        else
            out.word(t) = weld.word(t);
    }
    return out;
}

std::string key_of(const Weld &weld, const std::vector<Trait> &traits) {
    std::string out;
    for (const Trait t : traits) {
        if (!is_size(t))
            out += weld.word(t);
        else if (const auto &size = weld.size(t)) // nm and their halves: 64 bits tell them apart
            out += std::to_string(static_cast<std::int64_t>(size->num())) + "/" + std::to_string(size->den());
        out += '\n';
    }
    return out;
}

} // namespace

CoverTable::CoverTable(const RangeRules &rules, const Variable &variable, const std::vector<Job> &jobs)
    : rules_(rules), variable_(variable), jobs_(jobs) {
    std::set<Trait> test;
    const std::set<Trait> work = work_traits_of(rules, variable);
    for (const auto *rule : rules.rules_of(variable.of)) {
        add_traits(rule->test, test);
        if (rule->kind == RangeRule::Kind::same || !rule->by.empty()) test.insert(rule->of);
        for (const auto &edge : rule->band)
            for (std::size_t i = word_traits; i < trait_count; ++i)
                if (edge.right.uses(slot_of(*info(static_cast<Trait>(i)).size)))
                    test.insert(static_cast<Trait>(i));
    }
    test_traits_.assign(test.begin(), test.end());
    work_traits_.assign(work.begin(), work.end());
}

void CoverTable::set_needs(const std::vector<Need> &needs) {
    works_.clear();
    work_of_.clear();
    open_.clear();
    rows_.clear();
    std::map<std::string, std::size_t> known;
    for (const auto &need : needs) {
        const auto [at, fresh] = known.emplace(key_of(need.work, work_traits_), works_.size());
        if (fresh) works_.push_back(seen(need.work, work_traits_));
        work_of_.push_back(at->second);
        open_.push_back(variable_.unread && jobs_[need.job].spans(variable_.of));
    }
}

const Bits &CoverTable::row(const Weld &test) {
    const auto [at, fresh] = rows_.emplace(key_of(test, test_traits_), Bits());
    if (!fresh) return at->second;
    const VariableRange range = range_of(rules_, variable_, test);
    std::vector<bool> covered;
    for (const auto &work : works_) {
        const auto cover = cover_of(range, work);
        covered.push_back(!cover || cover->covered == Truth::yes);
    }
    at->second.resize(work_of_.size());
    for (std::size_t n = 0; n < work_of_.size(); ++n) at->second[n] = covered[work_of_[n]] || open_[n];
    return at->second;
}

} // namespace beadbook
