#include "render/csv_results.hpp"

#include "criteria/provenance.hpp"
#include "measure/print.hpp"
#include "measure/text.hpp"
#include "records/csv.hpp"
#include "report/coupon_document.hpp"
#include "report/finding_place.hpp"
#include "report/judgement_document.hpp"

#include <algorithm>
#include <cstdio>

namespace beadbook {
namespace {

using Cells = std::vector<std::string>;

/// Before the columns of each table: which coupon, and what lists are asked for by.
const Cells coupon_head{"coupon", "cohort", "welder", "welded", "joint", "process"};

Cells coupon_cells(const CouponRecord &coupon) {
    Cells out{coupon.id};
    for (auto field = coupon_head.begin() + 1; field != coupon_head.end(); ++field)
        out.push_back(coupon.get(*field));
    return out;
}

std::string row_of(Cells cells, const Cells &more) {
    cells.insert(cells.end(), more.begin(), more.end());
    return write_csv_row(cells);
}

std::string yes_no(bool yes) { return yes ? "yes" : "no"; }

/// "0.0563 in" as a number and its unit.
std::pair<std::string, std::string> parted(const std::string &printed) {
    const auto blank = printed.find(' ');
    return blank == std::string::npos ? std::pair{printed, std::string()}
                                      : std::pair{printed.substr(0, blank), printed.substr(blank + 1)};
}

/// Measured, limit, unit, and how far the one is of the other; empty where nothing was measured.
Cells number_cells(const Case &c, const Finding *f) {
    if (!f || f->rule < 0 || !f->has_numbers) return {"", "", "", ""};
    const PrintedPair pair =
        print_against(c.set.rules[static_cast<std::size_t>(f->rule)], f->measured, f->limit, c.unit);
    char ratio[32] = "";
    if (f->ratio < 1e12) std::snprintf(ratio, sizeof ratio, "%.6g", f->ratio);
    const auto [limit, unit] = parted(pair.second);
    return {parted(pair.first).first, limit, unit, ratio};
}

/// From, to, unit, and the words; empty where no place is known.
Cells place_cells(const Case &c, std::size_t class_index, const Finding &f) {
    const auto place = laid_place(c, class_index, f);
    if (!place) return {"", "", "", ""};
    const auto along = [&](Length at) { return print_exact(Exact(at.nm), Dimension::length, c.unit); };
    return {parted(along(place->from)).first, parted(along(place->to)).first, std::string(name_of(c.unit)),
            print_place(*place, c.coupon.line, c.unit)};
}

/// Each type once, in the order of the finds.
std::string types_of(const Case &c, const Finding &f) {
    Cells names;
    std::string out;
    for (const int n : f.indications) {
        const Indication *i = c.find(n);
        if (!i) continue;
        const std::string &name = c.vocabulary[i->type].name;
        if (std::find(names.begin(), names.end(), name) != names.end()) continue;
        names.push_back(name);
        out += (out.empty() ? "" : "; ") + name;
    }
    return out;
}

const Rule *rule_of(const Case &c, const Finding *f) {
    return f && f->rule >= 0 ? &c.set.rules[static_cast<std::size_t>(f->rule)] : nullptr;
}

/// All that lists and headings call cautions, and what is said of the weld otherwise than when it was
/// examined.
Cells beside(const Judged &judged) {
    Cells out = judged.cautions();
    out.insert(out.end(), judged.gone.begin(), judged.gone.end());
    for (const auto &one : judged.sure) out.push_back(words_of(one));
    if (!judged.said_otherwise.empty())
        out.push_back(said_otherwise_behind(judged.said_otherwise, "").plain());
    return out;
}

std::string verdict_rows(const Cells &coupon, const JudgedOrNot &one, const CouponState &state) {
    const std::string exams = std::to_string(state.exams.size()),
                      finds = std::to_string(state.indications.size());
    if (!one.judged)
        return row_of(coupon, {state.record.get("criteria"), "", "", "", "", "", one.why_not, exams, finds,
                               "", "", "", "", "", "", state.record.get("mechanical"), "", "", ""});
    const Judged &judged = *one.judged;
    const Case c = case_of(judged);
    std::string out;
    for (std::size_t k = 0; k < judged.judgement.classes.size(); ++k) {
        const ClassJudgement &of = judged.judgement.classes[k];
        const Finding *nearest = of.nearest ? &*of.nearest : nullptr;
        const Rule *rule = rule_of(c, nearest);
        Cells cells{c.set.name,
                    c.set.edition,
                    own_file_mark(c.set.name, c.set.hash),
                    c.set.classes[k].id,
                    yes_no(judged.sought == k),
                    std::string(name_of(of.verdict)),
                    "",
                    exams,
                    finds,
                    std::to_string(of.findings.size()),
                    rule ? rule->id : ""};
        for (auto &cell : number_cells(c, nearest)) cells.push_back(std::move(cell));
        // What the verdict does not go by and whoever reads it should know.
        cells.push_back(judged.mechanical);
        cells.push_back(joined(beside(judged), "; "));
        cells.push_back(joined(judged.said, "; "));
        cells.emplace_back(name_of(*outcome_of(of.verdict, judged.bends_failed())));
        out += row_of(coupon, cells);
    }
    return out;
}

std::string finding_rows(const Cells &coupon, const JudgedOrNot &one) {
    if (!one.judged) return "";
    const Judged &judged = *one.judged;
    const Case c = case_of(judged);
    std::string out;
    for (std::size_t k = 0; k < judged.judgement.classes.size(); ++k)
        for (const auto &f : judged.judgement.classes[k].findings) {
            const Rule *rule = rule_of(c, &f);
            std::string numbers;
            for (const int n : f.indications) numbers += (numbers.empty() ? "" : " ") + std::to_string(n);
            Cells cells{c.set.name,
                        own_file_mark(c.set.name, c.set.hash),
                        c.set.classes[k].id,
                        yes_no(judged.sought == k),
                        std::string(name_of(f.effect)),
                        std::string(id_of(f.kind)),
                        rule ? rule->id : "",
                        rule ? rule->clause : "",
                        rule ? std::string(name_of(rule->standings[k].kind)) : "",
                        types_of(c, f),
                        numbers};
            for (auto &cell : number_cells(c, &f)) cells.push_back(std::move(cell));
            for (auto &cell : place_cells(c, k, f)) cells.push_back(std::move(cell));
            cells.push_back(sentence(c, k, f));
            out += row_of(coupon, cells);
        }
    return out;
}

std::string grade_row(const Cells &coupon, const CouponLine &line, const GradeStanding &standing) {
    const Grade &grade = *line.grade;
    return row_of(coupon, {grade.class_id, grade.decision(), standing.was, std::string(name_of(standing.now)),
                           yes_no(standing.state == GradeStanding::State::again), standing.why,
                           yes_no(grade.against_verdict), yes_no(grade.against_mechanical), grade.remark,
                           grade.stamp.who, grade.stamp.at, line.own_file,
                           yes_no(line.cautions || !line.said_otherwise.empty()), standing.by_other,
                           line.record.withdrawn, yes_no(line.written_beside)});
}

} // namespace

std::string csv_head(ResultTable table) {
    switch (table) {
    case ResultTable::verdicts:
        return row_of(coupon_head, {"criteria", "edition", "own file", "class", "sought", "verdict",
                                    "not judged", "exams", "indications", "findings", "nearest rule",
                                    "nearest measured", "nearest limit", "nearest unit", "nearest ratio",
                                    "mechanical", "cautions", "written beside", "outcome"});
    case ResultTable::findings:
        return row_of(coupon_head,
                      {"criteria", "own file", "class",        "sought",      "effect",   "kind",    "rule",
                       "clause",   "standing", "imperfection", "indications", "measured", "limit",   "unit",
                       "ratio",    "from",     "to",           "place unit",  "place",    "sentence"});
    case ResultTable::grades: break;
    }
    return row_of(coupon_head, {"class", "grade", "verdict then", "verdict now", "to be graded again",
                                "why again", "against verdict", "against mechanical", "remark", "by", "at",
                                "own file", "with cautions", "graded by", "withdrawn", "written beside"});
}

std::string csv_rows(ResultTable table, CouponAtHand &one) {
    const CouponLine &line = one.line();
    const Cells cells = coupon_cells(line.record);
    // What was taken back is named, or a failure would be gone from a count with nobody the wiser.
    const std::string &withdrawn = line.record.withdrawn;
    switch (table) {
    case ResultTable::verdicts:
        return withdrawn.empty()
                   ? verdict_rows(cells, one.judged(), one.coupon())
                   : verdict_rows(cells, {line.record.id, {}, "withdrawn: " + withdrawn}, one.coupon());
    case ResultTable::findings: return withdrawn.empty() ? finding_rows(cells, one.judged()) : "";
    case ResultTable::grades: break;
    }
    return line.grade ? grade_row(cells, line, one.grading()) : "";
}

} // namespace beadbook
