#include "qualify/range_rules.hpp"

#include "criteria/rule_reader.hpp"
#include "criteria/shipped.hpp"
#include "language/fields.hpp"
#include "measure/sha256.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <set>
#include <stdexcept>

namespace beadbook {
namespace {

const std::vector<std::string> exam_words{"VT", "MT", "PT", "RT", "mechanical"};

class RulesReader {
public:
    RulesReader(const std::string &text, Issues &issues) : issues_(issues), root_(read_yaml(text, issues)) {
        rules_.text = text;
        rules_.hash = sha256(text);
    }

    RangeRules read() {
        static const std::vector<std::string> keys{"rules",       "title",     "edition",    "source",
                                                   "notes",       "units",     "quantities", "words",
                                                   "usual sizes", "variables", "ranges",     "examinations",
                                                   "validity",    "retest",    "renewal",    "gaps"};
        if (issues_.any_error() && root_.entries.empty()) return std::move(rules_);
        const Fields top(root_, "", keys, issues_);
        rules_.name = top.needed_text("rules");
        rules_.title = top.needed_text("title");
        rules_.edition = top.needed_text("edition");
        rules_.source = top.text("source");
        rules_.notes = top.text("notes");
        rules_.unit = read_unit(top);
        read_symbols(top, names_);
        read_words(top);
        read_usual_sizes(top);
        for (const Yaml *node : top.items("variables")) read_variable(*node);
        for (const Yaml *node : top.items("ranges")) read_rule(*node);
        for (const Yaml *node : top.items("examinations")) read_exam(*node);
        for (const Yaml *node : top.items("validity")) read_validity(*node);
        read_retest(top);
        rules_.renewal = read_coupons(top, "renewal");
        for (const Yaml *gap : top.words("gaps")) rules_.gaps.push_back(gap->text);
        if (top.need("variables") && top.need("ranges")) check_whole(top);
        return std::move(rules_);
    }

private:
    std::optional<Trait> read_trait(const std::string &name, Where where, const std::string &path) {
        const auto trait = trait_named(name);
        if (!trait)
            issues_.error(where, path,
                          "'" + shown(name) + "' limits no qualification; expected " +
                              listed(trait_names(), "or") + did_you_mean(name, trait_names()));
        return trait;
    }

    /// A word alone or a list of words.
    std::vector<std::string> word_list(const Yaml &node, const std::string &path) {
        std::vector<std::string> out;
        if (node.kind == Yaml::Kind::map)
            issues_.error(node.where, path, "found a map; expected a word or a list of words");
        if (node.kind == Yaml::Kind::scalar) out.push_back(node.text);
        for (const auto &item : node.items)
            if (const auto text = scalar_text(item, path, issues_)) out.push_back(*text);
        return out;
    }

    void check(Trait trait, bool of_test, const std::vector<std::string> &words, Where where,
               const std::string &path) {
        for (const auto &word : words) {
            try {
                check_word(rules_, trait, of_test, word);
            } catch (const InputError &e) {
                issues_.error(where, path, e.what());
            }
        }
    }

    void read_words(const Fields &top) {
        for (std::size_t i = 0; i < word_traits; ++i)
            if (const auto fact = info(static_cast<Trait>(i)).fact)
                rules_.test_words[i] = rules_.work_words[i] = info(*fact).words;
        const Yaml *map = top.get("words");
        if (!map) return;
        for (const auto &entry : map->entries) {
            const std::string path = "words." + entry.key;
            const auto trait = read_trait(entry.key, entry.key_where, path);
            if (!trait) continue;
            if (is_size(*trait) || info(*trait).fact) {
                issues_.error(entry.key_where, path, "its words are not the rule set's to choose");
                continue;
            }
            auto &test = rules_.test_words[index_of(*trait)], &work = rules_.work_words[index_of(*trait)];
            if (entry.value.kind != Yaml::Kind::map) {
                test = work = word_list(entry.value, path);
                continue;
            }
            const Fields sides(entry.value, path, {"test", "work"}, issues_);
            if (const Yaml *node = sides.need("test")) test = word_list(*node, path);
            if (const Yaml *node = sides.need("work")) work = word_list(*node, path);
        }
    }

