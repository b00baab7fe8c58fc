#include "report/criteria_document.hpp"

#include "measure/print.hpp"
#include "measure/text.hpp"
#include "report/check_document.hpp"
#include "report/own_file.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// The clause, and each source with the classes that rest on it where they differ.
std::string source_words(const CriteriaSet &set, const Rule &rule) {
    std::vector<std::pair<std::string, std::vector<std::string>>> by_source;
    for (std::size_t c = 0; c < set.classes.size(); ++c) {
        const std::string words = print_in_full(rule.standings[c]);
        if (by_source.empty() || by_source.back().first != words) by_source.push_back({words, {}});
        by_source.back().second.push_back(set.classes[c].id);
    }
    std::string out = rule.clause;
    for (const auto &[words, classes] : by_source)
        out += "; " + (by_source.size() > 1 ? listed(classes) + " " : std::string()) + words;
    return out;
}

std::string window_words_of(const CriteriaSet &set, const Rule &rule) {
    if (!rule.window_by_class) return rule.windows.empty() ? "" : rule.windows.front().text;
    std::string out;
    for (std::size_t c = 0; c < set.classes.size(); ++c)
        out += (c > 0 ? ", " : "") + rule.windows[c].text + " (" + set.classes[c].id + ")";
    return out;
}

std::string limit_words(const CriteriaSet &set, const Rule &rule) {
    std::string out;
    if (const auto words = condition_words(rule.when, rule.where); !words.empty())
        out += "where " + words + ": ";
    out += measure_words(rule);
    if (const std::string words = window_words_of(set, rule); !words.empty()) out += " in any " + words;
    if (rule.linked) out += " of a line (" + rule.linked->text + ")";
    if (rule.least_group > 1) out += " of " + std::to_string(rule.least_group) + " or more";
    if (rule.kind != Rule::Kind::presence && rule.kind != Rule::Kind::coupon)
        out += " " + std::string(name_of(rule.compare));
    for (std::size_t c = 0; c < set.classes.size(); ++c)
        out += (c > 0 ? "; " : " ") + set.classes[c].id + ": " + rule.limits[c].text +
               (needs_checking(rule.standings[c]) ? " (" + std::string(name_of(rule.standings[c].kind)) + ")"
                                                  : "");
    if (rule.only_with) out += "; rejects only together with " + set.rules[*rule.only_with].id;
    return out;
}

/// ", class A": if it is not for all.
std::string class_words(const CriteriaSet &set, const std::vector<bool> &speaks) {
    std::vector<std::string> out;
    for (std::size_t c = 0; c < set.classes.size(); ++c)
        if (speaks[c]) out.push_back(set.classes[c].id);
    return out.size() == set.classes.size() ? "" : ", class " + listed(out);
}

void add_required(Document &out, const CriteriaSet &set) {
    if (!set.required.empty()) out.heading("Required examinations", 2);
    for (const auto &exam : set.required) {
        std::vector<std::string> one_of;
        for (const Exam one : exam.one_of) one_of.emplace_back(name_of(one));
        const std::string when = condition_words(exam.when);
        out.item(listed(one_of, "or") + class_words(set, exam.classes) +
                     (when.empty() ? "" : ", where " + when),
                 exam.clause + "; " + print_in_full(exam.standing));
    }
}

void add_scope(Document &out, const CriteriaSet &set) {
    out.heading("What it covers", 2);
    if (set.scope.empty())
        out.item(set.scope_said ? "not read: nobody knows what lies outside" : "the file does not say");
    for (const auto &part : set.scope) {
        const std::string only_if = condition_words(part.only_if);
        out.item(part.id + ": " + (part.title.empty() ? "" : part.title + ": ") + part.text +
                     (only_if.empty() ? "" : ", if " + only_if),
                 part.clause + "; " + print_in_full(part.standing));
    }
}

void add_counting(Document &out, const CriteriaSet &set) {
    if (!set.relevance.empty()) out.heading("Not counted", 2);
    for (const auto &one : set.relevance)
        out.item(one.id + ": " + one.text + class_words(set, one.classes),
                 one.clause + "; " + print_in_full(one.standing));
    if (!set.merges.empty()) out.heading("Neighbours that count as one", 2);
    for (const auto &one : set.merges)
        out.item(one.id + ": " + one.when.text, one.clause + "; " + print_in_full(one.standing),
                 one.reading.empty() ? std::vector<Bullet>{}
                                     : std::vector<Bullet>{{"our reading: " + one.reading, "", {}}});
}

