#include "criteria/unused_names.hpp"

#include <algorithm>
#include <cctype>

namespace beadbook {
namespace {

bool part_of_a_name(char c) { return std::isalnum(static_cast<unsigned char>(c)) || c == '-' || c == '_'; }

bool holds_name(const std::string &text, const std::string &name) {
    for (std::size_t at = 0; (at = text.find(name, at)) != std::string::npos; ++at) {
        const std::size_t end = at + name.size();
        if ((at == 0 || !part_of_a_name(text[at - 1])) && (end == text.size() || !part_of_a_name(text[end])))
            return true;
    }
    return false;
}

/// Texts for people may hold the word too.
bool of_language(const std::string &key) {
    static const std::vector<std::string> others{"set", "title", "edition", "source", "notes", "silence"};
    return std::find(others.begin(), others.end(), key) == others.end();
}

} // namespace

bool stands_in(const Yaml &node, const std::string &name) {
    return (node.kind == Yaml::Kind::scalar && holds_name(node.text, name)) ||
           std::any_of(node.items.begin(), node.items.end(),
                       [&](const Yaml &item) { return stands_in(item, name); }) ||
           std::any_of(node.entries.begin(), node.entries.end(),
                       [&](const auto &entry) { return stands_in(entry.value, name); });
}

std::vector<UnusedName> unused_names(const Yaml &root) {
    std::vector<UnusedName> out;
    for (const char *key : {"formulas", "tables"}) {
        const Yaml *map = root.find(key);
        if (!map) continue;
        for (const auto &entry : map->entries) {
            const bool used = std::any_of(root.entries.begin(), root.entries.end(), [&](const auto &part) {
                return of_language(part.key) && stands_in(part.value, entry.key);
            });
            if (!used) out.push_back({entry.key, std::string(key) + "." + entry.key, entry.key_where});
        }
    }
    return out;
}

} // namespace beadbook
