#include "render/json_planning.hpp"

#include "operations/shortcoming_words.hpp"
#include "render/json_parts.hpp"
#include "render/json_standing.hpp"
#include "render/json_weld.hpp"
#include "report/exam_words.hpp"
#include "report/range_words.hpp"
#include "report/rules_document.hpp"

#include <nlohmann/json.hpp>

namespace beadbook {
namespace {

using Json = nlohmann::json;

Json test_json(const PlanResult &plan, const PlannedTest &test) {
    Json exams = Json::array(), notes = Json::array();
    for (const auto &exam : test.exams) exams.push_back(exam_json(exam));
    for (const auto &one : test.never_accepted) notes.push_back(never_accepted_words(one, *plan.criteria));
    for (const auto caution : test.cautions) notes.push_back(caution_words(caution, plan.criteria.get()));
    Json out{{"test", weld_json(test.coupon.test, plan.work.unit)},
             {"for", plan.ids(test.coupon.jobs)},
             {"exams", std::move(exams)},
             {"notes", std::move(notes)}};
    if (!test.class_id.empty()) out["class"] = test.class_id;
    if (!test.asked_class.empty()) out["class of the work"] = test.asked_class;
    if (!test.after_failure.empty()) out["after failure"] = test.after_failure;
    if (test.must_pass > 1) out["must pass"] = test.must_pass;
    return out;
}

Json why_json(const std::vector<Shortfall> &because, const Weld &work, Unit unit) {
    Json out = Json::array();
    for (const auto &one : because) out.push_back(shortfall_words(one.cover, one.allows, work, unit));
    return out;
}

Json held_json(const HeldTest &held) {
    Json out{{"number", held.number},
             {"test", weld_json(held.test, held.unit)},
             {"state", name_of(held.validity.state)},
             {"with caution", held.validity.with_caution},
             {"reason", held.validity.reason}};
    if (held.validity.until) out["until"] = print(*held.validity.until);
    for (const auto &one : held.aside) out["rests on"].push_back(words_of(one, held.rules.get()));
    if (const std::string unknown = not_known_words(*held.rules); !unknown.empty())
        out["not known"] = unknown;
    return out;
}

Json job_json(const JobAllowed &job) {
    Json renewals = Json::array(), lacks = Json::array();
    for (const auto &one : job.renewals)
        renewals.push_back({{"number", one.number}, {"coupons", one.coupons}});
    for (const auto &lack : job.lacks) lacks.push_back(name_of(lack));
    return {{"id", job.job},
            {"allowed", job.allowed == Truth::yes  ? "yes"
                        : job.allowed == Truth::no ? "no"
                                                   : "cannot say"},
            {"by", job.by},
            {"renewals", std::move(renewals)},
            {"lacks", std::move(lacks)},
            {"in doubt", job.doubted},
            {"not known", job.unread}};
}

Json plan_json(const PlanResult &plan) {
    const Unit unit = plan.work.unit;
    Json coupons = Json::array(), uncertain = Json::array(), uncovered = Json::array(),
         missed = Json::array();
    for (const auto &test : plan.tests) coupons.push_back(test_json(plan, test));
    for (const auto &one : plan.uncertain) {
        const Trait of = one.unread->variable.of;
        uncertain.push_back({{"id", one.job},
                             {"of", info(of).name},
                             {"from", print(of, one.sizes.from, unit)},
                             {"to", print(of, one.sizes.to, unit)},
                             {"not known", one.unread->what()}});
    }
    for (const auto &one : plan.uncovered) {
        Json json{{"id", one.job},
                  {"weld", weld_json(one.work, unit)},
                  {"why", why_json(one.because, one.work, unit)}};
        if (one.nearest) json["nearest coupon"] = weld_json(*one.nearest, unit);
        uncovered.push_back(std::move(json));
    }
    for (const auto &one : plan.missed)
        missed.push_back({{"id", one.job},
                          {"weld", weld_json(one.work, unit)},
                          {"nearest", one.number},
                          {"why", why_json(one.because, one.work, unit)}});
    Json out{{"rules", plan.work.rules->name},
             {"edition", plan.work.rules->edition},
             {"rules hash", plan.work.rules->hash},
             {"coupons", std::move(coupons)},
             {"uncertain", std::move(uncertain)},
             {"uncovered", std::move(uncovered)},
             {"covered already", plan.held_jobs},
             {"not covered yet", std::move(missed)},
             {"minimal", plan.minimal},
             {"at least", plan.at_least},
             {"candidates", plan.candidates}};
    if (plan.criteria) out["criteria"] = plan.criteria->name;
    if (const std::string unknown = not_known_words(*plan.work.rules); !unknown.empty())
        out["not known"] = unknown;
    return out;
}

} // namespace

std::string json_text(const PlanResult &plan, const std::vector<std::string> &notes) {
    return render::finished(plan_json(plan), notes);
}

std::string json_text(const HeldWork &work, const std::vector<std::string> &notes) {
    Json out = plan_json(work.plan);
    out["welder"] = work.welder;
    out["on"] = print(work.on);
    out["jobs"] = Json::array();
    for (const auto &job : work.plan.jobs) out["jobs"].push_back(job_json(job));
    out["held"] = Json::array();
    for (const auto &one : work.plan.held) out["held"].push_back(held_json(one));
    render::add_failed(out, work.failed);
    return render::finished(std::move(out), notes);
}

std::string json_text(const RangeResult &result, const std::vector<std::string> &notes) {
    Json tests = Json::array();
    for (const auto &one : result.tests) {
        Json unread = Json::array();
        for (const auto &range : one.range)
            if (range.variable->unread && may_matter(one.range, *range.variable))
                unread.push_back(range.parts.back().rule->text);
        tests.push_back({{"test", weld_json(one.test, result.coupon.unit())},
                         {"range", range_json(one.range, result.coupon.unit())},
                         {"not known", std::move(unread)}});
    }
    Json out{{"rules", result.rules->name}, {"edition", result.rules->edition}, {"hash", result.rules->hash},
             {"gaps", result.rules->gaps},  {"tests", std::move(tests)},        {"notes", notes}};
    if (!result.coupon.id.empty()) out["coupon"] = result.coupon.id;
    return render::finished(std::move(out), notes);
}

} // namespace beadbook
