#include "render/json_criteria.hpp"

#include "render/json_check.hpp"
#include "render/json_parts.hpp"
#include "render/json_weld.hpp"
#include "report/boundaries_document.hpp"
#include "report/criteria_document.hpp"
#include "report/own_file.hpp"

#include <algorithm>

namespace beadbook {
namespace {

using Json = nlohmann::json;

Json rule_json(const CriteriaSet &set, const Rule &rule) {
    Json out{
        {"id", rule.id}, {"title", rule.title}, {"clause", rule.clause}, {"measure", measure_words(rule)}};
    if (rule.kind != Rule::Kind::presence && rule.kind != Rule::Kind::coupon)
        out["compare"] = name_of(rule.compare);
    if (const auto words = condition_words(rule.when, rule.where); !words.empty()) out["conditions"] = words;
    if (!rule.windows.empty() && !rule.window_by_class) out["window"] = rule.windows.front().text;
    if (rule.only_with) out["reject only with"] = set.rules[*rule.only_with].id;
    if (rule.linked) out["linked"] = rule.linked->text;
    if (rule.least_group > 1) out["least group"] = rule.least_group;
    if (!rule.reading.empty()) out["reading"] = rule.reading;
    for (std::size_t c = 0; c < set.classes.size(); ++c) {
        Json limit = authority_json("", rule.standings[c]);
        limit.erase("clause");
        limit["limit"] = rule.limits[c].text;
        out["limits"][set.classes[c].id] = std::move(limit);
    }
    for (std::size_t c = 0; rule.window_by_class && c < set.classes.size(); ++c)
        out["limits"][set.classes[c].id]["window"] = rule.windows[c].text;
    return out;
}

Json required_json(const CriteriaSet &set, const RequiredExam &exam) {
    Json out = authority_json(exam.clause, exam.standing);
    out["id"] = exam.id;
    for (const Exam one : exam.one_of) out["one of"].push_back(name_of(one));
    out["classes"] = Json::array();
    for (std::size_t c = 0; c < set.classes.size(); ++c)
        if (exam.classes[c]) out["classes"].push_back(set.classes[c].id);
    if (const auto words = condition_words(exam.when); !words.empty()) out["conditions"] = words;
    return out;
}

Json scope_json(const ScopePart &part) {
    Json out = authority_json(part.clause, part.standing);
    out["id"] = part.id;
    out["text"] = part.text;
    if (!part.title.empty()) out["title"] = part.title;
    if (const auto words = condition_words(part.only_if); !words.empty()) out["if"] = words;
    return out;
}

Json counting_json(const std::string &id, const std::string &clause, const Standing &standing,
                   const std::string &text) {
    Json out = authority_json(clause, standing);
    out["id"] = id;
    out["text"] = text;
    return out;
}

Json blank_json(const CriteriaSet &set, const Blank &blank) {
    Json out{{"id", blank.id},         {"clause", blank.clause}, {"kind", name_of(blank.kind)},
             {"limits", blank.limits}, {"open", Json::array()},  {"filled", Json::object()}};
    if (!blank.plausible_text.empty()) out["plausible"] = blank.plausible_text;
    for (std::size_t c = 0; c < set.classes.size(); ++c) {
        if (!blank.classes[c]) continue;
        const std::string &id = set.classes[c].id;
        const auto filled = std::find_if(set.fillings.begin(), set.fillings.end(), [&](const Filling &f) {
            return f.blank == blank.id && f.class_id == id;
        });
        if (filled == set.fillings.end())
            out["open"].push_back(id);
        else
            out["filled"][id] = {{"value", render::number(filled->value, blank.dimension(), set.unit)},
                                 {"by", filled->by}};
    }
    return out;
}

Json tried_json(const TriedCases &tried) {
    Json cases = Json::array(), untried = Json::array();
    for (const auto &one : tried.cases) {
        Json verdicts = Json::object(), expected = Json::object();
        for (std::size_t c = 0; c < tried.set->classes.size(); ++c)
            verdicts[tried.set->classes[c].id] = name_of(one.judgement.classes[c].verdict);
        for (const auto &[id, verdict] : one.worked.expected) expected[id] = name_of(verdict);
        cases.push_back({{"case", one.worked.id},
                         {"source", one.worked.source},
                         {"holds", one.holds()},
                         {"expected", std::move(expected)},
                         {"verdicts", std::move(verdicts)}});
        if (!one.worked.decided_by.empty()) cases.back()["decided by"] = one.worked.decided_by;
    }
    for (const auto &limit : tried.untried)
        untried.push_back({{"rule", limit.rule},
                           {"class", limit.class_id},
                           {"within", limit.within},
                           {"over", limit.over}});
    return {{"set", tried.set->name},
            {"cases", std::move(cases)},
            {"failed", tried.failed()},
            {"never decisive", tried.never_decisive},
            {"not tried from both sides", std::move(untried)}};
}

Json boundary_json(const CriteriaSet &set, const BoundaryCase &one) {
    const Rule &rule = set.rules[one.rule];
    Json coupon = Json::object(), tries = Json::array();
    for (const Quantity q : one.varied)
        coupon[std::string(info(q).name)] =
            render::number(Exact(one.coupon.values[q]), info(q).dimension, set.unit);
    for (const auto &tried : one.tries)
        tries.push_back({{"value", render::number(tried.value, rule.dimension(), set.unit)},
                         {"written", tried.rejects ? "outside" : "within"},
                         {"judged", words_of(tried.found)}});
    return {{"rule", rule.id},
            {"class", set.classes[one.class_index].id},
            {"clause", rule.clause},
            {"standing", name_of(rule.standings[one.class_index].kind)},
            {"as written", rule.limits[one.class_index].text},
            {"compare", name_of(rule.compare)},
            {"coupon", std::move(coupon)},
            {"limit", render::number(one.limit, rule.dimension(), set.unit)},
            {"tries", std::move(tries)}};
}

} // namespace

nlohmann::json blanks_json(const CriteriaSet &set) {
    Json out = Json::array();
    for (const auto &blank : set.blanks) out.push_back(blank_json(set, blank));
    return out;
}

std::string json_text(const Boundaries &all, const std::vector<std::string> &notes) {
    Json limits = Json::array(), none = Json::array();
    for (const auto &one : all.cases) limits.push_back(boundary_json(*all.set, one));
    for (const auto &one : all.none)
        none.push_back({{"rule", all.set->rules[one.rule].id},
                        {"class", all.set->classes[one.class_index].id},
                        {"why", words_of(one.why)}});
    Json out{{"set", all.set->name},
             {"boundaries", std::move(limits)},
             {"judged otherwise", all.disagreeing()},
             {"without", std::move(none)}};
    if (all.written) {
        const Json written = tried_json(*all.written);
        for (const char *key : {"never decisive", "not tried from both sides"}) out[key] = written[key];
    }
    return render::finished(std::move(out), notes);
}

std::string json_text(const std::vector<std::shared_ptr<const CriteriaSet>> &sets,
                      const std::vector<std::string> &notes) {
    Json out = Json::array();
    for (const auto &set : sets)
        out.push_back({{"set", set->name},
                       {"title", set->title},
                       {"edition", set->edition},
                       {"classes", set->class_names()},
                       {"rules", set->rules.size()},
                       {"hash", set->hash}});
    return render::finished(std::move(out), notes);
}

std::string json_text(const CriteriaSet &set, const std::vector<std::string> &notes) {
    Json rules = Json::array(), gaps = Json::array(), required = Json::array(), relevance = Json::array(),
         merges = Json::array(), scope = Json::array();
    for (const auto &part : set.scope) scope.push_back(scope_json(part));
    for (const auto &rule : set.rules) rules.push_back(rule_json(set, rule));
    for (const auto &gap : set.gaps) gaps.push_back(gap.text);
    for (const auto &exam : set.required) required.push_back(required_json(set, exam));
    for (const auto &one : set.relevance)
        relevance.push_back(counting_json(one.id, one.clause, one.standing, one.text));
    for (const auto &one : set.merges) {
        merges.push_back(counting_json(one.id, one.clause, one.standing, one.when.text));
        if (!one.reading.empty()) merges.back()["reading"] = one.reading;
    }
    Json out{{"set", set.name},
             {"title", set.title},
             {"edition", set.edition},
             {"source", set.source},
             {"about", set.notes},
             {"classes", set.class_names()},
             {"hash", set.hash},
             {"scope", std::move(scope)},
             {"scope said", set.scope_said},
             {"rules", std::move(rules)},
             {"required exams", std::move(required)},
             {"not counted", std::move(relevance)},
             {"counted as one", std::move(merges)},
             {"gaps", std::move(gaps)}};
    if (!set.extends.empty()) out["extends"] = {{"set", set.extends}, {"edition", set.extends_edition}};
    if (!set.inherited.empty()) out["extends"]["inherited at most"] = set.inherited;
    for (const auto &one : set.silences)
        out["silence"].push_back(one.check + " of " + one.of + ": " + one.reason);
    if (!set.blanks.empty()) out["blanks"] = blanks_json(set);
    return render::finished(std::move(out), notes);
}

std::string json_text(const LimitCurves &curves, const std::vector<std::string> &notes) {
    const CriteriaSet &set = *curves.set;
    const auto named = [&](const Rule &rule) {
        return Json{{"id", rule.id}, {"title", rule.title}, {"clause", rule.clause}};
    };
    Json thickness = Json::array(), rules = Json::array(), others = Json::array();
    for (const std::int64_t nm : curves.thickness)
        thickness.push_back(render::number(nm, Dimension::length, set.unit));
    for (const auto &curved : curves.rules) {
        const Rule &rule = set.rules[curved.rule];
        Json one = named(rule);
        one["measure"] = measure_words(rule);
        one["compare"] = name_of(rule.compare);
        if (const auto words = condition_words(rule.when, rule.where); !words.empty())
            one["conditions"] = words;
        for (const auto &curve : curved.curves) {
            Json limits = Json::array();
            for (const auto &at : curve.at)
                limits.push_back(at ? render::number(*at, rule.dimension(), set.unit) : Json(nullptr));
            for (const std::size_t k : curve.classes)
                one["limits"][set.classes[k].id] = {{"standing", name_of(rule.standings[k].kind)},
                                                    {"at", limits}};
        }
        rules.push_back(std::move(one));
    }
    for (const auto &other : curves.others) {
        others.push_back(named(set.rules[other.rule]));
        others.back()["why"] = why_no_curve(curves, other);
    }
    return render::finished({{"set", set.name},
                             {"edition", set.edition},
                             {"thickness", std::move(thickness)},
                             {"over thickness", std::move(rules)},
                             {"without a curve", std::move(others)}},
                            notes);
}

std::string json_text(const Vocabulary &vocabulary, const std::vector<std::string> &notes) {
    Json out = Json::array();
    for (std::size_t t = 0; t < vocabulary.size(); ++t) {
        const ImperfectionType &type = vocabulary[static_cast<TypeId>(t)];
        Json one{{"name", type.name}, {"also", type.also}, {"measured", type.measured}};
        if (!type.quick.empty()) one["quick"] = type.quick;
        if (!type.iso.empty()) one["iso 6520-1"] = type.iso;
        if (type.under) one["under"] = vocabulary[*type.under].name;
        if (type.shape != Shape::unknown) one["shape"] = name_of(type.shape);
        out.push_back(std::move(one));
    }
    return render::finished(std::move(out), notes);
}

std::string json_text(const CheckedCriteria &checked, const std::vector<std::string> &notes) {
    Json out = check_json(checked, "rules", checked.value ? checked.value->rules.size() : 0);
    if (checked.value)
        for (const auto &one : lacking_words(*checked.value)) out["lacks"].push_back(one);
    if (checked.coverage) {
        out["always cannot say"] = Json::object();
        for (const auto &one : *checked.coverage)
            out["always cannot say"][std::string(name_of(one.exam))] = one.types;
    }
    return render::finished(std::move(out), notes);
}

std::string json_text(const TriedCases &tried, const std::vector<std::string> &notes) {
    return render::finished(tried_json(tried), notes);
}

std::string json_text(const std::vector<TriedCases> &all, const std::vector<std::string> &notes) {
    Json out = Json::array();
    for (const auto &tried : all) out.push_back(tried_json(tried));
    return render::finished(std::move(out), notes);
}

} // namespace beadbook
