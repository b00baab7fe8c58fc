#include "criteria/scoped_rule.hpp"

#include <algorithm>

namespace beadbook {
namespace {

std::string measured_how(const Rule &rule) {
    std::string out = std::to_string(static_cast<int>(rule.kind)) + "|" + rule.measure.text + "|" +
                      std::to_string(static_cast<int>(rule.summed)) + "|" +
                      std::to_string(static_cast<int>(rule.compare)) + "|" +
                      std::to_string(static_cast<int>(rule.shape)) + "|";
    for (const auto &window : rule.windows) out += window.text + ";";
    out += "|";
    if (rule.linked) out += rule.linked->text + "|" + std::to_string(rule.least_group);
    if (rule.as_rectangles) out += "|as rectangles";
    return out + (rule.prorated ? "|in proportion" : "");
}

} // namespace

bool RuleScope::empty() const {
    return std::any_of(bands.begin(), bands.end(), [](const auto &b) { return b.second.empty(); }) ||
           std::any_of(words.begin(), words.end(), [](const auto &w) { return w.second == 0; });
}

RuleScope scope_of(const std::vector<Condition> &conditions) {
    RuleScope out;
    for (const auto &c : conditions)
        if (c.kind == Condition::Kind::word)
            out.words.try_emplace(c.slot, ~std::uint64_t{0}).first->second &= c.fitting;
        else if (compares_plainly(c))
            out.bands[*c.left.lone_quantity()].narrow(c);
        else
            out.others.push_back(c.text);
    std::sort(out.others.begin(), out.others.end());
    return out;
}

std::vector<Condition> own_conditions(const Rule &rule) {
    std::vector<Condition> out = rule.when;
    out.insert(out.end(), rule.where.begin(), rule.where.end());
    return out;
}

std::vector<ScopedRule> scoped_rules(const CriteriaSet &set) {
    std::vector<ScopedRule> out;
    for (const auto &rule : set.rules)
        if (rule.kind != Rule::Kind::combine && rule.kind != Rule::Kind::coupon) {
            const RuleScope scope = scope_of(own_conditions(rule));
            out.push_back({&rule, scope, measured_how(rule), scope.empty()});
        }
    return out;
}

} // namespace beadbook
