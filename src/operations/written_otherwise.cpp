#include "operations/written_otherwise.hpp"

#include <map>
#include <set>

namespace beadbook {
namespace {

using Said = std::map<std::string, std::string>;

Said quantities_of_set(const CriteriaSet &set) {
    Said out;
    for (const auto &one : set.declared)
        out["quantity " + one.name] = info(static_cast<Quantity>(one.slot)).name;
    return out;
}

std::set<std::string> gap_texts(const CriteriaSet &set) {
    std::set<std::string> out;
    for (const auto &gap : set.gaps) out.insert(gap.text);
    return out;
}

std::set<std::string> must_be_measured(const CriteriaSet &set) {
    std::set<std::string> out;
    for (const auto &rule : set.rules)
        if (rule.must_be_measured) out.insert(rule.title.empty() ? "rule " + rule.id : rule.title);
    return out;
}

void add_only_in_one(const std::string &what, const std::set<std::string> &first,
                     const std::set<std::string> &second, std::vector<WrittenOtherwise> &out) {
    for (const auto &text : first)
        if (!second.contains(text)) out.push_back({what, text, ""});
    for (const auto &text : second)
        if (!first.contains(text)) out.push_back({what, "", text});
}

} // namespace

std::vector<WrittenOtherwise> written_otherwise(const CriteriaSet &first, const CriteriaSet &second) {
    std::vector<WrittenOtherwise> out;
    const auto linear = [](const CriteriaSet &set) { return set.linear ? set.linear->text : std::string(); };
    if (linear(first) != linear(second)) out.push_back({"linear", linear(first), linear(second)});
    const Said a = quantities_of_set(first), b = quantities_of_set(second);
    for (const auto &[name, meaning] : a)
        if (const auto other = b.find(name); other != b.end() && other->second != meaning)
            out.push_back({name, meaning, other->second});
    add_only_in_one("gap", gap_texts(first), gap_texts(second), out);
    add_only_in_one("must be measured", must_be_measured(first), must_be_measured(second), out);
    return out;
}

} // namespace beadbook
