#include "criteria/load.hpp"

#include "criteria/lint.hpp"
#include "criteria/part_reader.hpp"
#include "criteria/read_once.hpp"
#include "criteria/rule_reader.hpp"
#include "criteria/shipped.hpp"
#include "criteria/unused_names.hpp"
#include "language/fields.hpp"
#include "measure/sha256.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <set>
#include <stdexcept>

namespace beadbook {
namespace {

/// Reads the head of a set, then hands each rule to the rule reader.
class SetReader {
public:
    SetReader(const std::string &text, const Vocabulary &vocabulary, const BaseText &base, Issues &issues)
        : issues_(issues), context_{vocabulary, set_, names_, issues} {
        Extended read = read_extended(text, base, issues);
        root_ = std::move(read.root);
        set_.text = std::move(read.text);
        set_.hash = sha256(set_.text);
        set_.extends = std::move(read.base);
        set_.extends_edition = std::move(read.base_edition);
        set_.extends_where = read.base_where;
        set_.inherited = std::move(read.inherited);
        base_text_ = std::move(read.base_text);
        stands_for_ = std::move(read.stands_for);
    }

    /// To be asked after `read`, of a set that was read without a mistake.
    SetBelow below() const {
        if (base_text_.empty()) return {};
        Issues of_base;
        const auto none = [](const std::string &) { return std::nullopt; }; // all is packed
        auto set = SetReader(base_text_, context_.vocabulary, none, of_base).read();
        if (of_base.any_error()) return {};
        return {std::make_shared<const CriteriaSet>(std::move(set)), stands_for_};
    }

    CriteriaSet read() {
        static const std::vector<std::string> keys{
            "set",        "title",   "edition",  "source", "notes",     "units", "classes",        "ordered",
            "quantities", "linear",  "formulas", "tables", "relevance", "merge", "required exams", "rules",
            "gaps",       "silence", "scope",    "blanks"};
        if (issues_.any_error() && root_.entries.empty()) return std::move(set_);
        for (const auto &[key, what] :
             {std::pair{"rules", "rules for welders"}, std::pair{"practice", "a practice"}})
            if (const Yaml *other = root_.find(key);
                other && other->kind == Yaml::Kind::scalar && !root_.find("set")) {
                issues_.error(other->where, key,
                              "this file holds " + std::string(what) + "; a criteria set begins with 'set'");
                return std::move(set_);
            }
        const Fields top(root_, "", keys, issues_);
        set_.name = top.needed_name("set");
        set_.title = top.needed_text("title");
        set_.edition = top.needed_text("edition");
        if (top.get("source")) set_.source = top.needed_text("source");
        set_.notes = top.text("notes");
        set_.unit = read_unit(top);
        read_classes(top);
        read_symbols(top, names_);
        if (const Yaml *quantities = top.get("quantities"))
            for (const auto &entry : quantities->entries)
                if (const Name *name = names_.find(entry.key))
                    set_.declared.push_back({name->text, name->slot, entry.key_where});
        add_set_names(names_);
        for (const Yaml *node : top.items("blanks")) read_blank(*node, context_);
        read_formulas(top);
        read_tables(top);
        read_scope(top);
        if (const Yaml *linear = top.get("linear")) read_linear(*linear);
        for (const Yaml *node : top.items("relevance")) add_relevance(read_relevance(*node, context_));
        for (const Yaml *node : top.items("merge")) set_.merges.push_back(read_merge(*node, context_));
        for (const Yaml *node : top.items("required exams"))
            set_.required.push_back(read_required_exam(*node, context_));
        for (const Yaml *node : top.items("rules")) add_rule(read_rule(*node, context_), *node);
        for (const Yaml *node : top.items("gaps")) add_gap(read_gap(*node, context_));
        for (const Yaml *node : top.items("silence")) set_.silences.push_back(read_silence(*node, context_));
        if (const Yaml *rules = set_.rules.empty() ? top.need("rules") : nullptr;
            rules && rules->kind == Yaml::Kind::list && rules->items.empty())
            top.error("rules", "there is no rule");
        index_rules();
        for (const char *part :
             {"quantities", "linear", "formulas", "tables", "relevance", "merge", "required exams", "scope"})
            if (const Yaml *node = root_.find(part)) set_.parts[part] = flat(*node, false);
        if (!issues_.any_early_error()) note_uses_of_blanks();
        set_.unused = unused_names(root_);
        return std::move(set_);
    }

private:
    /// With where it stands printed and how sure that is, or only what is said.
    static std::string flat(const Yaml &node, bool with_source) {
        std::string out = node.text;
        for (const auto &item : node.items) out += "[" + flat(item, with_source) + "]";
        for (const auto &entry : node.entries)
            if (with_source ||
                (entry.key != "clause" && entry.key != "standing" && entry.key != "standing of"))
                out += "{" + entry.key + ":" + flat(entry.value, with_source) + "}";
        return out;
    }

