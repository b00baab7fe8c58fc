#include "qualify/filter_reader.hpp"

#include "language/condition_parser.hpp"
#include "language/read.hpp"
#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {
namespace {

std::optional<Trait> trait_of(const Condition &c) {
    if (c.kind == Condition::Kind::word) return static_cast<Trait>(c.slot);
    const auto quantity = c.left.lone_quantity();
    for (std::size_t i = word_traits; quantity && i < trait_count; ++i)
        if (slot_of(*info(static_cast<Trait>(i)).size) == *quantity) return static_cast<Trait>(i);
    return std::nullopt;
}

class FilterReader {
public:
    FilterReader(const Names &names, Issues &issues) : names_(names), issues_(issues) {}

    WeldFilter read(const Yaml &node, const std::string &path) {
        WeldFilter out;
        const auto maps = std::count_if(node.items.begin(), node.items.end(),
                                        [](const Yaml &y) { return y.kind == Yaml::Kind::map; });
        if (node.kind != Yaml::Kind::list || maps == 0) {
            out.alternatives.emplace_back();
            if (node.kind == Yaml::Kind::map)
                read_map(node, path, out);
            else
                read_texts(node, path, out);
            return out;
        }
        for (const auto &item : node.items) {
            if (!out.text.empty()) out.text += "; or ";
            out.alternatives.emplace_back();
            if (item.kind == Yaml::Kind::map)
                read_map(item, path, out);
            else
                issues_.error(item.where, path,
                              "found a condition among maps; expected conditions, all of which must hold, or "
                              "maps, of which one must fit");
        }
        return out;
    }

private:
    void take(Condition c, const Yaml &node, const std::string &path, const std::string &said,
              WeldFilter &out) {
        const auto trait = trait_of(c);
        const bool plain = std::all_of(c.edges.begin(), c.edges.end(),
                                       [](const Condition::Edge &e) { return e.right.quantities().empty(); });
        if (!trait)
            issues_.error(node.where, path,
                          "'" + shown(c.text) + "' asks about no size of the weld alone, such as 'diameter'");
        else if (!plain)
            issues_.error(node.where, path, "the edge of a band must be a plain number");
        else
            out.alternatives.back().push_back({*trait, std::move(c)});
        out.text += (out.text.empty() || out.text.ends_with("; or ") ? "" : ", ") + said;
    }

    void read_texts(const Yaml &node, const std::string &path, WeldFilter &out) {
        const auto one = [&](const Yaml &text) {
            if (auto c = read_condition(text, path, names_, issues_)) {
                const std::string said = c->text;
                take(std::move(*c), text, path, said, out);
            }
        };
        if (node.kind != Yaml::Kind::list) return one(node);
        for (const auto &item : node.items) one(item);
    }

    void read_map(const Yaml &node, const std::string &path, WeldFilter &out) {
        for (const auto &entry : node.entries) {
            const auto trait = read_trait(entry.key, entry.key_where, path, issues_);
            if (!trait) continue;
            const Name &subject = *names_.find(entry.key);
            auto c = entry.value.kind == Yaml::Kind::list && !is_size(*trait)
                         ? any_of(subject, entry.value, path)
                         : parsed(entry.value, path, issues_, [&](const std::string &text) {
                               return parse_condition_on(subject, text, names_);
                           });
            if (!c) continue;
            std::string said = c->text;
            if (const std::string is = entry.key + " is "; said.starts_with(is))
                said = entry.key + " " + said.substr(is.size());
            take(std::move(*c), entry.value, path, said, out);
        }
    }

    /// {form: [sheet, plate]} is "form is sheet or plate".
    std::optional<Condition> any_of(const Name &subject, const Yaml &list, const std::string &path) {
        std::vector<std::string> words;
        for (const auto &item : list.items)
            if (const auto one = parsed(item, path, issues_, [&](const std::string &word) {
                    return condition_of(subject, {word});
                }))
                words.push_back(one->words[0]);
        if (words.empty()) return std::nullopt;
        return condition_of(subject, words);
    }

    const Names &names_;
    Issues &issues_;
};

} // namespace

void add_trait_names(const RangeRules &rules, bool of_test, Names &names) {
    for (std::size_t i = 0; i < trait_count; ++i) {
        const auto trait = static_cast<Trait>(i);
        const std::string text(info(trait).name);
        if (is_size(trait))
            names.add({text,
                       Name::Kind::quantity,
                       slot_of(*info(trait).size),
                       info(*info(trait).size).dimension,
                       {}});
        else
            names.add({text, Name::Kind::word, static_cast<Slot>(i), Dimension::number,
                       (of_test ? rules.test_words : rules.work_words)[i]});
    }
}

std::optional<Trait> read_trait(const std::string &name, Where where, const std::string &path,
                                Issues &issues) {
    const auto trait = trait_named(name);
    if (!trait)
        issues.error(where, path,
                     "'" + shown(name) + "' limits no qualification; expected " +
                         listed(trait_names(), "or") + did_you_mean(name, trait_names()));
    return trait;
}

std::vector<std::string> read_word_list(const Yaml &node, const std::string &path, Issues &issues) {
    std::vector<std::string> out;
    if (node.kind == Yaml::Kind::map)
        issues.error(node.where, path, "found a map; expected a word or a list of words");
    if (node.kind == Yaml::Kind::scalar) out.push_back(node.text);
    for (const auto &item : node.items)
        if (const auto text = scalar_text(item, path, issues)) out.push_back(*text);
    return out;
}

std::vector<std::string> read_known_words(const Fields &fields, std::string_view key,
                                          const std::vector<std::string> &known, const std::string &what,
                                          Issues &issues) {
    const Yaml *list = fields.get(key);
    if (!list) return {};
    auto out = read_word_list(*list, fields.path_of(key), issues);
    for (const auto &word : out)
        if (std::find(known.begin(), known.end(), word) == known.end())
            fields.error(key, "'" + shown(word) + "' is no " + what + "; expected " + listed(known, "or"));
    return out;
}

WeldFilter read_filter(const Fields &fields, std::string_view key, const Names &names, Issues &issues) {
    const Yaml *node = fields.get(key);
    return node ? FilterReader(names, issues).read(*node, fields.path_of(key)) : WeldFilter{};
}

} // namespace beadbook
