#include "report/criteria_document.hpp"

#include "measure/print.hpp"
#include "measure/text.hpp"
#include "report/check_document.hpp"
#include "report/comparing_document.hpp"
#include "report/own_file.hpp"

#include <algorithm>
#include <utility>

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

std::string limit_words(const CriteriaSet &set, const Rule &rule) {
    std::string out;
    if (const auto words = condition_words(rule.when, rule.where); !words.empty())
        out += "where " + words + ": ";
    if (rule.shape != Shape::unknown) out += std::string(name_of(rule.shape)) + " only: ";
    out += measure_words(rule);
    if (const std::string words = window_words_of(set, rule); !words.empty()) out += " in any " + words;
    out += line_words(rule);
    if (rule.prorated) out += ", in proportion on a shorter weld";
    if (rule.kind != Rule::Kind::presence && rule.kind != Rule::Kind::coupon)
        out += " " + std::string(name_of(rule.compare));
    for (std::size_t c = 0; c < set.classes.size(); ++c)
        out += (c > 0 ? "; " : " ") + set.classes[c].id + ": " + rule.limits[c].text +
               (needs_checking(rule.standings[c]) ? " (" + std::string(name_of(rule.standings[c].kind)) + ")"
                                                  : "");
    if (rule.only_with) out += "; rejects only together with " + set.rules[*rule.only_with].id;
    if (rule.must_be_measured) out += "; without an entry the class is not accepted";
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
        out.item(exam.id + ": " + listed(one_of, "or") + class_words(set, exam.classes) +
                     (when.empty() ? "" : ", where " + when),
                 exam.clause + "; " + print_in_full(exam.standing));
    }
}

std::vector<Exam> exams_of(const ExamSet &exams) {
    std::vector<Exam> out;
    for (const Exam exam : all_exams())
        if (exams[static_cast<std::size_t>(exam)]) out.push_back(exam);
    return out;
}

std::string listed_exams(const ExamSet &exams) {
    std::vector<std::string> out;
    for (const Exam exam : exams_of(exams)) out.emplace_back(name_of(exam));
    return listed(out);
}

/// By method, each in the set's order; what several methods look for stands behind them.
void add_rules(Document &out, const CriteriaSet &set) {
    std::vector<ExamSet> methods;
    for (const Exam exam : all_exams()) methods.emplace_back().set(static_cast<std::size_t>(exam));
    for (const auto &rule : set.rules)
        if (std::find(methods.begin(), methods.end(), rule.subject.exams) == methods.end())
            methods.push_back(rule.subject.exams);
    for (const ExamSet &method : methods) {
        bool headed = false;
        for (const auto &rule : set.rules) {
            if (rule.subject.exams != method) continue;
            if (!std::exchange(headed, true))
                out.heading(method.none() ? "Rules on the coupon itself" : "Rules, " + listed_exams(method),
                            2);
            std::vector<Bullet> under;
            if (rule.subject.types.any())
                under.push_back({"of " + types_in_words(rule.subject.types), "", {}});
            under.push_back({limit_words(set, rule), source_words(set, rule), {}});
            std::vector<std::string> of;
            for (const std::size_t other : rule.combined) of.push_back(set.rules[other].id);
            if (!of.empty())
                under.push_back({"of the rules " + listed(of) + ", each at the borderline from " +
                                     print_exact(rule.borderline, Dimension::number, set.unit) +
                                     " of its limit",
                                 "",
                                 {}});
            if (!rule.says.empty()) under.push_back({"it says: " + rule.says, "", {}});
            if (!rule.reading.empty()) under.push_back({"our reading: " + rule.reading, "", {}});
            out.item(rule.title.empty() ? rule.id : rule.id + ": " + rule.title, "", std::move(under));
        }
    }
}