    static Yaml without(Yaml node, const std::set<std::string> &keys) {
        std::erase_if(node.entries, [&](const auto &entry) { return keys.contains(entry.key); });
        return node;
    }

    void read_classes(const Fields &top) {
        const Yaml *list = top.need("classes");
        if (!list) return;
        set_.classes_where = list->where;
        if (list->kind ==
            Yaml::Kind::map) { // what was meant is plain, and mistakes of the rules stay to be told
            top.error("classes", "found a map; expected a list of classes, strictest first, as in [A, B]");
            for (const auto &entry : list->entries) set_.classes.push_back({entry.key, ""});
            return;
        }
        if (list->kind != Yaml::Kind::list || list->items.empty())
            return top.error("classes", "expected a list of classes, strictest first, as in [A, B]");
        std::set<std::string> seen;
        for (const auto &node : list->items) {
            ClassInfo info;
            if (node.kind == Yaml::Kind::scalar) {
                info.id = node.text;
            } else {
                const Fields fields(node, "classes", {"id", "title"}, issues_);
                info.id = fields.needed_text("id");
                info.title = fields.text("title");
            }
            if (!seen.insert(info.id).second) {
                issues_.error(node.where, "classes", "class '" + shown(info.id) + "' stands here twice");
                context_.class_twice = true;
            }
            set_.classes.push_back(std::move(info));
        }
        if (set_.classes.size() > 32) top.error("classes", "more than 32 classes");
        set_.ordered = top.flag("ordered", true);
    }

    void read_formulas(const Fields &top) {
        const Yaml *map = top.get("formulas");
        if (!map) return;
        for (const auto &entry : map->entries) {
            if (names_.find(entry.key))
                issues_.error(entry.key_where, "formulas",
                              "'" + shown(entry.key) + "' is the name of something else here");
            if (auto f = read_formula(entry.value, "formulas." + entry.key, names_, issues_)) {
                set_.formulas.push_back({entry.key, entry.value.text});
                names_.formulas.emplace(entry.key, std::move(*f));
            } else {
                names_.unread_formulas.insert(entry.key);
            }
        }
    }

    void read_tables(const Fields &top) {
        const Yaml *map = top.get("tables");
        if (!map) return;
        for (const auto &entry : map->entries)
            if (auto table = read_table(entry.key, entry.value, names_, issues_)) {
                set_.tables.push_back(table);
                names_.tables.emplace(entry.key, std::move(table));
            } else {
                names_.unread_tables.insert(entry.key);
            }
    }

    /// Parts, or the words `not read`: then nobody knows what lies outside.
    void read_scope(const Fields &top) {
        const Yaml *node = top.get("scope");
        if (!node) return;
        set_.scope_said = true;
        if (node->kind == Yaml::Kind::scalar) {
            if (node->text != "not read")
                top.error("scope",
                          "found '" + shown(node->text) + "'; expected a list of parts, or 'not read'");
            return;
        }
        std::set<std::string> seen;
        for (const Yaml *part : top.items("scope")) {
            set_.scope.push_back(read_scope_part(*part, context_));
            if (!seen.insert(set_.scope.back().id).second)
                issues_.error(part->where, "scope", "a part above has the same id");
        }
        if (node->kind == Yaml::Kind::list && node->items.empty()) top.error("scope", "there is no part");
    }

    void read_linear(const Yaml &node) {
        const Fields fields(node, "linear", {"when", "clause", "standing"}, issues_);
        set_.linear_where = node.where;
        set_.linear_clause = fields.needed_text("clause");
        set_.linear_standing = read_standing(fields, issues_);
        if (const Yaml *when = fields.need("when"))
            if (auto c = read_condition(*when, "linear.when", names_, issues_)) {
                refuse_scopes({*c}, {Scope::pair, Scope::group}, true, fields, "linear.when");
                if (c->kind != Condition::Kind::comparison)
                    fields.error("when", "expected a comparison such as 'length over 3 x width'");
                set_.linear = std::move(c);
            }
    }

    void add_rule(std::optional<Rule> rule, const Yaml &node) {
        if (!rule) return;
        written_.push_back(flat(without(node, {"title", "standing"}), true));
        if (!ids_.insert(rule->id).second)
            issues_.error(rule->where_from, "rules." + rule->id, "a rule above has the same id");
        take_needs(rule->where, [&](Slot q) {
            return rule->measure.uses(q) || std::any_of(rule->limits.begin(), rule->limits.end(),
                                                        [&](const Limit &l) { return l.formula.uses(q); });
        });
        set_.rules.push_back(std::move(*rule));
    }

