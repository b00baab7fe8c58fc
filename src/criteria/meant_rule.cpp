#include "criteria/meant_rule.hpp"

#include "criteria/put_over.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <vector>

namespace beadbook {
namespace {

/// More than these nobody reads through.
constexpr std::size_t most_named = 8;

bool holds_word(const Yaml *there, const std::string &word) {
    const auto all = one_or_items(there);
    return std::any_of(all.begin(), all.end(), [&](const Yaml *one) { return one->text == word; });
}

/// How much of what the change says the rule says too; nothing where they cannot be one: it has no such key,
/// or no such class.
std::size_t likeness(const Yaml &change, const Yaml &rule) {
    std::size_t out = 0;
    for (const auto &entry : change.entries) {
        const Yaml *there = rule.find(entry.key);
        const bool by_compare = entry.key == "at most" || entry.key == "at least" || entry.key == "under" ||
                                entry.key == "over" || entry.key == "allowed";
        if (by_compare && !there) return 0;
        if (by_compare) ++out;
        for (const Yaml *word : one_or_items(&entry.value)) out += holds_word(there, word->text) ? 2 : 0;
    }
    return out;
}

} // namespace

std::string no_id_words(const Yaml &change, const Yaml &base, const std::string &base_name) {
    std::size_t most = 0;
    std::vector<std::string> best, all;
    for (const Yaml *rule : one_or_items(base.find("rules"))) {
        const std::string id = text_under(*rule, "id");
        if (id.empty()) continue;
        all.push_back(id);
        const std::size_t like = likeness(change, *rule);
        if (like > most) best.clear();
        most = std::max(most, like);
        if (like == most && like > 0) best.push_back(id);
    }
    std::vector<std::string> &named = best.empty() ? all : best;
    const std::size_t more = named.size() > most_named ? named.size() - most_named : 0;
    if (more > 0) named.resize(most_named);
    std::string key = "at most: ...";
    for (const auto &entry : change.entries)
        if (entry.key != "id") {
            key = shown(entry.key) + ": ...";
            break;
        }
    return "nothing says which rule of " + base_name + " this changes; " +
           (more > 0 ? "there are " + joined(named, ", ") + " and " + std::to_string(more) + " more"
                     : listed(named, "or") + " could be meant") +
           (named.empty() ? "" : ", written as {id: " + named.front() + ", " + key + "}");
}

} // namespace beadbook
