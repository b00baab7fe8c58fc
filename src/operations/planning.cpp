#include "operations/planning.hpp"

#include "measure/text.hpp"

#include <algorithm>
#include <filesystem>

namespace beadbook {
namespace {

/// A file that the work names, looked for beside the work's own file.
std::string beside(const Source &source, const std::string &name) {
    const std::filesystem::path file(name);
    if (source.text || !means_file(name) || file.is_absolute()) return name;
    return (std::filesystem::path(source.name).parent_path() / file).lexically_normal().string();
}

std::vector<Shortfall> shortfalls(const std::vector<VariableCover> &fails,
                                  const std::vector<VariableRange> &range) {
    std::vector<Shortfall> out;
    for (const auto &fail : fails) {
        const auto of = std::find_if(range.begin(), range.end(),
                                     [&](const VariableRange &one) { return one.variable == fail.variable; });
        out.push_back({fail, of == range.end() ? VariableRange{fail.variable, {}} : *of});
    }
    return out;
}

/// Classes that the work names and the criteria do not have: nothing would be known of such coupons'
/// examinations, and nobody would notice.
std::vector<std::string> unknown_classes(const PlanResult &plan) {
    std::vector<std::string> out;
    for (const Job &job : plan.work.jobs)
        if (!job.class_id.empty() && !plan.criteria->class_index(job.class_id))
            out.push_back(job.id + " names class '" + shown(job.class_id) + "', but criteria " +
                          plan.criteria->name + " have " + listed(plan.criteria->class_names()) +
                          "; what that class requires is not told");
    return out;
}

} // namespace

Work read_work(Catalogue &catalogue, const Source &source, const std::string &rules) {
    const std::string text = source.read(catalogue.outside());
    const auto open = [&](const std::string &name) {
        return catalogue.rules(rules.empty() ? beside(source, name) : name);
    };
    LoadedWork loaded = load_work(text, rules, open);
    if (!loaded.work) throw mistakes_in("work", source.name, text, loaded.issues);
    loaded.work->criteria = beside(source, loaded.work->criteria);
    return std::move(*loaded.work);
}

std::vector<std::string> PlanResult::ids(const std::vector<std::size_t> &jobs) const {
    std::vector<std::string> out;
    for (const std::size_t j : jobs) out.push_back(work.jobs[j].id);
    return out;
}

Done<PlanResult> plan_work(Catalogue &catalogue, const PlanRequest &request,
                           const std::vector<HeldTest> &held) {
    Done<PlanResult> out;
    PlanResult &result = out.value;
    result.work = read_work(catalogue, request.work, request.rules);
    const std::string &criteria = request.criteria.empty() ? result.work.criteria : request.criteria;
    if (!criteria.empty()) result.criteria = catalogue.criteria(criteria);

    std::vector<int> numbers;
    std::vector<std::vector<VariableRange>> ranges;
    for (const HeldTest &one : held) {
        if (one.rules->name != result.work.rules->name) continue;
        result.held.push_back(one);
        if (one.validity.state != Validity::State::valid) continue;
        numbers.push_back(one.number);
        ranges.push_back(one.range);
    }
    const Plan plan = plan_tests(result.work, ranges, catalogue.outside().solver);
    result.candidates = plan.candidates;
    result.minimal = plan.minimal;
    result.at_least = plan.at_least;
    result.held_jobs = result.ids(plan.held_jobs);
    for (const auto &coupon : plan.coupons)
        result.tests.push_back(examinations_for(result.work, coupon, result.criteria.get()));
    for (const auto &one : plan.missed)
        result.missed.push_back({result.work.jobs[one.job].id, one.work, numbers[one.held],
                                 shortfalls(one.fails, ranges[one.held])});
    for (const auto &one : plan.uncovered) {
        UncoveredWork uncovered{result.work.jobs[one.job].id, one.work, one.nearest, {}};
        if (one.nearest)
            uncovered.because = shortfalls(one.fails, range_of(*result.work.rules, *one.nearest));
        result.uncovered.push_back(std::move(uncovered));
    }
    if (result.criteria) out.notes = unknown_classes(result);
    out.notes.insert(out.notes.end(), plan.notes.begin(), plan.notes.end());
    return out;
}

} // namespace beadbook