    /// Ways to neighbours that conditions, or what stands beside them, speak of.
    template <class Beside>
    void take_needs(const std::vector<Condition> &conditions, Beside beside) {
        const auto needs = [&](Quantity q) {
            return beside(slot_of(q)) || std::any_of(conditions.begin(), conditions.end(),
                                                     [&](const Condition &c) { return c.uses(slot_of(q)); });
        };
        set_.needs_nearest_gap = set_.needs_nearest_gap || needs(Quantity::nearest_gap);
        set_.needs_nearest_like_gap = set_.needs_nearest_like_gap || needs(Quantity::nearest_like_gap);
    }

    void add_relevance(Relevance one) {
        const bool of_all =
            std::all_of(one.classes.begin(), one.classes.end(), [](bool speaks) { return speaks; });
        set_.counts_by_class = set_.counts_by_class || !of_all;
        set_.relevance.push_back(std::move(one));
    }

    void add_gap(Gap gap) {
        take_needs(gap.where, [](Slot) { return false; });
        set_.gaps.push_back(std::move(gap));
    }

    void index_rules() {
        const std::size_t types = context_.vocabulary.size();
        set_.by_type_and_exam.resize(types * exam_count);
        for (std::size_t r = 0; r < set_.rules.size(); ++r)
            for (std::size_t t = 0; t < types; ++t)
                for (std::size_t e = 0; e < exam_count; ++e)
                    if (set_.rules[r].subject.covers(static_cast<TypeId>(t), static_cast<Exam>(e)))
                        set_.by_type_and_exam[t * exam_count + e].push_back(static_cast<std::uint16_t>(r));
    }

    /// Of the whole rule, also where it speaks of the blank for one class only: it was read as a whole.
    void note_uses_of_blanks() {
        std::string beside = std::string(name_of(set_.unit)) + "\n" + joined(set_.class_names(), ",");
        for (const char *part : {"quantities", "linear", "formulas", "tables"})
            if (const Yaml *node = root_.find(part)) beside += "\n" + flat(*node, true);
        for (auto &blank : set_.blanks) {
            std::string all = beside;
            const auto slot = static_cast<Slot>(&blank - set_.blanks.data());
            for (std::size_t r = 0; r < set_.rules.size(); ++r)
                if (speaks_of(set_.rules[r], slot)) all += "\n" + written_[r];
            blank.use = sha256(all);
        }
    }

    bool speaks_of(const Rule &rule, Slot blank) const {
        for (std::size_t c = 0; c < set_.classes.size(); ++c)
            if (const auto lacking = set_.blanks_of(rule, c);
                std::find(lacking.begin(), lacking.end(), blank) != lacking.end())
                return true;
        return false;
    }

    Issues &issues_;
    Yaml root_;
    CriteriaSet set_;
    Names names_;
    ReadContext context_;
    std::string base_text_;
    std::vector<std::pair<std::string, std::string>> stands_for_;
    std::vector<std::string> written_; ///< each rule, in their order
    std::set<std::string> ids_;
};

Loaded outcome(std::shared_ptr<const CriteriaSet> set, Issues &issues) {
    issues.sort_by_place();
    Loaded out;
    if (!issues.any_early_error()) out.kept = std::move(set);
    if (!issues.any_error()) out.set = out.kept;
    out.issues = issues.all();
    return out;
}

} // namespace

Loaded load_criteria(const std::string &text, const Vocabulary &vocabulary, const BaseText &base) {
    Issues issues;
    SetReader reader(text, vocabulary, base, issues);
    const auto set = std::make_shared<CriteriaSet>(reader.read());
    if (!issues.any_error()) set->doubted = lint(*set, reader.below(), vocabulary, issues);
    return outcome(set, issues);
}

Loaded load_checked_criteria(const std::string &text) {
    Issues issues;
    auto set = std::make_shared<const CriteriaSet>(
        SetReader(text, Vocabulary::shipped(), shipped_base, issues).read());
    return outcome(std::move(set), issues);
}

std::shared_ptr<const CriteriaSet> shipped_criteria(const std::string &name) {
    static ReadOnce<CriteriaSet> all;
    return all.get(name, [](const std::string &set) {
        Loaded loaded = load_checked_criteria(shipped_file(set + ".yaml"));
        if (!loaded.set)
            throw std::logic_error("built-in criteria " + set + ": " + loaded.issues.front().text);
        return loaded.set;
    });
}

} // namespace beadbook