    void read_usual_sizes(const Fields &top) {
        const Yaml *map = top.get("usual sizes");
        if (!map) return;
        for (const auto &entry : map->entries) {
            const std::string path = "usual sizes." + entry.key;
            const auto trait = read_trait(entry.key, entry.key_where, path);
            if (!trait) continue;
            if (!is_size(*trait)) {
                issues_.error(entry.key_where, path, "this is a word, not a size");
                continue;
            }
            for (const auto &text : word_list(entry.value, path)) try {
                    rules_.usual_sizes[index_of(*trait)].push_back(
                        parse_typed(text, info(*info(*trait).size).dimension, std::nullopt).value);
                } catch (const InputError &e) {
                    issues_.error(entry.value.where, path, e.what());
                }
        }
    }

    std::vector<TraitTest> read_alternative(const Yaml &node, const std::string &path, bool of_test,
                                            std::string &text) {
        std::vector<TraitTest> out;
        if (node.kind != Yaml::Kind::map)
            issues_.error(node.where, path, "expected a map such as {joint: groove, form: [sheet, plate]}");
        for (const auto &entry : node.entries) {
            const auto trait = read_trait(entry.key, entry.key_where, path);
            if (!trait) continue;
            TraitTest one;
            one.trait = *trait;
            std::string said;
            if (is_size(*trait)) {
                said = scalar_text(entry.value, path, issues_).value_or("");
                one.band = read_band(entry.value, path, *trait);
            } else {
                one.words = word_list(entry.value, path);
                check(*trait, of_test, one.words, entry.value.where, path);
                said = listed(one.words, "or");
            }
            text += (text.empty() || text.ends_with("; or ") ? "" : ", ") + entry.key + " " + said;
            out.push_back(std::move(one));
        }
        return out;
    }

    WeldFilter read_filter(const Fields &fields, std::string_view key, bool of_test) {
        WeldFilter out;
        const Yaml *node = fields.get(key);
        if (!node) return out;
        const std::string path = fields.path_of(key);
        if (node->kind != Yaml::Kind::list) {
            out.alternatives.push_back(read_alternative(*node, path, of_test, out.text));
            return out;
        }
        for (const auto &item : node->items) {
            if (!out.text.empty()) out.text += "; or ";
            out.alternatives.push_back(read_alternative(item, path, of_test, out.text));
        }
        return out;
    }

    template <class Parse>
    auto parsed(const Yaml &node, const std::string &path, Parse parse) -> decltype(parse(node.text)) {
        if (!scalar_text(node, path, issues_)) return {};
        try {
            return parse(node.text);
        } catch (const InputError &e) {
            Where at = node.where;
            at.column += static_cast<int>(e.column) + (node.quoted ? 1 : 0);
            issues_.error(at, path, e.what());
            return {};
        }
    }

    std::vector<Table::Edge> read_band(const Yaml &node, const std::string &path, Trait trait) {
        const Dimension d = info(*info(trait).size).dimension;
        return parsed(node, path, [&](const std::string &text) { return parse_band(text, names_, d); });
    }

    Authority read_authority(const Fields &fields) {
        return {fields.needed_text("clause"), read_standing(fields, issues_)};
    }

    void read_variable(const Yaml &node) {
        Variable out;
        if (node.kind == Yaml::Kind::scalar) {
            const auto trait = read_trait(node.text, node.where, "variables");
            if (trait) rules_.variables.push_back({*trait, {}});
            return;
        }
        const Fields fields(node, "variables", {"of", "work"}, issues_);
        const auto trait = read_trait(fields.needed_text("of"), node.where, "variables.of");
        out.work = read_filter(fields, "work", false);
        if (!trait) return;
        out.of = *trait;
        rules_.variables.push_back(std::move(out));
    }

