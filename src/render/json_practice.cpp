#include "render/json_practice.hpp"

#include "render/json_check.hpp"
#include "render/json_parts.hpp"
#include "render/json_weld.hpp"

namespace beadbook {
namespace {

using Json = nlohmann::json;

Json rule_json(const PracticeRule &rule) {
    Json out = authority_json(rule.clause, rule.standing);
    out["id"] = rule.id;
    out["must"] = rule.must.text;
    for (const auto &when : rule.when) out["when"].push_back(when.text);
    if (rule.warning) out["warning"] = true;
    if (!rule.reading.empty()) out["reading"] = rule.reading;
    if (!rule.repeat.empty()) out["repeat"] = rule.repeat;
    return out;
}

Json condition_json(const ConditionInfo &condition) {
    Json out{{"name", condition.name}, {"help", condition.help}, {"methods", Json::array()}};
    for (const Exam method : condition.methods) out["methods"].push_back(name_of(method));
    switch (condition.kind) {
    case ConditionInfo::Kind::amount: out["kind"] = name_of(condition.dimension); break;
    case ConditionInfo::Kind::word: out["kind"] = "word"; break;
    case ConditionInfo::Kind::day: out["kind"] = "day"; break;
    }
    if (!condition.words.empty()) out["words"] = condition.words;
    return out;
}

Json gap_json(const PracticeGap &gap) {
    Json out{{"what", gap.what}};
    for (const auto &when : gap.when) out["when"].push_back(when.text);
    if (!gap.harmless.empty()) out["harmless"] = gap.harmless;
    return out;
}

} // namespace

std::string json_text(const std::vector<std::shared_ptr<const Practice>> &all,
                      const std::vector<std::string> &notes) {
    Json out = Json::array();
    for (const auto &practice : all)
        out.push_back({{"practice", practice->name},
                       {"method", name_of(practice->method)},
                       {"title", practice->title},
                       {"edition", practice->edition},
                       {"hash", practice->hash}});
    return render::finished(std::move(out), notes);
}

std::string json_text(const Practice &practice, const std::vector<std::string> &notes) {
    Json rules = Json::array();
    for (const auto &rule : practice.rules) rules.push_back(rule_json(rule));
    Json gaps = Json::array(), told = Json::array();
    for (const auto &gap : practice.gaps) {
        gaps.push_back(gap.what);
        told.push_back(gap_json(gap));
    }
    return render::finished(Json{{"practice", practice.name},
                                 {"method", name_of(practice.method)},
                                 {"title", practice.title},
                                 {"edition", practice.edition},
                                 {"source", practice.source},
                                 {"about", practice.notes},
                                 {"hash", practice.hash},
                                 {"rules", std::move(rules)},
                                 {"gaps", std::move(gaps)},
                                 {"gaps told", std::move(told)}},
                            notes);
}

std::string json_text(const std::vector<ConditionInfo> &conditions, const std::vector<std::string> &notes) {
    Json out = Json::array();
    for (const auto &condition : conditions) out.push_back(condition_json(condition));
    return render::finished(std::move(out), notes);
}

std::string json_text(const Checked<Practice> &checked, const std::vector<std::string> &notes) {
    return render::finished(check_json(checked, "rules", checked.value ? checked.value->rules.size() : 0),
                            notes);
}

} // namespace beadbook
