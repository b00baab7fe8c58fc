#include "render/json_weld.hpp"

#include "report/exam_words.hpp"

#include <nlohmann/json.hpp>

namespace beadbook {
namespace {

nlohmann::json part_json(const RangePart &part, Unit unit) {
    nlohmann::json out = authority_json(part.rule->clause, part.rule->standing);
    out["allows"] = print(part, unit);
    out["rule"] = part.rule->id;
    if (!part.rule->work.text.empty()) out["for"] = part.rule->work.text;
    if (!part.rule->reading.empty()) out["reading"] = part.rule->reading;
    for (std::size_t i = 0; i < part.edges.size(); ++i)
        out["ends"].push_back({{"compare", beadbook::name_of(part.edges[i].first)},
                               {"compared", print(part.rule->of, part.edges[i].second, unit)},
                               {"computed", print(part.rule->of, part.computed[i], unit)}});
    for (const auto &lack : part.lacks) out["lacks"].push_back(name_of(lack));
    return out;
}

} // namespace

nlohmann::json authority_json(const std::string &clause, const Standing &standing) {
    nlohmann::json out{{"clause", clause}, {"standing", name_of(standing.kind)}, {"source", standing.source}};
    if (!standing.confirmed.empty()) out["confirmed"] = standing.confirmed;
    return out;
}

nlohmann::json weld_json(const Weld &weld, Unit unit) {
    nlohmann::json out = nlohmann::json::object();
    for (std::size_t i = 0; i < trait_count; ++i) {
        const auto trait = static_cast<Trait>(i);
        if (!weld.knows(trait)) continue;
        out[std::string(info(trait).name)] =
            is_size(trait) ? print(trait, *weld.size(trait), unit) : weld.word(trait);
    }
    return out;
}

nlohmann::json range_json(const std::vector<VariableRange> &range, Unit unit) {
    nlohmann::json out = nlohmann::json::array();
    for (const auto &one : range) {
        if (!may_matter(range, *one.variable)) continue;
        nlohmann::json parts = nlohmann::json::array();
        for (const auto &part : one.parts) parts.push_back(part_json(part, unit));
        nlohmann::json json{{"variable", info(one.variable->of).name}, {"parts", std::move(parts)}};
        if (!one.variable->work.text.empty()) json["in work with"] = one.variable->work.text;
        out.push_back(std::move(json));
    }
    return out;
}

nlohmann::json exam_json(const AskedExam &exam) {
    nlohmann::json out = nlohmann::json::object();
    if (exam.called_for)
        out["called for"] = true;
    else
        out = authority_json(exam.from.clause, exam.from.standing);
    out["one of"] = exam.one_of;
    out["why"] = why_words(exam);
    if (!exam.because.empty()) out["because"] = exam.because;
    if (!exam.lacks.empty()) out["lacks"] = exam.lacks;
    return out;
}

} // namespace beadbook
