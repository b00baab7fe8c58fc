#include "report/proof_document.hpp"

#include "facts/person_name.hpp"
#include "judge/item.hpp"
#include "measure/print.hpp"
#include "measure/text.hpp"
#include "report/exam_words.hpp"
#include "report/own_file.hpp"
#include "report/standings.hpp"

#include <algorithm>
#include <set>

namespace beadbook {
namespace {

using How = ProvenEntry::How;

const ExamRecord *record_of(const Judged &judged, int number) {
    const auto found = std::find_if(judged.exam_records.begin(), judged.exam_records.end(),
                                    [&](const ExamRecord &e) { return e.number == number; });
    return found == judged.exam_records.end() ? nullptr : &*found;
}

const Rule &rule_of(const Case &c, int rule) { return c.set.rules[static_cast<std::size_t>(rule)]; }

std::string title_of(const Rule &rule) { return rule.title.empty() ? rule.id : rule.title; }

std::string asked_by(const Case &c, const ProvenExam &exam) {
    if (exam.called_for) return "called for on this coupon";
    if (exam.required < 0) return "nothing is accepted unexamined";
    const RequiredExam &required = c.set.required[static_cast<std::size_t>(exam.required)];
    return authority(required.clause, required.standing);
}

std::string facts_words(const Case &c, Missing facts) {
    std::vector<std::string> out;
    for (const auto &[name, value] : facts_told(c, facts)) out.push_back(name + " " + value);
    return listed(out);
}

std::string exam_words(const Judged &judged, const ProvenExam &exam) {
    std::string out(name_of(exam.method));
    if (const ExamRecord *record = record_of(judged, exam.number)) out += " " + exam_told(*record);
    return out;
}

/// Each exam once, however many clauses ask for it.
std::vector<std::string> examined_words(const Judged &judged, const Proof &proof) {
    std::vector<std::string> out;
    std::set<std::pair<Exam, int>> said;
    for (const auto &exam : proof.exams)
        if (said.emplace(exam.method, exam.number).second) out.push_back(exam_words(judged, exam));
    for (const auto &exam : exams_beside(judged, proof))
        out.push_back(exam_words(judged, exam) + ", not asked for");
    for (auto &one : not_counted_words(judged)) out.push_back(std::move(one));
    return out;
}

std::string entries_words(const Judged &judged, const Proof &proof) {
    if (judged.indications.empty()) return "Nothing was found";
    std::set<int> decided, irrelevant, rules, clauses;
    std::set<std::string> alone; // over their limit
    for (const auto &row : proof.entries) {
        if (row.entry == 0) continue;
        if (row.how == How::alone)
            alone.insert(title_of(judged.set->rules[static_cast<std::size_t>(row.rule)]));
        if (row.how == How::not_relevant) {
            irrelevant.insert(row.entry);
            clauses.insert(row.rule);
        }
        if (!decides(row)) continue;
        decided.insert(row.entry);
        rules.insert(row.rule);
    }
    std::vector<std::string> out;
    if (!decided.empty())
        out.push_back(std::to_string(decided.size()) + " judged by " +
                      counted(rules.size(), "rule", "rules") + ", within every limit" +
                      (alone.empty() ? ""
                                     : " but " + listed({alone.begin(), alone.end()}) +
                                           ", which rejects only together with another that is kept"));
    std::vector<std::string> by;
    for (const int clause : clauses)
        by.push_back(judged.set->relevance[static_cast<std::size_t>(clause)].clause);
    if (!irrelevant.empty())
        out.push_back(std::to_string(irrelevant.size()) + " not relevant by " + listed(by));
    return counted(judged.indications.size(), "entry: ", "entries: ") + listed(out);
}

std::string gaps_words(const Proof &proof) {
    if (proof.gaps == 0) return "the set names no gap";
    return counted(proof.gaps, "known gap was", "known gaps were") + " looked at, and none bears on it";
}

std::string scope_words(const Case &c, const Proof &proof) {
    if (!proof.scope.empty()) return "which covers such a coupon";
    return c.set.scope.empty() ? "whose scope was not read" : "whose scope asks nothing of such a coupon";
}

/// Of the weld, how much those lie along that measured what the rule wants; nothing where none says it.
std::optional<std::int64_t> measured_along(const Case &c, const Rule &rule) {
    if (!c.coupon.line.length) return std::nullopt;
    std::vector<Span> stretches;
    std::int64_t without_place = 0;
    const std::int64_t whole = c.coupon.line.length->nm;
    for (const auto &entry : c.indications) {
        if (!gives(entry, rule) || !found_by_one_that_counts(entry, c.exams)) continue;
        const std::int64_t length = entry.measures.has(Quantity::length) ? entry.measures[Quantity::length]
                                    : entry.place ? entry.place->to.nm - entry.place->from.nm
                                                  : 0;
        if (length <= 0) continue;
        if (!entry.place) {
            without_place += length;
            continue;
        }
        const std::int64_t from = entry.place->from.nm, to = from + length;
        stretches.push_back({{from}, {std::min(to, whole)}});
        if (to > whole && c.coupon.line.closed) stretches.push_back({{0}, {to - whole}});
    }
    if (stretches.empty() && without_place == 0) return std::nullopt;
    std::sort(stretches.begin(), stretches.end(),
              [](const Span &a, const Span &b) { return a.from.nm < b.from.nm; });
    std::int64_t out = without_place, reached = 0;
    for (const auto &one : stretches) {
        out += std::max<std::int64_t>(0, one.to.nm - std::max(one.from.nm, reached));
        reached = std::max(reached, one.to.nm);
    }
    return out;
}

/// ", over 0.2 in of 6 in", where what is on record tells that it was not measured all along.
std::string measured_part(const Case &c, const Rule &rule) {
    const auto along = measured_along(c, rule);
    if (!along || *along >= c.coupon.line.length->nm) return "";
    const auto told = [&](std::int64_t nm) { return print(nm, Dimension::length, c.unit); };
    return ", over " + told(*along) + " of " + told(c.coupon.line.length->nm);
}

std::string measured_words(const Case &c, const Proof &proof) {
    std::vector<std::string> out;
    for (const auto &one : proof.measured) {
        const Rule &rule = rule_of(c, one.rule);
        out.push_back(title_of(rule) + " (#" + std::to_string(one.entry) + measured_part(c, rule) + ")");
    }
    return listed(out);
}

std::string row_words(const Case &c, std::size_t k, const ProvenEntry &row) {
    if (row.how == How::not_relevant)
        return "not relevant: " + c.set.relevance[static_cast<std::size_t>(row.rule)].text;
    const Rule &rule = rule_of(c, row.rule);
    const std::string of = title_of(rule) + " (" + rule.id + "): ";
    switch (row.how) {
    case How::no_limit: return of + "permitted";
    case How::silent:
        return of + "does not apply to class " + c.set.classes[k].id + ", so another rule decides";
    case How::alone:
        return of + "rejects only together with " + rule_of(c, static_cast<int>(*rule.only_with)).id +
               ", which is kept";
    case How::not_of_it: return of + "does not speak of it";
    default: break;
    }
    if (!row.has_numbers) return of + "nothing beside it to be too near to";
    const PrintedPair p = print_against(rule, row.measured, row.limit, c.unit);
    return of + p.first + (is_maximum(rule.compare) ? ", limit " : ", at least ") + p.second +
           (row.sure ? "" : ", kept if it applies");
}

std::string row_source(const Case &c, std::size_t k, const ProvenEntry &row) {
    if (row.how == How::not_relevant) {
        const Relevance &clause = c.set.relevance[static_cast<std::size_t>(row.rule)];
        return authority(clause.clause, clause.standing);
    }
    if (!decides(row)) return "";
    const Rule &rule = rule_of(c, row.rule);
    return authority(rule.clause, rule.standings[k]);
}

void add_entries(Document &doc, const Case &c, std::size_t k, const Proof &proof) {
    for (auto row = proof.entries.begin(); row != proof.entries.end();) {
        const int entry = row->entry;
        std::vector<Bullet> under;
        for (; row != proof.entries.end() && row->entry == entry; ++row)
            under.push_back({row_words(c, k, *row), row_source(c, k, *row), {}});
        doc.item(entry == 0 ? "the coupon as a whole" : print_indications(c, {entry}), "", std::move(under));
    }
    if (proof.entries.empty()) doc.item("nothing was found");
}

} // namespace

std::vector<ProvenExam> exams_beside(const Judged &judged, const Proof &proof) {
    std::vector<ProvenExam> out;
    for (const auto &exam : judged.exams) {
        const bool asked = std::any_of(proof.exams.begin(), proof.exams.end(), [&](const ProvenExam &one) {
            return one.method == exam.method && one.number == exam.number;
        });
        if (exam.counts && !asked) out.push_back({-1, false, exam.method, exam.number});
    }
    return out;
}

std::vector<std::string> not_counted_words(const Judged &judged) {
    std::vector<std::string> out;
    for (const auto &exam : judged.exams)
        if (!exam.counts)
            out.push_back("the " + std::string(name_of(exam.method)) + " (exam " +
                          std::to_string(exam.number) + ") does not count: " + exam.why_not);
    return out;
}

std::string_view name_of(How how) {
    switch (how) {
    case How::within: return "within";
    case How::no_limit: return "no limit";
    case How::not_relevant: return "not relevant";
    case How::not_of_it: return "not of it";
    case How::alone: return "alone";
    case How::silent: break;
    }
    return "silent";
}

std::vector<std::pair<std::string, std::string>> facts_told(const Case &c, Missing facts) {
    std::vector<std::pair<std::string, std::string>> out;
    for (std::size_t f = 0; f < fact_count; ++f) {
        const auto fact = static_cast<Fact>(f);
        if (!facts.has(lack_of(fact)) || c.coupon.facts[f] == 0) continue;
        std::vector<std::string> said;
        for (std::size_t word = 0; word < info(fact).words.size(); ++word)
            if ((c.coupon.said(static_cast<Slot>(f)) >> (word + 1)) & 1u)
                said.push_back(info(fact).words[word]);
        out.emplace_back(info(fact).name, listed(said));
    }
    for (std::size_t q = 0; q < coupon_quantities; ++q) {
        const auto quantity = static_cast<Quantity>(q);
        if (facts.has(lack_of(quantity)) && c.coupon.values.has(quantity))
            out.emplace_back(info(quantity).name,
                             print(c.coupon.values[quantity], info(quantity).dimension, c.unit));
    }
    return out;
}

std::string exam_told(const ExamRecord &exam) {
    std::string out = print(exam.date) + " by " + exam.examiner;
    const auto &finished = exam.finished;
    if (!exam.level.empty()) out += ", level " + exam.level_told();
    if (finished)
        out += finished->found == 0
                   ? ", none found"
                   : ", " + counted(static_cast<std::size_t>(finished->found), "find", "finds");
    if (finished && (!same_person(finished->by, exam.examiner) || !finished->told_by.empty() ||
                     (finished->on && *finished->on != exam.date)))
        out += ", " + finished_words(exam);
    if (!exam.practice.empty()) return out + ", conditions held by " + practice_told(exam);
    std::vector<std::string> told;
    for (const auto &[name, value] : exam.conditions_not_held()) told.push_back(name + " " + value);
    return out + ", by no named practice" +
           (told.empty() ? "" : ", so that nothing holds what was told: " + listed(told, "and"));
}

std::optional<std::size_t> class_to_prove(const Judged &judged) {
    const auto &classes = judged.judgement.classes;
    if (judged.sought) return classes[*judged.sought].proof ? judged.sought : std::nullopt;
    for (std::size_t k = 0; k < classes.size(); ++k)
        if (classes[k].proof) return k;
    return std::nullopt;
}

std::map<std::string, std::size_t> rules_of_no_exam(const Judged &judged) {
    ExamSet made;
    for (const auto &exam : judged.exams)
        if (exam.counts) made.set(static_cast<std::size_t>(exam.method));
    std::map<std::string, std::size_t> out;
    for (const auto &rule : judged.set->rules) {
        Missing ignored;
        if (rule.kind == Rule::Kind::coupon || rule.kind == Rule::Kind::combine ||
            (rule.subject.exams & made).any() ||
            holds_for(rule.when, judged.coupon, {}, {}, ignored) == Truth::no)
            continue;
        std::vector<std::string> names;
        for (std::size_t e = 0; e < exam_count; ++e)
            if (rule.subject.exams[e]) names.emplace_back(name_of(static_cast<Exam>(e)));
        ++out[listed(names, "or")];
    }
    return out;
}

namespace {

std::string no_exam_words(const Judged &judged) {
    std::vector<std::string> out;
    for (const auto &[methods, rules] : rules_of_no_exam(judged))
        out.push_back("by " + methods + " (" + counted(rules, "rule") + " of the set)");
    return out.empty() ? ""
                       : "Nobody examined it " + listed(out, "nor") +
                             ", so that nothing was judged of what that shows";
}

} // namespace

std::vector<std::string> not_in_set(const Judged &judged) {
    std::vector<std::string> out;
    for (const auto &gap : judged.set->gaps) {
        const bool looked_at =
            std::any_of(judged.exams.begin(), judged.exams.end(), [&](const ExamDone &exam) {
                return exam.counts &&
                       (!gap.subject || gap.subject->exams[static_cast<std::size_t>(exam.method)]);
            });
        if (!gap.beside_rules && looked_at) out.push_back(gap.text);
    }
    return out;
}

std::string not_covered_words(const Judged &judged) {
    const auto lacking = not_in_set(judged);
    std::string words = lacking.empty() ? ""
                                        : "Not in this set, so that the accept does not speak of it: " +
                                              joined(lacking, "; ");
    const std::string no_exam = no_exam_words(judged);
    return words + (words.empty() || no_exam.empty() ? "" : ". ") + no_exam;
}

void add_proof(Document &doc, const Case &c, const Judged &judged, std::size_t k) {
    const Proof &proof = *judged.judgement.classes[k].proof;
    Fold told{"What proves class " + c.set.classes[k].id, {}};
    const auto item = [&](std::string words) { told.items.push_back({std::move(words), "", {}}); };
    const auto needed_item = [&](std::string words) {
        told.in_short.push_back(told.items.size());
        item(std::move(words));
    };
    const std::string facts = facts_words(c, facts_behind(proof, c.set, k));
    item("Class " + c.set.classes[k].id + " of " + c.set.name + ", " + scope_words(c, proof) +
         (facts.empty() ? "" : ": " + facts));
    needed_item("Examined: " + joined(examined_words(judged, proof), "; "));
    item(entries_words(judged, proof));
    if (!proof.measured.empty()) {
        const bool in_part =
            std::any_of(proof.measured.begin(), proof.measured.end(), [&](const ProvenDimension &one) {
                return !measured_part(c, rule_of(c, one.rule)).empty();
            });
        if (in_part) told.in_short.push_back(told.items.size());
        item("Measured as the set wants: " + measured_words(c, proof));
    }
    item(counted(proof.compared, "pair of statements was", "pairs of statements were") +
         " compared, and none contradicts; " + gaps_words(proof));
    if (const std::string gaps = not_covered_words(judged); !gaps.empty()) needed_item(gaps);
    needed_item(standing_words(standings_behind(proof, c.set, k)));
    doc.add(std::move(told));
}

void add_whole_proof(Document &doc, const Case &c, const Judged &judged, std::size_t k) {
    const Proof &proof = *judged.judgement.classes[k].proof;
    doc.heading("What proves class " + c.set.classes[k].id, 2);
    std::vector<Bullet> covered, facts, exams, wanted, gaps;
    for (const auto &[name, value] : facts_told(c, facts_behind(proof, c.set, k)))
        facts.push_back({name + ": " + value, "", {}});
    for (const int s : proof.scope) {
        const ScopePart &part = c.set.scope[static_cast<std::size_t>(s)];
        covered.push_back({(part.title.empty() ? "" : part.title + ": ") + part.text,
                           authority(part.clause, part.standing),
                           {}});
    }
    doc.item("Class " + c.set.classes[k].id + " of " + c.set.name + ", " + scope_words(c, proof),
             c.set.edition, std::move(covered));
    doc.item("Facts of the coupon that it rests on", "", std::move(facts));
    for (const auto &exam : proof.exams) exams.push_back({exam_words(judged, exam), asked_by(c, exam), {}});
    for (const auto &exam : exams_beside(judged, proof))
        exams.push_back({exam_words(judged, exam), "it counts, though nothing asks for it", {}});
    doc.item("Examinations that count", "", std::move(exams));
    for (auto &one : not_counted_words(judged)) doc.item("But " + one);
    doc.heading("Each entry before each rule", 2);
    add_entries(doc, c, k, proof);
    doc.heading("The rest", 2);
    for (const auto &one : proof.measured)
        wanted.push_back({title_of(rule_of(c, one.rule)) + ": entry #" + std::to_string(one.entry) +
                              measured_part(c, rule_of(c, one.rule)),
                          authority(rule_of(c, one.rule).clause, rule_of(c, one.rule).standings[k]),
                          {}});
    doc.item(wanted.empty() ? "No dimension is wanted of it" : "Dimensions that the set wants", "",
             std::move(wanted));
    doc.item(
        counted(proof.compared, "pair of statements was", "pairs of statements were") +
        " compared, and none contradicts: sizes with each other and with places, places with the weld, "
        "thicknesses, magnetic with the material, numbers of finds with entries, pieces that touch as one, "
        "names with measures");
    for (const auto &gap : c.set.gaps)
        gaps.push_back({gap.text + (gap.subject ? "" : " (names no kind of entry)"), "", {}});
    std::string looked = gaps_words(proof);
    looked.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(looked.front())));
    doc.item(looked, "", std::move(gaps));
    doc.item(standing_words(standings_behind(proof, c.set, k)));
}

} // namespace beadbook