/// What is open stays so until the shop fills it; what is filled tells by whom.
void add_blanks(Document &out, const CriteriaSet &set) {
    if (!set.blanks.empty()) out.heading("Blanks, to be filled from the owner's copy", 2);
    for (const auto &blank : set.blanks) {
        std::vector<Bullet> under;
        for (std::size_t c = 0; c < set.classes.size(); ++c) {
            if (!blank.classes[c]) continue;
            const auto filled = std::find_if(set.fillings.begin(), set.fillings.end(), [&](const Filling &f) {
                return f.blank == blank.id && f.class_id == set.classes[c].id;
            });
            under.push_back(
                {set.classes[c].id + ": " +
                     (filled == set.fillings.end() ? "open"
                                                   : print_exact(filled->value, blank.dimension(), set.unit) +
                                                         ", filled by " + filled->by),
                 "",
                 {}});
        }
        out.item(blank.id + ": " + blank.limits + " (" + std::string(name_of(blank.kind)) + ")", blank.clause,
                 std::move(under));
    }
}

std::string gap_words(const CriteriaSet &set, const Gap &gap) {
    if (!gap.beside_rules) return "";
    std::string conditions = condition_words(gap.when, gap.where);
    if (gap.shape != Shape::unknown)
        conditions += (conditions.empty() ? "" : ", ") + std::string(name_of(gap.shape));
    return " (beside the rules" + class_words(set, gap.classes) +
           (conditions.empty() ? "" : ", where " + conditions) + ")";
}

} // namespace

std::string condition_words(const std::vector<Condition> &when, const std::vector<Condition> &where) {
    std::string out;
    for (const auto *list : {&when, &where})
        for (const auto &c : *list) out += (out.empty() ? "" : ", ") + c.text;
    return out;
}

std::string measure_words(const Rule &rule) {
    switch (rule.kind) {
    case Rule::Kind::each: return rule.measure.text;
    case Rule::Kind::gap: return "gap";
    case Rule::Kind::sum: return "sum of " + std::string(info(rule.summed).name);
    case Rule::Kind::count: return "count";
    case Rule::Kind::combine: return "types at the borderline";
    case Rule::Kind::presence:
    case Rule::Kind::coupon: break;
    }
    return "allowed";
}

Document document_of(const std::vector<std::shared_ptr<const CriteriaSet>> &sets) {
    Grid table{{{"", false}, {"", false}}, {}};
    for (const auto &set : sets)
        table.rows.push_back(
            {set->name, set->title + " (" + set->edition + "); classes " + listed(set->class_names())});
    Document out;
    out.title = "Criteria sets";
    return out.add(std::move(table));
}

Document document_of(const CriteriaSet &set) {
    Document out;
    out.title = set.title;
    out.heading(set.title).line(set.edition + "; " + set.source);
    add_own_file(out, set);
    if (!set.notes.empty()) out.line(set.notes);
    if (!set.extends.empty())
        out.line("It changes set " + set.extends + " (" + set.extends_edition + ")" +
                 (set.inherited.empty() ? "" : "; what it takes from there is at most " + set.inherited));
    add_scope(out, set);
    out.heading("Rules", 2);
    for (const auto &rule : set.rules) {
        std::vector<Bullet> under{{limit_words(set, rule), source_words(set, rule), {}}};
        if (!rule.reading.empty()) under.push_back({"our reading: " + rule.reading, "", {}});
        out.item(rule.id + ": " + rule.title, "", std::move(under));
    }
    add_required(out, set);
    add_counting(out, set);
    add_blanks(out, set);
    if (!set.gaps.empty()) out.heading("Known gaps:", 2);
    for (const auto &gap : set.gaps) out.item(gap.text + gap_words(set, gap));
    if (!set.silences.empty()) out.heading("Checks that the author answers", 2);
    for (const auto &one : set.silences) out.item(one.check + " of " + one.of + ": " + one.reason);
    return out.caution();
}

Document document_of(const Vocabulary &vocabulary) {
    Grid table{{{"quick", false}, {"ISO 6520-1", false}, {"imperfection", false}}, {}};
    for (std::size_t t = 0; t < vocabulary.size(); ++t) {
        const ImperfectionType &type = vocabulary[static_cast<TypeId>(t)];
        table.rows.push_back(
            {type.quick, type.iso, type.name + (type.also.empty() ? "" : " (" + listed(type.also) + ")")});
    }
    Document out;
    out.title = "Imperfections";
    return out.add(std::move(table));
}

Document document_of(const CheckedCriteria &checked) {
    Document out = check_document(checked, "rules", checked.value ? checked.value->rules.size() : 0);
    if (checked.value)
        for (const auto &one : lacking_words(*checked.value)) out.line(Words(one, Tone::cannot_say));
    if (checked.coverage)
        for (const auto &one : *checked.coverage)
            out.line(std::string(name_of(one.exam)) + ", always 'cannot say': " + listed(one.types));
    return out;
}

} // namespace beadbook
