#include "render/json_proof.hpp"

#include "render/json_parts.hpp"
#include "report/proof_document.hpp"

#include <algorithm>

namespace beadbook::render {
namespace {

nlohmann::json exam_json(const Case &c, const Judged &judged, const ProvenExam &part) {
    nlohmann::json out{{"method", name_of(part.method)}, {"exam", part.number}};
    if (part.called_for) {
        out["asked by"] = "the coupon";
    } else if (part.required >= 0) {
        const RequiredExam &required = c.set.required[static_cast<std::size_t>(part.required)];
        out["asked by"] = required.id;
        out["clause"] = required.clause;
        out["standing"] = name_of(required.standing.kind);
    } else {
        out["asked by"] = "nothing is accepted unexamined";
    }
    const auto record = std::find_if(judged.exam_records.begin(), judged.exam_records.end(),
                                     [&](const ExamRecord &e) { return e.number == part.number; });
    if (record == judged.exam_records.end()) return out;
    out["examiner"] = record->examiner;
    if (!record->level.empty()) out["level"] = record->level;
    if (record->level_as_typed) out["level as typed"] = true;
    out["date"] = print(record->date);
    if (record->finished) {
        if (record->finished->on) out["finished"] = print(*record->finished->on);
        out["finished by"] = record->finished->by;
        if (!record->finished->why.empty()) out["finished why"] = record->finished->why;
        out["found"] = record->finished->found;
    }
    if (!record->practice.empty()) out["practice"] = record->practice;
    if (const auto told = record->conditions_not_held(); !told.empty()) out["conditions not held"] = told;
    return out;
}

nlohmann::json entry_json(const Case &c, std::size_t class_index, const ProvenEntry &row) {
    nlohmann::json out{{"how", name_of(row.how)}, {"sure", row.sure}};
    if (row.entry != 0) out["entry"] = row.entry;
    const auto index = static_cast<std::size_t>(row.rule);
    if (row.how == ProvenEntry::How::not_relevant) {
        const Relevance &clause = c.set.relevance[index];
        out["relevance"] = clause.id;
        out["clause"] = clause.clause;
        out["standing"] = name_of(clause.standing.kind);
        return out;
    }
    const Rule &rule = c.set.rules[index];
    out["rule"] = rule.id;
    out["clause"] = rule.clause;
    out["standing"] = name_of(rule.standings[class_index].kind);
    if (row.has_numbers) {
        out["measured"] = number(row.measured, rule.dimension(), c.unit);
        out["limit"] = number(row.limit, rule.dimension(), c.unit);
    }
    return out;
}

} // namespace

nlohmann::json standings_json(const StandingCount &count) {
    return {{"read", count.read},   {"second hand", count.second_hand},         {"memory", count.memory},
            {"house", count.house}, {"common practice", count.common_practice}, {"own copy", count.own_copy},
            {"blank", count.blank}};
}

nlohmann::json proof_json(const Case &c, const Judged &judged, std::size_t class_index) {
    const Proof &proof = *judged.judgement.classes[class_index].proof;
    nlohmann::json out{{"scope", nlohmann::json::array()},
                       {"exams", nlohmann::json::array()},
                       {"entries", nlohmann::json::array()},
                       {"dimensions", nlohmann::json::array()},
                       {"gaps looked at", proof.gaps},
                       {"not in the set", not_in_set(judged)},
                       {"exams that do not count", not_counted_words(judged)},
                       {"compared", proof.compared},
                       {"facts", nlohmann::json::object()},
                       {"standings", standings_json(standings_behind(proof, c.set, class_index))}};
    for (const auto &[methods, rules] : rules_of_no_exam(judged)) out["rules of no exam"][methods] = rules;
    for (const int s : proof.scope) {
        const ScopePart &part = c.set.scope[static_cast<std::size_t>(s)];
        out["scope"].push_back({{"part", part.id},
                                {"text", part.text},
                                {"clause", part.clause},
                                {"standing", name_of(part.standing.kind)}});
    }
    for (const auto &part : proof.exams) out["exams"].push_back(exam_json(c, judged, part));
    for (const auto &part : exams_beside(judged, proof)) {
        out["exams"].push_back(exam_json(c, judged, part));
        out["exams"].back()["asked by"] = "nothing";
    }
    for (const auto &row : proof.entries) out["entries"].push_back(entry_json(c, class_index, row));
    for (const auto &part : proof.measured)
        out["dimensions"].push_back(
            {{"rule", c.set.rules[static_cast<std::size_t>(part.rule)].id}, {"entry", part.entry}});
    for (const auto &[name, value] : facts_told(c, facts_behind(proof, c.set, class_index)))
        out["facts"][name] = value;
    return out;
}

} // namespace beadbook::render