    void read_rule(const Yaml &node) {
        static const std::vector<std::string> keys{"id",     "of",       "test",    "work",   "allows",
                                                   "clause", "standing", "reading", "by test"};
        const std::string name = node.find("id") ? node.find("id")->text : "?";
        const Fields fields(node, "ranges." + name, keys, issues_);
        RangeRule out;
        out.where_from = node.where;
        out.id = fields.needed_text("id");
        const auto trait = read_trait(fields.needed_text("of"), node.where, fields.path_of("of"));
        out.test = read_filter(fields, "test", true);
        out.work = read_filter(fields, "work", false);
        out.clause = fields.needed_text("clause");
        out.standing = read_standing(fields, issues_);
        out.reading = fields.text("reading");
        if (!ids_.insert(out.id).second)
            issues_.error(node.where, fields.path_of("id"), "a range above has the same id");
        if (!trait) return;
        out.of = *trait;
        read_allowance(fields, out);
        rules_.rules.push_back(std::move(out));
    }

    void read_allowance(const Fields &fields, RangeRule &out) {
        const Yaml *allows = fields.get("allows"), *by = fields.get("by test");
        if (!allows == !by) return fields.error("allows", "expected either 'allows' or 'by test'");
        if (by) {
            if (is_size(out.of) || by->kind != Yaml::Kind::map)
                return fields.error("by test", "expected a map from the test's words to lists of words");
            out.kind = RangeRule::Kind::words;
            for (const auto &entry : by->entries) {
                auto words = word_list(entry.value, fields.path_of("by test"));
                check(out.of, true, {entry.key}, entry.key_where, fields.path_of("by test"));
                check(out.of, false, words, entry.value.where, fields.path_of("by test"));
                out.by.emplace(entry.key, std::move(words));
            }
            out.text = "by the test's own";
            return;
        }
        out.text = allows->text;
        if (allows->text == "any" || allows->text == "same") {
            out.kind = allows->text == "any" ? RangeRule::Kind::any : RangeRule::Kind::same;
        } else if (is_size(out.of)) {
            out.kind = RangeRule::Kind::band;
            const Dimension d = info(*info(out.of).size).dimension;
            out.band = parsed(*allows, fields.path_of("allows"),
                              [&](const std::string &text) { return parse_range(text, names_, d); });
        } else {
            out.kind = RangeRule::Kind::words;
            out.words = word_list(*allows, fields.path_of("allows"));
            check(out.of, false, out.words, allows->where, fields.path_of("allows"));
            out.text = listed(out.words);
        }
    }

    void read_exam(const Yaml &node) {
        const Fields fields(node, "examinations", {"id", "one of", "test", "clause", "standing"}, issues_);
        TestExam out;
        out.id = fields.needed_text("id");
        out.test = read_filter(fields, "test", true);
        const Authority from = read_authority(fields);
        out.clause = from.clause;
        out.standing = from.standing;
        if (const Yaml *list = fields.need("one of")) out.one_of = word_list(*list, fields.path_of("one of"));
        for (const auto &word : out.one_of)
            if (std::find(exam_words.begin(), exam_words.end(), word) == exam_words.end())
                fields.error("one of",
                             "'" + shown(word) + "' is no examination; expected " + listed(exam_words, "or"));
        rules_.exams.push_back(std::move(out));
    }

    std::optional<Period> read_period(const Fields &fields, std::string_view key) {
        const Yaml *node = fields.get(key);
        if (!node) return std::nullopt;
        const Period p =
            parsed(*node, fields.path_of(key), [](const std::string &text) { return parse_period(text); });
        return p.text.empty() ? std::nullopt : std::optional(p);
    }

    int read_count(const Fields &fields, std::string_view key) {
        const std::string text = fields.needed_text(key);
        if (text.size() == 1 && text[0] >= '1' && text[0] <= '9') return text[0] - '0';
        if (fields.get(key)) fields.error(key, "found '" + shown(text) + "'; expected a number from 1 to 9");
        return 1;
    }

