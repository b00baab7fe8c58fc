#include "render/json_rules.hpp"

#include "operations/looser_rules.hpp"
#include "render/json_check.hpp"
#include "render/json_parts.hpp"
#include "render/json_weld.hpp"
#include "report/rules_document.hpp"

namespace beadbook {
namespace {

using Json = nlohmann::json;

Json authority_json(const Authority &from) { return beadbook::authority_json(from.clause, from.standing); }

Json rule_json(const RangeRule &rule) {
    Json out = beadbook::authority_json(rule.clause, rule.standing);
    out["id"] = rule.id;
    out["of"] = info(rule.of).name;
    out["test"] = rule.test.text;
    out["work"] = rule.work.text;
    out["allows"] = allowance_words(rule);
    if (!rule.reading.empty()) out["reading"] = rule.reading;
    return out;
}

Json variable_json(const Variable &variable) {
    Json out{{"name", info(variable.of).name}};
    if (!variable.work.text.empty()) out["in work with"] = variable.work.text;
    return out;
}

Json exam_json(const TestExam &exam) {
    Json out = beadbook::authority_json(exam.clause, exam.standing);
    out["id"] = exam.id;
    out["one of"] = exam.one_of;
    out["test"] = exam.test.text;
    return out;
}

Json way_json(const ValidityWay &way) {
    Json out = authority_json(way.from);
    out["id"] = way.id;
    out["holds"] = period_words(way);
    if (way.lasts) out["lasts"] = way.lasts->text;
    if (way.use_every) {
        out["use every"] = way.use_every->text;
        out["kept by use"] = way.kept_by_use;
        out["calendar months"] = way.whole_months;
    }
    if (way.same_employer) out["same employer"] = true;
    if (const auto &extension = way.extension) {
        Json json = authority_json(extension->from);
        json["welds"] = extension->welds;
        json["within"] = extension->within.text;
        json["adds"] = extension->adds.text;
        if (!extension->one_of.empty()) json["one of"] = extension->one_of;
        if (extension->as_test) json["as the test"] = true;
        out["extension"] = std::move(json);
    }
    return out;
}

void put_coupons(Json &out, const char *key, const std::optional<CouponsAsked> &asked) {
    if (!asked) return;
    out[key] = authority_json(asked->from);
    out[key]["coupons"] = asked->coupons;
}

} // namespace

std::string json_text(const std::vector<std::shared_ptr<const RangeRules>> &all,
                      const std::vector<std::string> &notes) {
    Json out = Json::array();
    for (const auto &rules : all)
        out.push_back({{"rules", rules->name},
                       {"title", rules->title},
                       {"edition", rules->edition},
                       {"hash", rules->hash}});
    return render::finished(std::move(out), notes);
}

std::string json_text(const RangeRules &rules, const std::vector<std::string> &notes) {
    Json variables = Json::array(), ranges = Json::array(), exams = Json::array(), validity = Json::array(),
         accepted = Json::array();
    for (const auto &variable : rules.variables) variables.push_back(variable_json(variable));
    for (const auto &rule : rules.rules) ranges.push_back(rule_json(rule));
    for (const auto &exam : rules.exams) exams.push_back(exam_json(exam));
    for (const auto &way : rules.validity) validity.push_back(way_json(way));
    for (const auto &one : rules.accepted_by) {
        accepted.push_back(authority_json(one.from));
        accepted.back()["criteria"] = one.criteria;
        if (!one.classes.empty()) accepted.back()["classes"] = one.classes;
    }
    Json out{{"rules", rules.name},
             {"title", rules.title},
             {"edition", rules.edition},
             {"source", rules.source},
             {"about", rules.notes},
             {"hash", rules.hash},
             {"variables", std::move(variables)},
             {"ranges", std::move(ranges)},
             {"exams", std::move(exams)},
             {"accepted by", std::move(accepted)},
             {"validity", std::move(validity)},
             {"gaps", rules.gaps}};
    if (!rules.base_metals.empty()) out["base metals"] = rules.base_metals;
    out["ends"] = rules.ends.from ? authority_json(*rules.ends.from) : Json::object();
    out["ends"]["compared"] = rules.ends.text;
    put_coupons(out, "retest at once", rules.retest.immediate);
    if (rules.retest.times > 0) out["retest at once"]["times"] = rules.retest.times;
    if (rules.retest.same_exam) out["retest by same examination"] = authority_json(*rules.retest.same_exam);
    put_coupons(out, "retest after training", rules.retest.after_training);
    put_coupons(out, "renewal", rules.renewal);
    return render::finished(std::move(out), notes);
}

std::string json_text(const Checked<RangeRules> &checked, const std::vector<std::string> &notes) {
    Json out = check_json(checked, "ranges", checked.value ? checked.value->rules.size() : 0);
    if (checked.value)
        if (const auto looser = looser_rules_words(*checked.value); !looser.empty()) out["looser"] = looser;
    return render::finished(std::move(out), notes);
}

} // namespace beadbook
