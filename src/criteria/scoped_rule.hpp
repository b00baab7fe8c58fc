#pragma once

#include "criteria/band.hpp"
#include "criteria/doubts.hpp"

#include <map>
#include <string>
#include <vector>

namespace beadbook {

/// All that must hold together. Conditions that are neither a band nor a word are kept as texts.
struct RuleScope {
    std::map<Slot, Band> bands;
    std::map<Slot, std::uint64_t> words;
    std::vector<std::string> others; ///< sorted

    bool empty() const;
    friend bool operator==(const RuleScope &, const RuleScope &) = default;
};
RuleScope scope_of(const std::vector<Condition> &conditions);

/// `when` and `where` of a rule.
std::vector<Condition> own_conditions(const Rule &rule);

/// A rule on finds with what it speaks of, so that many can be held against each other.
struct ScopedRule {
    const Rule *rule;
    RuleScope scope;
    std::string measure; ///< what it measures and how, but for its conditions, subject and limits
    bool empty = false;  ///< its conditions never hold
};
std::vector<ScopedRule> scoped_rules(const CriteriaSet &set);

/// Rules that differ in one band only, in a row: holes between them, and limits that fall from one to the
/// next though the wall grows.
void check_rows_of_bands(const CriteriaSet &set, const std::vector<ScopedRule> &rules, Doubts &doubts);

} // namespace beadbook
