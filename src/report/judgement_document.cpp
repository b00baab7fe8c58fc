#include "report/judgement_document.hpp"

#include "measure/print.hpp"
#include "measure/text.hpp"
#include "report/coupon_document.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// Reasons shown of one class; the rest is counted.
constexpr std::size_t most_reasons = 40;

/// Each type that rejects, once, with its usual cause and what to change.
void add_causes(Document &doc, const Case &c, const ClassJudgement &judged) {
    std::vector<const ImperfectionType *> said;
    for (const auto &f : judged.findings) {
        if (f.effect != Verdict::reject) continue;
        for (const int n : f.indications) {
            const Indication *i = c.find(n);
            const ImperfectionType *type = i ? &c.vocabulary.explained(i->type) : nullptr;
            if (!type || type->cause.empty() || std::find(said.begin(), said.end(), type) != said.end())
                continue;
            if (said.empty()) doc.heading("What usually causes it, and what to change", 2);
            said.push_back(type);
            doc.item(type->name + ": usually " + type->cause + ".", "",
                     {{"Change: " + type->remedy + ".", "", {}}});
        }
    }
}

void add_reasons(Document &doc, const Case &c, std::size_t k, const ClassJudgement &one) {
    for (std::size_t f = 0; f < one.findings.size() && f < most_reasons; ++f)
        doc.item(sentence(c, k, one.findings[f]), authority(c, k, one.findings[f]));
    if (one.findings.size() > most_reasons)
        doc.item("and " + std::to_string(one.findings.size() - most_reasons) + " more reasons");
}

/// What nobody would believe at first sight and somebody said is meant so.
void add_assurances(Document &doc, const std::vector<Assurance> &sure) {
    for (const auto &one : sure)
        doc.line((one.number > 0 ? "#" + std::to_string(one.number)
                  : one.exam > 0 ? "Exam " + std::to_string(one.exam)
                                 : std::string("The coupon")) +
                 " is as it was said, " + sure_text(one.rules) + ".");
}

} // namespace

std::string plain_words(const Case &c, const Finding &f) {
    if (f.rule < 0) return "";
    const Rule &rule = c.set.rules[static_cast<std::size_t>(f.rule)];
    std::string text = rule.says;
    if (!f.has_numbers) return text.find('{') == std::string::npos ? text : "";
    const PrintedPair p = print_pair(f.measured, f.limit, rule.dimension(), c.unit);
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
    return out;
}

Document document_of(const Judged &judged) {
    const Case c = case_of(judged);
    Document doc;
    doc.title = "Coupon " + judged.mark;
    doc.line("Coupon " + judged.mark + " by " + judged.set->title + " (" + judged.set->edition + ")");
    if (!judged.withdrawn.empty())
        doc.line(Words("The coupon is withdrawn: " + judged.withdrawn, Tone::cannot_say));
    for (std::size_t k = 0; k < judged.judgement.classes.size(); ++k) {
        const ClassJudgement &one = judged.judgement.classes[k];
        doc.line(Words("Class " + c.set.classes[k].id, Tone::strong) + Words(": ") +
                 verdict_words(one.verdict));
        add_reasons(doc, c, k, one);
        if (one.verdict != Verdict::accept) continue;
        if (one.nearest)
            doc.item("nearest to a limit: " + sentence(c, k, *one.nearest), authority(c, k, *one.nearest));
        else
            doc.item("nothing came near a limit");
    }
    return doc.caution();
}

