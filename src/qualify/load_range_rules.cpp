#include "qualify/range_rules.hpp"

#include "criteria/read_once.hpp"
#include "criteria/rule_reader.hpp"
#include "criteria/shipped.hpp"
#include "language/condition_parser.hpp"
#include "measure/sha256.hpp"
#include "measure/text.hpp"
#include "qualify/filter_reader.hpp"
#include "qualify/validity_reader.hpp"

#include <algorithm>
#include <set>
#include <stdexcept>

namespace beadbook {
namespace {

std::vector<std::string> exam_words() {
    auto out = exam_names();
    out.emplace_back("mechanical");
    return out;
}

class RulesReader {
public:
    RulesReader(const std::string &text, Issues &issues) : issues_(issues), root_(read_yaml(text, issues)) {
        rules_.text = text;
        rules_.hash = sha256(text);
    }

    RangeRules read() {
        static const std::vector<std::string> keys{
            "rules",   "title",       "edition",   "source",      "notes",        "units",    "quantities",
            "words",   "usual sizes", "variables", "ranges",      "examinations", "validity", "retest",
            "renewal", "gaps",        "ends",      "base metals", "accepted by"};
        if (issues_.any_error() && root_.entries.empty()) return std::move(rules_);
        const Fields top(root_, "", keys, issues_);
        rules_.name = top.needed_name("rules");
        rules_.title = top.needed_text("title");
        rules_.edition = top.needed_text("edition");
        rules_.source = top.text("source");
        rules_.notes = top.text("notes");
        rules_.unit = read_unit(top);
        read_words(top);
        add_trait_names(rules_, true, test_names_);
        add_trait_names(rules_, false, work_names_);
        read_symbols(top, test_names_);
        if (const Yaml *map = top.get("quantities"))
            for (const auto &entry : map->entries) rules_.quantities.emplace(entry.key, entry.value.text);
        read_usual_sizes(top);
        rules_.base_metals =
            read_known_words(top, "base metals", info(Fact::material).words, "base metal", issues_);
        for (const Yaml *node : top.items("variables")) read_variable(*node);
        for (const Yaml *node : top.items("ranges")) read_rule(*node);
        for (const Yaml *node : top.items("examinations")) read_exam(*node);
        for (const Yaml *node : top.items("accepted by")) read_accepted_by(*node);
        if (const Yaml *ends = top.get("ends")) read_ends(*ends);
        read_validity(top, rules_, issues_);
        for (const Yaml *gap : top.items("gaps")) read_gap(*gap);
        if (top.need("variables") && top.need("ranges")) check_whole(top);
        return std::move(rules_);
    }

private:
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
            const auto trait = read_trait(entry.key, entry.key_where, path, issues_);
            if (!trait) continue;
            if (is_size(*trait) || info(*trait).fact) {
                issues_.error(entry.key_where, path, "its words are not the rule set's to choose");
                continue;
            }
            auto &test = rules_.test_words[index_of(*trait)], &work = rules_.work_words[index_of(*trait)];
            if (entry.value.kind != Yaml::Kind::map) {
                test = work = read_word_list(entry.value, path, issues_);
                continue;
            }
            const Fields sides(entry.value, path, {"test", "work"}, issues_);
            if (const Yaml *node = sides.need("test")) test = read_word_list(*node, path, issues_);
            if (const Yaml *node = sides.need("work")) work = read_word_list(*node, path, issues_);
        }
    }

    void read_usual_sizes(const Fields &top) {
        const Yaml *map = top.get("usual sizes");
        if (!map) return;
        for (const auto &entry : map->entries) {
            const std::string path = "usual sizes." + entry.key;
            const auto trait = read_trait(entry.key, entry.key_where, path, issues_);
            if (!trait) continue;
            if (!is_size(*trait)) {
                issues_.error(entry.key_where, path, "this is a word, not a size");
                continue;
            }
            for (const auto &text : read_word_list(entry.value, path, issues_)) try {
                    rules_.usual_sizes[index_of(*trait)].push_back(
                        parse_typed(text, info(*info(*trait).size).dimension, std::nullopt).value);
                } catch (const InputError &e) {
                    issues_.error(entry.value.where, path, e.what());
                }
        }
    }

