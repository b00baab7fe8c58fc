#include "report/explain.hpp"

#include "measure/print.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <map>

namespace beadbook {
namespace {

constexpr std::size_t line_width = 100;

/// Wraps at blanks; the first line keeps its own indent, later ones get `indent`.
std::string wrapped(const std::string &text, std::size_t indent) {
    std::string out(std::min(text.find_first_not_of(' '), text.size()), ' ');
    std::size_t column = out.size();
    bool begun = false;
    for (const auto word : words_of(text)) {
        if (begun && column + 1 + word.size() > line_width) {
            out += "\n" + std::string(indent, ' ');
            column = indent;
        } else if (begun) {
            out += ' ';
            ++column;
        }
        out += word;
        column += word.size();
        begun = true;
    }
    return out + "\n";
}

std::string filled(std::string text, const Case &c, const Rule &rule, const Finding &f) {
    if (!f.has_numbers) return text.find('{') == std::string::npos ? text : "";
    const PrintedPair p = print_pair(f.measured, f.limit, rule.dimension(), c.unit);
    for (const auto &[name, value] :
         {std::pair{"{measured}", p.first}, {"{limit}", p.second}, {"{over by}", p.difference}})
        for (std::size_t at; (at = text.find(name)) != std::string::npos;)
            text.replace(at, std::string(name).size(), value);
    return text;
}

std::string cause_and_remedy(const Case &c, const ClassJudgement &judged) {
    std::string out;
    std::vector<const ImperfectionType *> said;
    for (const auto &f : judged.findings) {
        if (f.effect != Verdict::reject) continue;
        for (const int n : f.indications) {
            const Indication *i = c.find(n);
            const ImperfectionType *type = i ? &c.vocabulary.explained(i->type) : nullptr;
            if (!type || type->cause.empty() || std::find(said.begin(), said.end(), type) != said.end())
                continue;
            said.push_back(type);
            out += wrapped("  " + type->name + ": usually " + type->cause + ".", 4);
            out += wrapped("    Change: " + type->remedy + ".", 6);
        }
    }
    return out;
}

} // namespace

std::string explain_judgement(const Case &c, const Judgement &judgement, const Paint &paint) {
    std::string out;
    for (std::size_t k = 0; k < judgement.classes.size(); ++k) {
        const ClassJudgement &one = judgement.classes[k];
        out += paint.strong("Class " + c.set.classes[k].id) + ": " + paint.verdict(one.verdict) + "\n";
        constexpr std::size_t most = 40;
        for (std::size_t f = 0; f < one.findings.size() && f < most; ++f) {
            out += wrapped("  - " + sentence(c, k, one.findings[f]), 4);
            out += wrapped("    [" + authority(c, k, one.findings[f]) + "]", 5);
        }
        if (one.findings.size() > most)
            out += "  - and " + std::to_string(one.findings.size() - most) + " more reasons\n";
        if (one.verdict == Verdict::accept) {
            if (one.nearest)
                out += wrapped("  nearest to a limit: " + sentence(c, k, *one.nearest), 4) +
                       wrapped("    [" + authority(c, k, *one.nearest) + "]", 5);
            else
                out += "  nothing came near a limit\n";
        }
    }
    return out;
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

std::string explain_to_welder(const Case &c, const Judgement &judgement, std::size_t class_index,
                              const Paint &paint) {
    const ClassJudgement &one = judgement.classes[class_index];
    std::string out = paint.strong("Class " + c.set.classes[class_index].id) + " of " + c.set.title + " (" +
                      c.set.edition + "): " + paint.verdict(one.verdict) + "\n\n";
    if (const std::string strip = weld_strip(c); !strip.empty()) out += "Where on the weld:\n" + strip + "\n";
    if (one.verdict == Verdict::accept) {
        out +=
            one.nearest
                ? wrapped("It meets the class. Nearest to a limit: " + sentence(c, class_index, *one.nearest),
                          0)
                : std::string("It meets the class, and nothing came near a limit.\n");
    } else {
        out += one.verdict == Verdict::reject ? "Why it is not accepted:\n"
                                              : "What is missing before anybody can say:\n";
        for (const auto &f : one.findings) {
            out += wrapped("  - " + sentence(c, class_index, f), 4);
            if (f.rule < 0) continue;
            const Rule &rule = c.set.rules[static_cast<std::size_t>(f.rule)];
            if (const std::string plain = filled(rule.says, c, rule, f); !plain.empty())
                out += wrapped("    " + plain, 4);
            out += wrapped("    [" + authority(c, class_index, f) + "]", 5);
        }
    }
    if (const std::string causes = cause_and_remedy(c, one); !causes.empty())
        out += "\nWhat usually causes it, and what to change:\n" + causes;
    std::vector<std::string> made;
    for (std::size_t k = 0; k < judgement.classes.size(); ++k)
        if (judgement.classes[k].verdict == Verdict::accept) made.push_back(c.set.classes[k].id);
    out += "\n" + (made.empty() ? std::string("It makes no class of this set as it is recorded now.\n")
                                : "It makes class " + listed(made) + ".\n");
    return out;
}

} // namespace beadbook
