#include "report/judgement_document.hpp"

#include "criteria/provenance.hpp"
#include "judge/item.hpp"
#include "measure/print.hpp"
#include "measure/text.hpp"
#include "operations/told_class.hpp"
#include "report/coupon_document.hpp"
#include "report/exam_words.hpp"
#include "report/left_to_a_person.hpp"
#include "report/limit_bars.hpp"
#include "report/own_file.hpp"
#include "report/proof_document.hpp"
#include "report/reasons_once.hpp"
#include "report/standings.hpp"
#include "report/usual_cause.hpp"
#include "report/weld_map.hpp"
#include "report/weld_strip.hpp"

#include <algorithm>
#include <map>
#include <set>

namespace beadbook {
namespace {

/// No verdict goes by it, so whoever reads the verdict must see it.
void add_said(Document &doc, const std::vector<std::string> &said) {
    if (said.empty()) return;
    doc.gap().line("Written beside it, and judged by nobody:");
    for (const auto &one : said) doc.item(one);
}

void add_causes(Document &doc, const Case &c, const ClassJudgement &judged) {
    const auto causes = usual_causes(c, judged);
    if (!causes.empty()) doc.heading("What usually causes it, and what to change", 2);
    for (const auto &one : causes)
        doc.item(one.of + ": usually " + one.cause + ".", "", {{"Change: " + one.remedy + ".", "", {}}});
}

/// Finds that a relevance clause leaves out for the class, by that clause: no rule looks at them.
void add_left_out(Document &doc, const Case &c, std::size_t k) {
    std::map<int, std::vector<int>> by_clause;
    for (const auto &item :
         make_items(c.set, c.coupon, c.indications, c.vocabulary, engine_number, Shapes::by_measures, k)) {
        if (item.counts != Truth::no) continue;
        for (const std::size_t m : item.members)
            by_clause[item.irrelevant_by].push_back(c.indications[m].number);
    }
    if (by_clause.empty()) return;
    doc.heading("Not relevant, so that no rule looks at it", 2);
    for (auto &[clause, numbers] : by_clause) {
        const Relevance &by = c.set.relevance[static_cast<std::size_t>(clause)];
        std::sort(numbers.begin(), numbers.end());
        doc.item(print_indications(c, numbers) + ": " + by.text, authority(by.clause, by.standing));
    }
}

/// Findings that say the same by the same rule, each kind once, the one farthest out first.
std::vector<std::vector<std::size_t>> alike(const std::vector<Finding> &findings) {
    std::vector<std::vector<std::size_t>> out;
    for (std::size_t f = 0; f < findings.size(); ++f) {
        const Finding &one = findings[f];
        const auto same = std::find_if(out.begin(), out.end(), [&](const auto &group) {
            const Finding &other = findings[group.front()];
            return one.rule >= 0 && one.rule == other.rule && one.kind == other.kind &&
                   one.effect == other.effect && one.missing == other.missing;
        });
        if (same == out.end())
            out.push_back({f});
        else
            same->push_back(f);
    }
    for (auto &group : out)
        std::stable_sort(group.begin(), group.end(),
                         [&](std::size_t a, std::size_t b) { return findings[a].ratio > findings[b].ratio; });
    return out;
}

/// "the same of #4, #5 and #9": those of a group after its first.
std::string others_words(const std::vector<Finding> &findings, const std::vector<std::size_t> &group) {
    std::set<int> numbers;
    for (std::size_t i = 1; i < group.size(); ++i)
        numbers.insert(findings[group[i]].indications.begin(), findings[group[i]].indications.end());
    return numbers.empty() ? "the same " + counted(group.size() - 1, "time") + " more"
                           : "the same by less: " + tags_of(numbers);
}

/// Those that make the verdict what it is; or the others, which leave something open beside it.
void add_reasons(Document &doc, const Case &c, std::size_t k, const ClassJudgement &one, bool deciding) {
    bool headed = deciding;
    for (const auto &group : alike(one.findings)) {
        const Finding &worst = one.findings[group.front()];
        if ((worst.effect == one.verdict) != deciding) continue;
        if (!std::exchange(headed, true)) doc.heading("What is open beside that", 2);
        std::vector<Bullet> under;
        if (std::string said = plain_words(c, worst); !said.empty())
            under.push_back({std::move(said), "", {}});
        if (group.size() > 1) under.push_back({others_words(one.findings, group), "", {}});
        doc.item(sentence(c, k, worst), worst.rule >= 0 ? authority(c, k, worst) : "", std::move(under));
    }
}

/// An accept by the examinations never stands alone where mechanical tests failed.
Words verdict_beside_bends(Verdict verdict, const Judged &judged) {
    if (verdict != Verdict::accept || !judged.bends_failed()) return verdict_words(verdict);
    return Words("accept by its examinations alone; ") +
           Words("its mechanical tests failed, so it did not pass", Tone::reject);
}

/// Why it is told by this class, where none is sought.
std::string no_class_words(Verdict verdict) {
    const std::string none = "No class is sought, so a coupon that makes any is accepted: ";
    if (verdict == Verdict::accept) return none + "this is the first that it makes.";
    return none + "of those that " + (verdict == Verdict::reject ? "all refuse it" : "nobody can say yet") +
           " this one has the fewest reasons.";
}

/// Which classes are met, as a person would say it.
std::string made_words(const Judged &judged) {
    std::vector<std::string> made;
    for (std::size_t i = 0; i < judged.judgement.classes.size(); ++i)
        if (judged.judgement.classes[i].verdict == Verdict::accept) made.push_back(judged.set->classes[i].id);
    const auto &all = judged.judgement.classes;
    if (made.empty() && std::all_of(all.begin(), all.end(),
                                    [](const ClassJudgement &one) { return one.verdict == Verdict::reject; }))
        return "It meets no class of this set.";
    if (made.empty()) return "Nobody can say yet whether it meets a class of this set.";
    const std::string it =
        judged.bends_failed() ? "Its mechanical tests failed; by its examinations alone it" : "It";
    if (judged.set->classes.size() == 1) return it + " meets what this set asks.";
    return it + (made.size() > 1 ? " meets the classes " : " meets class ") + listed(made) + ".";
}

} // namespace

std::string words_of(const Assurance &one) {
    return (one.number > 0 ? "#" + std::to_string(one.number)
            : one.exam > 0 ? "Exam " + std::to_string(one.exam)
                           : std::string("The coupon")) +
           " is as it was said, " + sure_text(one.rules);
}

void add_assurances(Document &doc, const std::vector<Assurance> &sure) {
    for (const auto &one : sure) doc.line(words_of(one) + ".");
}

std::string plain_words(const Case &c, const Finding &f) {
    if (f.rule < 0) return "";
    const Rule &rule = c.set.rules[static_cast<std::size_t>(f.rule)];
    std::string text = rule.says;
    if (!f.has_numbers) return text.find('{') == std::string::npos ? text : "";
    const PrintedPair p = print_against(rule, f.measured, f.limit, c.unit);
    for (const auto &[name, value] :
         {std::pair{"{measured}", p.first}, {"{limit}", p.second}, {"{over by}", p.difference}})
        for (std::size_t at; (at = text.find(name)) != std::string::npos;)
            text.replace(at, std::string(name).size(), value);
    return text;
}

Words verdicts_in_a_line(const Judged &judged, const std::string &between) {
    Words out;
    for (std::size_t c = 0; c < judged.judgement.classes.size(); ++c)
        out += Words((c > 0 ? between : "") + judged.set->classes[c].id + ": ") +
               verdict_words(judged.judgement.classes[c].verdict);
    if (judged.bends_failed()) out += Words("; mechanical tests failed", Tone::reject);
    out += told_beside(judged, "; ");
    out += said_otherwise_behind(judged.said_otherwise, "; ");
    return out + own_file_behind(own_file_mark(judged.set->name, judged.set->hash)) +
           Words(judged.withdrawn.empty() ? "" : "; withdrawn: " + judged.withdrawn);
}

namespace {

void add_chosen_proof(Document &doc, const Case &c, const Judged &judged, bool in_full) {
    const auto k = class_to_prove(judged);
    if (!k) return;
    if (in_full)
        add_whole_proof(doc, c, judged, *k);
    else
        add_proof(doc, c, judged, *k);
}

void add_standings(Document &doc, const Case &c, std::size_t k, const ClassJudgement &one) {
    const StandingCount count = standings_behind(one, c.set, k);
    if (count.all() > 0) doc.item(standing_words(count));
}

/// Of equipment: never silently.
void add_cautions(Document &doc, const Judged &judged) {
    for (const auto &caution : judged.cautions()) doc.line(Words("Caution, " + caution, Tone::cannot_say));
}

/// Whose file it is, and that it said something else before.
void add_text_of_set(Document &doc, const Judged &judged) {
    add_own_file(doc, judged);
    if (!judged.by_other_text.empty())
        doc.line(Words("Criteria " + judged.set->name + ": its verdict of " + judged.by_other_text +
                           (judged.said_by_other_text.empty() ? "" : ", " + judged.said_by_other_text + ",") +
                           " went by another text of " +
                           (judged.other_text_called.empty()
                                ? "the same edition"
                                : "its file, which called itself " + judged.other_text_called) +
                           ": the file was changed since. What that "
                           "does to coupons that were not judged again yet is shown by 'rejudge'",
                       Tone::cannot_say));
    // The newest other text may accept it, and the one before have rejected it.
    if (!judged.rejected_by_text.empty())
        doc.line(Words("Caution, " + judged.rejected_by_text, Tone::cannot_say));
}

Document judged_document(const Judged &judged, bool in_full) {
    const Case c = case_of(judged);
    Document doc;
    doc.title = "Coupon " + judged.mark;
    doc.line("Coupon " + judged.mark + " by " + judged.set->title + " (" + judged.set->edition + ")");
    add_text_of_set(doc, judged);
    if (!judged.withdrawn.empty())
        doc.line(Words("The coupon is withdrawn: " + judged.withdrawn, Tone::cannot_say));
    ReasonsOnce reasons(c, judged);
    for (std::size_t k = 0; k < judged.judgement.classes.size(); ++k) {
        const ClassJudgement &one = judged.judgement.classes[k];
        doc.line(Words("Class " + c.set.classes[k].id, Tone::strong) + Words(": ") +
                 verdict_beside_bends(one.verdict, judged) +
                 (one.verdict == Verdict::accept ? told_beside(judged, ", ") : Words()));
        reasons.add(doc, k, one.findings.size());
        if (!judged.withdrawn.empty()) doc.item("a coupon that is withdrawn is not judged");
        // Of the class that is proved the proof tells it.
        if (class_to_prove(judged) != k) add_standings(doc, c, k, one);
        if (one.verdict != Verdict::accept) continue;
        if (one.nearest)
            doc.item("nearest to a limit: " + sentence(c, k, *one.nearest), authority(c, k, *one.nearest));
        else
            doc.item("nothing came near a limit");
    }
    add_who_decides(doc, judged.mark, judged.judgement.classes);
    // Before the proof, which they are no part of.
    if (const Words line = mechanical_words(judged.mechanical, judged.mechanical_said, {}); !line.empty())
        doc.gap().line(line);
    add_chosen_proof(doc, c, judged, in_full);
    add_cautions(doc, judged);
    add_assurances(doc, judged.sure);
    add_taken_back(doc, judged.taken_back);
    add_said(doc, judged.said);
    return doc.caution();
}

/// Who stands for what its exams found; of a class that is proved the proof tells it.
void add_finished(Document &doc, const Judged &judged) {
    if (class_to_prove(judged)) return;
    std::vector<std::string> exams;
    for (const auto &exam : judged.exam_records)
        exams.push_back(title_of(exam) + (exam.examiner.empty() ? "" : " by " + exam.examiner + ",") + " " +
                        finished_words(exam));
    if (!exams.empty()) doc.line("Examined: " + joined(exams, "; "));
}

void add_explanation(Document &doc, const Explained &e, bool in_full) {
    const Case c = case_of(e.judged);
    const std::size_t k = told_class(e.judged);
    const ClassJudgement &one = e.judged.judgement.classes[k];
    doc.line(Words("Class " + c.set.classes[k].id, Tone::strong) +
             Words(" of " + c.set.title + " (" + c.set.edition + "): ") +
             verdict_beside_bends(one.verdict, e.judged) +
             (one.verdict == Verdict::accept ? told_beside(e.judged, ", ") : Words()));
    add_text_of_set(doc, e.judged);
    if (!e.judged.withdrawn.empty()) {
        doc.line(Words("The coupon is withdrawn: " + e.judged.withdrawn, Tone::cannot_say));
        return;
    }
    if (!e.judged.sought) doc.line(Words(no_class_words(one.verdict), Tone::quiet));
    if (const Words line =
            mechanical_words(e.judged.mechanical, e.judged.mechanical_said, e.mechanical_asked_by);
        !line.empty())
        doc.line(line);
    add_where(doc, e.judged, k, "Where on the weld");
    if (one.verdict == Verdict::accept) {
        doc.gap();
        if (one.nearest)
            doc.line("Nearest to a limit: " + sentence(c, k, *one.nearest));
        else
            doc.line("Nothing came near a limit.");
    } else {
        doc.heading(one.verdict == Verdict::reject ? "Why it is not accepted"
                                                   : "What is missing before anybody can say",
                    2);
        add_reasons(doc, c, k, one, true);
        add_standings(doc, c, k, one);
        add_reasons(doc, c, k, one, false);
        add_who_decides(doc, e.judged.mark, {one});
        add_limit_bars(doc, limit_rows(c, k, one));
    }
    add_left_out(doc, c, k);
    add_causes(doc, c, one);
    add_chosen_proof(doc, c, e.judged, in_full);
    if (one.proof) add_limit_bars(doc, limit_rows(c, k, *one.proof));
    doc.gap().line(made_words(e.judged));
    add_finished(doc, e.judged);
    // Lists and headings say "with cautions": these are they.
    if (e.judged.with_cautions()) doc.gap().line(Words("Cautions:", Tone::strong));
    add_cautions(doc, e.judged);
    add_assurances(doc, e.judged.sure);
    add_taken_back(doc, e.judged.taken_back);
    if (e.grade) doc.gap().line(Words("Graded ") + grade_words(*e.grade, e.grading));
    add_described_since(doc, e.described_since, e.grade ? "its grade" : "its last verdict");
    add_said(doc, e.judged.said);
}

Document explained_document(const Explained &e, bool in_full) {
    Document doc;
    doc.title = "Coupon " + e.judged.mark;
    doc.line(Words(doc.title, Tone::strong) +
             Words(e.welder.empty() ? "" : ", welded by " + welder_words(e.welder, e.welder_name)));
    add_explanation(doc, e, in_full);
    return doc.caution();
}

} // namespace

void add_where(Document &doc, const Judged &judged, std::size_t k, const std::string &heading) {
    if (judged.indications.empty()) return;
    const Case c = case_of(judged);
    const ClassJudgement &of = judged.judgement.classes[k];
    const WeldMap map = weld_map(c, k, of);
    std::string text = weld_strip(c, of);
    if (const std::string rest = unplaced_words(map); !rest.empty()) text += "    " + rest + "\n";
    doc.heading(heading, 2);
    add_map(doc, map, std::move(text));
}

Document document_of(const Judged &judged) { return judged_document(judged, false); }
Document document_of(const InFull<Judged> &judged) { return judged_document(judged.of, true); }
void add_explained(Document &doc, const Explained &explained) { add_explanation(doc, explained, false); }

Document document_of(const Explained &e) { return explained_document(e, false); }
Document document_of(const InFull<Explained> &e) { return explained_document(e.of, true); }

Document document_of(const Graded &g) {
    const std::string against = against_text(g.grade);
    return Document{}.line("coupon " + g.mark + " graded " + g.grade.decision() + " for class " +
                           g.grade.class_id + " (verdict: " + std::string(name_of(g.verdict)) +
                           (g.own_file.empty() ? "" : "; " + g.own_file) +
                           (against.empty() ? ")" : "; " + against + ")"));
}

Document document_of(const JudgedOrNot &one) {
    return Document{}.line(Words(padded(one.mark, 14)) +
                           (one.judged ? verdicts_in_a_line(*one.judged)
                                       : Words("not judged: " + one.why_not, Tone::cannot_say)));
}

} // namespace beadbook