    void read_variable(const Yaml &node) {
        Variable out;
        if (node.kind == Yaml::Kind::scalar) {
            const auto trait = read_trait(node.text, node.where, "variables", issues_);
            if (trait) rules_.variables.push_back({*trait, {}});
            return;
        }
        const Fields fields(node, "variables", {"of", "work"}, issues_);
        const auto trait = read_trait(fields.needed_text("of"), node.where, "variables.of", issues_);
        out.work = read_filter(fields, "work", work_names_, issues_);
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
        const auto trait = read_trait(fields.needed_text("of"), node.where, fields.path_of("of"), issues_);
        out.test = read_filter(fields, "test", test_names_, issues_);
        out.work = read_filter(fields, "work", work_names_, issues_);
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
                auto words = read_word_list(entry.value, fields.path_of("by test"), issues_);
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
            out.band = parsed(*allows, fields.path_of("allows"), issues_, [&](const std::string &text) {
                           return parse_range(text, test_names_, d);
                       }).value_or(std::vector<Condition::Edge>{});
        } else {
            out.kind = RangeRule::Kind::words;
            out.words = read_word_list(*allows, fields.path_of("allows"), issues_);
            check(out.of, false, out.words, allows->where, fields.path_of("allows"));
            out.text = listed(out.words);
        }
    }

    void read_gap(const Yaml &node) {
        if (node.kind == Yaml::Kind::scalar) return rules_.gaps.push_back(node.text);
        const Fields fields(node, "gaps", {"of", "work", "what"}, issues_);
        const auto trait = read_trait(fields.needed_text("of"), node.where, "gaps.of", issues_);
        UnreadTrait out;
        out.variable.work = read_filter(fields, "work", work_names_, issues_);
        out.rest.text = fields.needed_text("what");
        rules_.gaps.push_back(out.what());
        if (!trait) return;
        out.variable.of = *trait;
        if (std::any_of(rules_.variables.begin(), rules_.variables.end(),
                        [&](const Variable &v) { return v.of == *trait; }))
            fields.error("of",
                         "'" + std::string(info(*trait).name) + "' is among the variables, so it was read");
        out.variable.unread = true;
        out.own.of = out.rest.of = *trait;
        out.own.id = out.rest.id = "unread-" + field_of(*trait);
        out.own.clause = "the test's own";
        out.own.standing = {Standing::Kind::house, "what was tested is certain, though no limit was read"};
        out.own.text = "same";
        out.rest.kind = RangeRule::Kind::unread;
        out.rest.clause = "not read";
        out.rest.standing = {Standing::Kind::blank, "no limit was read"};
        rules_.unread.push_back(std::move(out));
    }

    void read_ends(const Yaml &node) {
        const Fields fields(node, "ends", {"compared", "clause", "standing"}, issues_);
        EndComparison &out = rules_.ends;
        out.from = read_authority(fields, issues_);
        out.text = fields.needed_text("compared");
        if (out.text.empty() || out.text == "absolute") return;
        constexpr std::string_view rounded = "rounded to ", wider = "absolute or rounded to ";
        const bool either = out.text.starts_with(wider);
        if (!either && !out.text.starts_with(rounded))
            return fields.error("compared", "found '" + shown(out.text) +
                                                "'; expected absolute, rounded to a length, or absolute or "
                                                "rounded to a length");
        out.kind = either ? EndComparison::Kind::wider : EndComparison::Kind::rounded;
        try {
            out.place = parse_typed(out.text.substr((either ? wider : rounded).size()), Dimension::length,
                                    std::nullopt)
                            .value;
            if (out.place <= Exact(0)) fields.error("compared", "the place must be over 0");
        } catch (const InputError &e) {
            fields.error("compared", e.what());
        }
    }

    void read_exam(const Yaml &node) {
        const Fields fields(node, "examinations", {"id", "one of", "test", "clause", "standing"}, issues_);
        TestExam out;
        out.id = fields.needed_text("id");
        out.test = read_filter(fields, "test", test_names_, issues_);
        const Authority from = read_authority(fields, issues_);
        out.clause = from.clause;
        out.standing = from.standing;
        fields.need("one of");
        out.one_of = read_known_words(fields, "one of", exam_words(), "examination", issues_);
        rules_.exams.push_back(std::move(out));
    }

    void read_accepted_by(const Yaml &node) {
        const Fields fields(node, "accepted by", {"criteria", "classes", "clause", "standing"}, issues_);
        AcceptedBy out{fields.needed_text("criteria"), {}, read_authority(fields, issues_)};
        if (const Yaml *classes = fields.get("classes"))
            out.classes = read_word_list(*classes, fields.path_of("classes"), issues_);
        rules_.accepted_by.push_back(std::move(out));
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
    Names test_names_, work_names_; ///< ranges and tests speak of the test's sizes by its symbols too
    std::set<std::string> ids_;
};

} // namespace

LoadedRules load_range_rules(const std::string &text) {
    Issues issues;
    auto rules = std::make_shared<RangeRules>(RulesReader(text, issues).read());
    issues.sort_by_place();
    LoadedRules out;
    if (!issues.any_early_error()) out.kept = std::move(rules);
    if (!issues.any_error()) out.rules = out.kept;
    out.issues = issues.all();
    return out;
}

const std::vector<std::string> &shipped_range_rule_names() {
    static const auto names = shipped_in("welder/");
    return names;
}

std::shared_ptr<const RangeRules> shipped_range_rules(const std::string &name) {
    static ReadOnce<RangeRules> all;
    return all.get(name, [](const std::string &rules) {
        LoadedRules loaded = load_range_rules(shipped_file("welder/" + rules + ".yaml"));
        if (!loaded.rules)
            throw std::logic_error("built-in rules " + rules + ": " + loaded.issues.front().text);
        return loaded.rules;
    });
}

} // namespace beadbook