/// What its symbols and names stand for.
void add_names(Document &out, const CriteriaSet &set) {
    if (set.declared.empty() && set.formulas.empty() && set.tables.empty() && !set.linear) return;
    out.heading("What its words mean", 2);
    for (const auto &one : set.declared)
        out.item(one.name + ": " + std::string(info(static_cast<Quantity>(one.slot)).name));
    for (const auto &one : set.formulas) out.item(one.name + ": " + one.text);
    for (const auto &table : set.tables) {
        std::vector<Bullet> rows;
        for (const auto &row : table->rows) rows.push_back({row.text + ": " + row.value.text, "", {}});
        out.item("table " + table->name + ", by " + table->by.text +
                     (table->step > Exact(0)
                          ? ", rounded to " + print_exact(table->step, table->by.dimension(), set.unit)
                          : ""),
                 "", std::move(rows));
    }
    if (set.linear)
        out.item("linear: " + set.linear->text,
                 set.linear_clause + "; " + print_in_full(set.linear_standing));
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
                 one.clause + "; " + print_in_full(one.standing),
                 {{"of " + subject_words(one.subject), "", {}}});
    if (!set.merges.empty()) out.heading("Neighbours that count as one", 2);
    for (const auto &one : set.merges) {
        std::vector<Bullet> under{{"of " + subject_words(one.subject), "", {}}};
        if (!one.reading.empty()) under.push_back({"our reading: " + one.reading, "", {}});
        out.item(one.id + ": " + one.when.text, one.clause + "; " + print_in_full(one.standing),
                 std::move(under));
    }
}

/// What is open stays so until the shop fills it; what is filled tells by whom.
void add_blanks(Document &out, const CriteriaSet &set) {
    if (!set.blanks.empty()) out.heading("Blanks, to be filled from the owner's copy", 2);
    for (const auto &blank : set.blanks) {
        std::vector<Bullet> under;
        if (!blank.plausible_text.empty()) under.push_back({"plausible: " + blank.plausible_text, "", {}});
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

std::string window_words_of(const CriteriaSet &set, const Rule &rule) {
    if (!rule.window_by_class) return rule.windows.empty() ? "" : rule.windows.front().text;
    std::string out;
    for (std::size_t c = 0; c < set.classes.size(); ++c)
        out += (c > 0 ? ", " : "") + rule.windows[c].text + " (" + set.classes[c].id + ")";
    return out;
}

std::string line_words(const Rule &rule) {
    if (!rule.linked) return "";
    return " of a line (" + rule.linked->text + ")" +
           (rule.least_group > 1 ? " of " + std::to_string(rule.least_group) + " or more" : "");
}

std::string subject_words(const Subject &subject) {
    return types_in_words(subject.types) + (subject.exams.any() ? ", by " + listed_exams(subject.exams) : "");
}

std::string measure_words(const Rule &rule) {
    switch (rule.kind) {
    case Rule::Kind::each: return rule.measure.text;
    case Rule::Kind::gap: return "gap";
    case Rule::Kind::sum:
        return "sum of " + std::string(info(rule.summed).name) + (rule.as_rectangles ? " as rectangles" : "");
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
    out.heading(set.title).line(set.source.empty() ? set.edition : set.edition + "; " + set.source);
    add_own_file(out, set);
    if (!set.notes.empty()) out.line(set.notes);
    if (!set.extends.empty())
        out.line("It changes set " + set.extends + " (" + set.extends_edition + ")" +
                 (set.inherited.empty() ? "" : "; what it takes from there is at most " + set.inherited));
    std::vector<std::string> classes;
    for (const auto &one : set.classes)
        classes.push_back(one.id + (one.title.empty() ? "" : " (" + one.title + ")"));
    out.line("Classes" + std::string(set.ordered && classes.size() > 1 ? ", strictest first" : "") + ": " +
             joined(classes, ", ") + ". Units: " + std::string(name_of(set.unit)) + ". Set " + set.name +
             ", SHA-256 of its text " + set.hash + ".");
    add_scope(out, set);
    add_names(out, set);
    add_rules(out, set);
    add_required(out, set);
    add_counting(out, set);
    add_blanks(out, set);
    if (!set.gaps.empty()) out.heading("Known gaps:", 2);
    for (const auto &gap : set.gaps)
        out.item(gap.text + gap_words(set, gap), "",
                 gap.subject ? std::vector<Bullet>{{"of " + subject_words(*gap.subject), "", {}}}
                             : std::vector<Bullet>{});
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
    Document out = check_document(checked, "rule", checked.value ? checked.value->rules.size() : 0);
    if (checked.value) {
        for (const auto &one : lacking_words(*checked.value)) out.line(Words(one, Tone::cannot_say));
        for (const auto &one : own_looser(*checked.value)) out.line(Words(one, Tone::cannot_say));
    }
    if (checked.coverage)
        for (const auto &one : *checked.coverage)
            out.line(std::string(name_of(one.exam)) + ", always 'cannot say': " + listed(one.types));
    return out;
}

} // namespace beadbook