Document document_of(const Explained &e) {
    const Case c = case_of(e.judged);
    const std::size_t k = *e.judged.sought;
    const ClassJudgement &one = e.judged.judgement.classes[k];
    Document doc;
    doc.title = "Coupon " + e.judged.mark;
    doc.line(Words(doc.title, Tone::strong) + Words(e.welder.empty() ? "" : ", welded by " + e.welder));
    doc.line(Words("Class " + c.set.classes[k].id, Tone::strong) +
             Words(" of " + c.set.title + " (" + c.set.edition + "): ") + verdict_words(one.verdict));
    if (!e.judged.withdrawn.empty()) {
        doc.line(Words("The coupon is withdrawn: " + e.judged.withdrawn, Tone::cannot_say));
        return doc.caution();
    }
    if (const std::string strip = weld_strip(c); !strip.empty()) {
        doc.heading("Where on the weld", 2);
        doc.add(Drawing{strip});
    }
    if (one.verdict == Verdict::accept) {
        doc.gap();
        if (one.nearest)
            doc.line("It meets the class. Nearest to a limit: " + sentence(c, k, *one.nearest));
        else
            doc.line("It meets the class, and nothing came near a limit.");
    } else {
        doc.heading(one.verdict == Verdict::reject ? "Why it is not accepted"
                                                   : "What is missing before anybody can say",
                    2);
        for (const auto &f : one.findings) {
            std::vector<Bullet> plain;
            if (std::string said = plain_words(c, f); !said.empty())
                plain.push_back({std::move(said), "", {}});
            doc.item(sentence(c, k, f), f.rule >= 0 ? authority(c, k, f) : "", std::move(plain));
        }
    }
    add_causes(doc, c, one);
    std::vector<std::string> made;
    for (std::size_t i = 0; i < e.judged.judgement.classes.size(); ++i)
        if (e.judged.judgement.classes[i].verdict == Verdict::accept) made.push_back(c.set.classes[i].id);
    doc.gap().line(made.empty() ? std::string("It makes no class of this set as it is recorded now.")
                                : "It makes class " + listed(made) + ".");
    add_assurances(doc, e.sure);
    if (e.grade) doc.gap().line(Words("Graded ") + grade_words(*e.grade, e.grade_again));
    for (const auto &remark : e.remarks) doc.line("Remark by " + remark.stamp.who + ": " + remark.text);
    return doc.caution();
}

Document document_of(const Graded &g) {
    return Document{}.line("coupon " + g.mark + " graded " + g.grade.decision() + " for class " +
                           g.grade.class_id + " (verdict: " + std::string(name_of(g.verdict)) + ")");
}

Document document_of(const JudgedOrNot &one) {
    return Document{}.line(Words(padded(one.mark, 14)) +
                           (one.judged ? verdicts_in_a_line(*one.judged)
                                       : Words("not judged: " + one.why_not, Tone::cannot_say)));
}

std::string weld_strip(const Case &c) {
    std::int64_t end = c.coupon.line.length ? c.coupon.line.length->nm : 0;
    bool any = false;
    for (const auto &i : c.indications) {
        if (!i.place) continue;
        any = true;
        if (!c.coupon.line.length) end = std::max(end, i.place->to.nm);
    }
    if (!any || end == 0) return "";
    constexpr std::int64_t cells = 64;
    std::string bar(static_cast<std::size_t>(cells) + 1, '-');
    std::map<std::size_t, std::string> numbers;
    for (const auto &i : c.indications) {
        if (!i.place) continue;
        const auto cell = [&](std::int64_t nm) {
            return static_cast<std::size_t>(static_cast<Int128>(nm % (end + 1)) * cells / end);
        };
        const std::size_t first = cell(i.place->from.nm);
        for (std::size_t k = first; k <= std::max(first, cell(std::min(i.place->to.nm, end))); ++k)
            bar[k] = '=';
        auto &label = numbers[first];
        label += (label.empty() ? "#" : ",") + std::to_string(i.number);
    }
    std::string labels;
    for (const auto &[at, label] : numbers) {
        if (labels.size() < at) labels.resize(at, ' ');
        labels += label + " ";
    }
    const bool round = c.coupon.line.closed;
    const std::string ends =
        c.coupon.line.length ? print(end, Dimension::length, c.unit) : "(length not known)";
    return "    " + labels + "\n    " + bar + "\n    0" + (round ? " (12 o'clock)" : "") +
           std::string(round ? 40 : 52, ' ') + ends + (round ? " (12 o'clock again)" : "") + "\n";
}

} // namespace beadbook
