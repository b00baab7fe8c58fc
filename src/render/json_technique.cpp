#include "render/json_technique.hpp"

#include "render/json_parts.hpp"
#include "render/json_weld.hpp"
#include "report/technique_document.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

namespace beadbook {
namespace {

using Json = nlohmann::json;

Json finding_json(const ConditionFinding &f) {
    Json out{{"rule", f.rule},
             {"holds", f.holds == Truth::yes  ? "yes"
                       : f.holds == Truth::no ? "no"
                                              : "cannot say"},
             {"warning", f.warning},
             {"text", f.text}};
    if (!f.lacks.empty()) out["lacks"] = f.lacks;
    return out;
}

/// What the class requires that this method can fulfil.
Json required_json(const MethodsResult &methods, Exam method) {
    Json out = Json::array();
    for (const auto &exam : methods.called_for)
        if (exam.one_of.front() == name_of(method)) out.push_back(exam_json(exam));
    if (!methods.required) return out;
    for (const auto &exam : methods.required->exams) {
        if (std::find(exam.one_of.begin(), exam.one_of.end(), name_of(method)) == exam.one_of.end()) continue;
        Json json = exam_json(exam);
        json["criteria"] = methods.required->criteria->name;
        json["class"] = methods.required->class_id;
        out.push_back(std::move(json));
    }
    return out;
}

/// "turns [bore] [rule]", inputs that may be left out in brackets.
std::string inputs_words(const technique::Calculation &c) {
    std::string out;
    for (const auto &input : c.inputs) {
        const bool free = input.optional || !input.otherwise.empty();
        out += std::string(out.empty() ? "" : " ") + (free ? "[" : "") + input.name + (free ? "]" : "");
    }
    return out;
}

Json input_json(const technique::CalculationInput &input) {
    Json out{{"name", input.name}, {"help", input.help}, {"kinds", Json::array()}};
    for (const auto kind : input.kinds) out["kinds"].push_back(name_of(kind));
    if (!input.words.empty()) out["words"] = input.words;
    if (!input.otherwise.empty()) out["otherwise"] = input.otherwise;
    out["needed"] = !input.optional && input.otherwise.empty();
    return out;
}

} // namespace

std::string json_text(const CouponValidity &validity, const std::vector<std::string> &notes) {
    Json out = Json::array();
    for (const auto &one : validity.exams) {
        Json findings = Json::array();
        Json gaps = Json::array();
        if (one.check) {
            for (const auto &f : one.check->findings) findings.push_back(finding_json(f));
            for (const auto &gap : one.check->gaps)
                gaps.push_back({{"what", gap.what}, {"lacks", gap.lacks}});
        }
        out.push_back({{"exam", one.exam.number},
                       {"method", name_of(one.exam.method)},
                       {"date", print(one.exam.date)},
                       {"practice", one.exam.practice},
                       {"hash", one.exam.practice_hash},
                       {"kept", one.practice != nullptr},
                       {"valid", validity_words(one)},
                       {"findings", std::move(findings)},
                       {"gaps", std::move(gaps)}});
        if (const auto cautions = one.exam.cautions(); !cautions.empty()) out.back()["cautions"] = cautions;
    }
    return render::finished(std::move(out), notes);
}

std::string json_text(const MethodsResult &methods, const std::vector<std::string> &notes) {
    Json out = Json::array();
    for (const auto &one : methods.imperfections)
        for (const auto &finds : one.methods)
            out.push_back({{"imperfection", one.imperfection},
                           {"method", name_of(finds.method)},
                           {"finds", grade_words(finds.grade)},
                           {"why", finds.why},
                           {"required", required_json(methods, finds.method)}});
    return render::finished(std::move(out), notes);
}

std::string json_text(const CalculationList &list, const std::vector<std::string> &notes) {
    Json out = Json::array();
    for (const auto &c : *list.all)
        out.push_back({{"name", c.name},
                       {"title", c.title},
                       {"formula", c.formula},
                       {"source", c.source},
                       {"inputs", inputs_words(c)}});
    return render::finished(std::move(out), notes);
}

std::string json_text(const CalculationWanted &wanted, const std::vector<std::string> &notes) {
    const auto &c = *wanted.calculation;
    Json inputs = Json::array();
    for (const auto &input : c.inputs) inputs.push_back(input_json(input));
    return render::finished(Json{{"name", c.name},
                                 {"title", c.title},
                                 {"formula", c.formula},
                                 {"source", c.source},
                                 {"inputs", std::move(inputs)},
                                 {"example", c.example}},
                            notes);
}

std::string json_text(const Calculated &calculated, const std::vector<std::string> &notes) {
    const auto &c = *calculated.calculation;
    Json results = Json::object();
    for (const auto &r : calculated.computed.results) results[r.name] = r.text;
    return render::finished(Json{{"calculation", c.name},
                                 {"title", c.title},
                                 {"formula", c.formula},
                                 {"source", c.source},
                                 {"inputs", calculated.computed.inputs.typed},
                                 {"results", std::move(results)}},
                            notes);
}

} // namespace beadbook
