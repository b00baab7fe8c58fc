// Where a number of a set that extends another is from, once it is no longer the other's.
#include "criteria/changed_standing.hpp"

#include "criteria/put_over.hpp"
#include "criteria/unused_names.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <span>

namespace beadbook {
namespace {

constexpr std::span limit_keys = std::span(class_maps).first<5>();
/// Keys of a rule that tell nothing of what it allows, or whose number that is.
constexpr std::array<std::string_view, 6> beside{"id", "title", "reading", "says", "standing", "standing of"};
/// Keys in which a rule speaks of quantities, formulas and tables.
constexpr std::array<std::string_view, 9> reckoned{"at most", "at least", "under",  "over",   "window",
                                                   "when",    "where",    "linked", "measure"};

template <class List>
bool is_among(const List &list, std::string_view key) {
    return std::find(list.begin(), list.end(), key) != list.end();
}

bool same(const Yaml &a, const Yaml &b) {
    return a.kind == b.kind && a.text == b.text &&
           std::equal(a.items.begin(), a.items.end(), b.items.begin(), b.items.end(), same) &&
           std::equal(a.entries.begin(), a.entries.end(), b.entries.begin(), b.entries.end(),
                      [](const Yaml::Entry &x, const Yaml::Entry &y) {
                          return x.key == y.key && same(x.value, y.value);
                      });
}

/// Whether the set says of this rule of the base where its numbers are from.
bool is_said_anew(const Yaml &own, const std::string &id) {
    const auto all = [&](const char *list) { return one_or_items(own.find(list)); };
    const auto is_it = [&](const Yaml *one) { return text_under(*one, "id") == id; };
    const auto replaced = all("rules"), changed = all("changes");
    return std::any_of(replaced.begin(), replaced.end(), is_it) ||
           std::any_of(changed.begin(), changed.end(), [&](const Yaml *one) {
               return is_it(one) && (one->find("standing") || one->find("standing of"));
           });
}

/// What stands there and speaks of that name, directly or by what a formula or table says.
std::vector<std::string> rules_that_speak_of(const std::string &name, const Yaml &base) {
    std::vector<std::string> names{name}, out;
    const auto speaks = [&](const Yaml &node) {
        return std::any_of(names.begin(), names.end(),
                           [&](const std::string &one) { return stands_in(node, one); });
    };
    for (const char *key : {"formulas", "tables"}) // each speaks of what stands above it
        if (const Yaml *map = base.find(key))
            for (const auto &entry : map->entries)
                if (speaks(entry.value)) names.push_back(entry.key);
    for (const Yaml *rule : one_or_items(base.find("rules")))
        if (std::any_of(rule->entries.begin(), rule->entries.end(), [&](const Yaml::Entry &entry) {
                return is_among(reckoned, entry.key) && speaks(entry.value);
            }))
            out.push_back(text_under(*rule, "id"));
    return out;
}

} // namespace

bool holds_class_by_class(const Yaml::Entry &entry) {
    return is_among(class_maps, entry.key) && entry.value.kind == Yaml::Kind::map;
}

void ask_standing_anew(const Yaml &change, const Yaml &rule, const std::vector<std::string> &classes,
                       Issues &issues) {
    const Yaml *own = change.find("standing of"), *was = rule.find("standing of");
    const auto is_said = [&](const std::string &id) {
        // One for all classes leaves what the base says of single ones.
        return (own && own->find(id)) || (change.find("standing") && !(was && was->find(id)));
    };
    for (const auto &entry : change.entries) {
        if (is_among(beside, entry.key)) continue;
        std::vector<std::string> silent;
        for (const auto &id : classes)
            if ((!holds_class_by_class(entry) || entry.value.find(id)) && !is_said(id)) silent.push_back(id);
        if (silent.empty()) continue;
        const bool partly = own || change.find("standing");
        return issues.late_error(
            change.where, "changes",
            "rule '" + shown(text_under(change, "id")) + "' gets another " +
                (is_among(limit_keys, entry.key) ? "limit" : "'" + entry.key + "'") +
                ", and the standing of the old one is not the new one's; give " +
                (partly ? "'standing of' for " + listed(silent) : "'standing' or 'standing of'") +
                ": where is the new " + (is_among(limit_keys, entry.key) ? "number" : "one") + " from?");
    }
}

void ask_standing_of_named(const Yaml &own, const Yaml &base, const std::string &base_name, Issues &issues) {
    for (const char *key : {"quantities", "formulas", "tables"}) {
        const Yaml *mine = own.find(key), *below = base.find(key);
        if (!mine || !below) continue;
        for (const auto &entry : mine->entries) {
            const Yaml *was = below->find(entry.key);
            if (!was || same(*was, entry.value)) continue;
            auto rules = rules_that_speak_of(entry.key, base);
            std::erase_if(rules, [&](const std::string &id) { return is_said_anew(own, id); });
            if (rules.empty()) continue;
            issues.late_error(
                entry.key_where, std::string(key) + "." + entry.key,
                "'" + shown(entry.key) + "' means something else here, and with it the limits of " +
                    (rules.size() == 1 ? "rule " : "rules ") + listed(rules) + " of " + base_name +
                    "; give each a 'standing' under 'changes': where is the new number from?");
        }
    }
}

} // namespace beadbook