    void read_validity(const Yaml &node) {
        static const std::vector<std::string> keys{"id",          "lasts",     "use every", "counted in",
                                                   "kept by use", "extension", "clause",    "standing"};
        const Fields fields(node, "validity", keys, issues_);
        ValidityWay out;
        out.id = fields.needed_text("id");
        out.lasts = read_period(fields, "lasts");
        out.use_every = read_period(fields, "use every");
        out.from = read_authority(fields);
        out.kept_by_use = fields.flag("kept by use", false);
        if (out.kept_by_use && !(out.lasts && out.use_every))
            fields.error("kept by use", "needs 'lasts' and 'use every'");
        if (const std::string how = fields.text("counted in"); !how.empty()) {
            out.whole_months = how == "calendar months";
            if (how != "calendar months" && how != "days")
                fields.error("counted in", "found '" + shown(how) + "'; expected days or calendar months");
            if (out.whole_months && out.use_every && out.use_every->days != 0)
                fields.error("counted in", "'use every' is in days; calendar months need months");
        }
        if (const Yaml *extension = fields.get("extension")) {
            const Fields one(*extension, "validity.extension",
                             {"welds", "within", "adds", "clause", "standing"}, issues_);
            ValidityWay::Extension e;
            e.welds = read_count(one, "welds");
            one.need("within");
            one.need("adds");
            e.within = read_period(one, "within").value_or(Period{});
            e.adds = read_period(one, "adds").value_or(Period{});
            e.from = read_authority(one);
            out.extension = std::move(e);
        }
        rules_.validity.push_back(std::move(out));
    }

    std::optional<CouponsAsked> read_coupons(const Fields &fields, std::string_view key) {
        const Yaml *node = fields.get(key);
        if (!node) return std::nullopt;
        const Fields one(*node, fields.path_of(key), {"coupons", "clause", "standing"}, issues_);
        CouponsAsked out;
        out.coupons = read_count(one, "coupons");
        out.from = read_authority(one);
        return out;
    }

    void read_retest(const Fields &top) {
        const Yaml *node = top.get("retest");
        if (!node) return;
        const Fields fields(*node, "retest", {"immediate", "after training"}, issues_);
        rules_.retest.immediate = read_coupons(fields, "immediate");
        rules_.retest.after_training = read_coupons(fields, "after training");
    }

    /// Mistakes that only show when all is read.
    void check_whole(const Fields &top) {
        for (const auto &variable : rules_.variables) {
            const bool any = std::any_of(rules_.rules.begin(), rules_.rules.end(),
                                         [&](const RangeRule &r) { return r.of == variable.of; });
            if (!any)
                top.error("variables", "no range speaks of '" + std::string(info(variable.of).name) +
                                           "', so nothing would ever be qualified");
        }
        for (const auto &rule : rules_.rules) {
            const bool any = std::any_of(rules_.variables.begin(), rules_.variables.end(),
                                         [&](const Variable &v) { return v.of == rule.of; });
            if (!any)
                issues_.error(rule.where_from, "ranges." + rule.id,
                              "'" + std::string(info(rule.of).name) + "' is not among the variables");
        }
        if (rules_.validity.empty()) top.error("validity", "there must be at least one way");
    }

    Issues &issues_;
    Yaml root_;
    RangeRules rules_;
    Names names_;
    std::set<std::string> ids_;
};

} // namespace

const ValidityWay *RangeRules::way(std::string_view id) const {
    const auto found =
        std::find_if(validity.begin(), validity.end(), [&](const ValidityWay &w) { return w.id == id; });
    return found == validity.end() ? nullptr : &*found;
}

void check_word(const RangeRules &rules, Trait trait, bool of_test, const std::string &word) {
    const auto &known = (of_test ? rules.test_words : rules.work_words)[index_of(trait)];
    if (known.empty() || std::find(known.begin(), known.end(), word) != known.end()) return;
    throw InputError(std::string(info(trait).name) + ": '" + shown(word) + "' is not known to " + rules.name +
                     (of_test ? " for a test" : " for work") + "; expected " + listed(known, "or") +
                     did_you_mean(word, known));
}

LoadedRules load_range_rules(const std::string &text) {
    Issues issues;
    auto rules = std::make_shared<RangeRules>(RulesReader(text, issues).read());
    issues.sort_by_place();
    LoadedRules out;
    if (!issues.any_error()) out.rules = std::move(rules);
    out.issues = issues.all();
    return out;
}

std::vector<std::string> shipped_range_rule_names() { return shipped_in("welder/"); }

std::shared_ptr<const RangeRules> shipped_range_rules(const std::string &name) {
    LoadedRules loaded = load_range_rules(shipped_file("welder/" + name + ".yaml"));
    if (!loaded.rules) throw std::logic_error("built-in rules " + name + ": " + loaded.issues.front().text);
    return loaded.rules;
}

} // namespace beadbook
