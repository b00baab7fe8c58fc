#include "language/fields.hpp"

#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {
namespace {

std::string_view name_of(Yaml::Kind kind) {
    return kind == Yaml::Kind::map ? "a map" : kind == Yaml::Kind::list ? "a list" : "a word";
}

} // namespace

std::optional<std::string> scalar_text(const Yaml &node, const std::string &path, Issues &issues) {
    if (node.kind == Yaml::Kind::scalar) return node.text;
    issues.error(node.where, path, "found " + std::string(name_of(node.kind)) + "; expected a word or text");
    return std::nullopt;
}

Fields::Fields(const Yaml &node, std::string path, const std::vector<std::string> &known, Issues &issues)
    : node_(node), path_(std::move(path)), issues_(issues) {
    if (node.kind != Yaml::Kind::map)
        issues_.error(node.where, path_,
                      "found " + std::string(name_of(node.kind)) + "; expected a map with the keys " +
                          listed(known, "or"));
    std::vector<std::string> absent; // what stands here already is not meant by another key
    std::copy_if(known.begin(), known.end(), std::back_inserter(absent),
                 [&](const std::string &key) { return !node.find(key); });
    bool after_nothing = false; // which was told: what follows may be meant to stand below it
    for (const auto &entry : node.entries) {
        if (std::find(known.begin(), known.end(), entry.key) != known.end()) {
            after_nothing =
                entry.value.kind == Yaml::Kind::scalar && entry.value.text.empty() && !entry.value.quoted;
            continue;
        }
        if (after_nothing) continue;
        const std::string key = nearest_word(entry.key, absent);
        issues_.error(entry.key_where, path_,
                      "unknown key '" + shown(entry.key) + "'; expected " + listed(known, "or") +
                          did_you_mean(entry.key, key.empty() ? known : absent));
        if (!key.empty()) meant_.emplace_back(key, &entry.value);
    }
}

const Yaml *Fields::get(std::string_view key) const {
    if (const Yaml *value = node_.find(key)) return value;
    const auto found =
        std::find_if(meant_.begin(), meant_.end(), [&](const auto &one) { return one.first == key; });
    return found == meant_.end() ? nullptr : found->second;
}

const Yaml *Fields::need(std::string_view key) const {
    const Yaml *value = get(key);
    if (!value && node_.kind == Yaml::Kind::map)
        issues_.error(node_.where, path_, "'" + std::string(key) + "' is missing");
    return value;
}

std::string Fields::text(std::string_view key) const {
    const Yaml *value = get(key);
    return value ? scalar_text(*value, path_of(key), issues_).value_or("") : "";
}

std::string Fields::needed_text(std::string_view key) const {
    const Yaml *value = need(key);
    if (!value) return "";
    std::string out = text(key);
    if (value->kind != Yaml::Kind::scalar || !trimmed(out).empty()) return out;
    issues_.late_error(value->where, path_of(key), "'" + std::string(key) + "' is empty");
    return out;
}

std::string Fields::needed_name(std::string_view key) const {
    const std::string out = needed_text(key);
    const bool plain = std::all_of(out.begin(), out.end(), [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == ' ' ||
               c == '.' || c == '_' || c == '-';
    });
    if (!plain)
        error(key, "found '" + shown(out) +
                       "'; expected a name of the letters a to z, digits, blanks, '.', '_' and '-'");
    return out;
}

bool Fields::flag(std::string_view key, bool otherwise) const {
    if (!get(key)) return otherwise;
    const std::string word = text(key);
    if (word != "yes" && word != "no") error(key, "found '" + shown(word) + "'; expected yes or no");
    return word == "yes";
}

std::vector<const Yaml *> Fields::words(std::string_view key) const {
    const Yaml *value = get(key);
    if (!value) return {};
    if (value->kind == Yaml::Kind::scalar) return {value};
    std::vector<const Yaml *> out;
    if (value->kind == Yaml::Kind::map) error(key, "found a map; expected a word or a list of words");
    for (const auto &item : value->items)
        if (scalar_text(item, path_of(key), issues_)) out.push_back(&item);
    return out;
}

std::vector<const Yaml *> Fields::items(std::string_view key) const {
    std::vector<const Yaml *> out;
    const Yaml *list = get(key);
    if (!list) return out;
    if (list->kind != Yaml::Kind::list) error(key, "expected a list, each entry beginning with '- '");
    for (const auto &item : list->items) out.push_back(&item);
    return out;
}

std::string Fields::path_of(std::string_view key) const {
    return path_.empty() ? std::string(key) : path_ + "." + std::string(key);
}

void Fields::error(std::string_view key, const std::string &text) const {
    const Yaml *value = get(key);
    issues_.error(value ? value->where : node_.where, path_of(key), text);
}

} // namespace beadbook
