#include "operations/planning.hpp"

#include "measure/text.hpp"
#include "operations/changed_rules.hpp"
#include "operations/shortcoming_words.hpp"
#include "qualify/allowed.hpp"
#include "qualify/cells.hpp"

#include <algorithm>
#include <filesystem>
#include <set>

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

/// One renewal brings back all of a process, so the first of each is told.
std::vector<JobAllowed::Renewal> renewals_of(const std::vector<std::size_t> &used,
                                             const std::vector<const HeldTest *> &lapsed) {
    std::vector<JobAllowed::Renewal> out;
    std::vector<std::string> processes;
    for (const std::size_t i : used) {
        const std::string &process = lapsed[i]->test.word(Trait::process);
        if (std::find(processes.begin(), processes.end(), process) != processes.end()) continue;
        processes.push_back(process);
        out.push_back(
            {lapsed[i]->number, std::max(lapsed[i]->rules->renewal->coupons, lapsed[i]->renewed_by)});
    }
    return out;
}

/// What the rules' text would have to say for a yes: of traits that nothing limits that was read, and of how
/// a test weld is accepted, which a paper from elsewhere has behind it.
std::vector<std::string> unread_for(const JobAnswer &answer, const RangeRules &rules,
                                    const std::vector<const HeldTest *> &valid) {
    std::vector<std::string> out;
    for (const Lack &lack : answer.lacks)
        for (const auto &unread : rules.unread)
            if (lack.of == Lack::Of::rules && lack.trait == unread.variable.of) out.push_back(unread.what());
    for (const std::size_t i : answer.by)
        for (auto &what : valid[i]->rules->not_known())
            if (!valid[i]->carried && std::find(out.begin(), out.end(), what) == out.end())
                out.push_back(std::move(what));
    return out;
}

std::vector<JobAllowed> allowed_jobs(const Work &work, const std::vector<HeldTest> &held) {
    std::vector<const HeldTest *> valid, lapsed, doubted;
    for (const auto &one : held) {
        if (one.validity.state == Validity::State::valid) valid.push_back(&one);
        if (one.validity.state == Validity::State::lapsed && one.rules->renewal) lapsed.push_back(&one);
        if (one.validity.state == Validity::State::in_doubt) doubted.push_back(&one);
    }
    const auto ranges = [](const std::vector<const HeldTest *> &tests) {
        std::vector<TestRange> out;
        for (const auto *one : tests) out.push_back(one->range);
        return out;
    };
    const auto answers = answers_of(work.jobs, {ranges(valid), ranges(lapsed), ranges(doubted)});
    std::vector<JobAllowed> out;
    for (std::size_t j = 0; j < answers.size(); ++j) {
        JobAllowed one{work.jobs[j].id,
                       answers[j].allowed,
                       {},
                       renewals_of(answers[j].renewals, lapsed),
                       answers[j].lacks,
                       unread_for(answers[j], *work.rules, valid),
                       {}};
        if (!one.unread.empty()) one.allowed = both(one.allowed, Truth::unknown);
        for (const std::size_t i : answers[j].by) one.by.push_back(valid[i]->number);
        for (const std::size_t i : answers[j].doubted) one.doubted.push_back(doubted[i]->number);
        out.push_back(std::move(one));
    }
    return out;
}

/// The plan for the jobs that are left, with their places among all jobs.
Plan plan_of_rest(const Work &work, const std::vector<JobAllowed> &jobs, const std::vector<TestRange> &valid,
                  const CoverSolver &solver) {
    Work rest = work;
    rest.jobs.clear();
    std::vector<std::size_t> places;
    for (std::size_t j = 0; j < jobs.size(); ++j) {
        if (!jobs[j].renewals.empty()) continue;
        rest.jobs.push_back(work.jobs[j]);
        places.push_back(j);
    }
    if (places.empty()) return {};
    Plan out = plan_tests(rest, valid, solver);
    for (auto &coupon : out.coupons)
        for (auto &j : coupon.jobs) j = places[j];
    for (auto &j : out.held_jobs) j = places[j];
    for (auto &one : out.uncovered) one.job = places[one.job];
    for (auto &one : out.missed) one.job = places[one.job];
    for (auto &one : out.uncertain) one.job = places[one.job];
    return out;
}

/// Of a class that the criteria do not have nothing would be known, and nobody would notice. Throws
/// DataError.
void check_classes(const Work &work, const CriteriaSet &criteria) {
    std::string unknown;
    for (const Job &job : work.jobs)
        if (!job.class_id.empty() && !criteria.class_index(job.class_id))
            unknown += (unknown.empty() ? "" : "\n") + job.id + ": there is no class '" +
                       shown(job.class_id) + "' in " + criteria.name + "; expected " +
                       listed(criteria.class_names(), "or") +
                       did_you_mean(job.class_id, criteria.class_names());
    if (!unknown.empty()) throw DataError(unknown);
}

/// Coupons that are examined by what the rules accept no test weld by qualify nobody.
void note_acceptance(const RangeRules &rules, const CriteriaSet &criteria, std::vector<std::string> &notes) {
    std::vector<std::string> classes;
    for (const auto &name : criteria.class_names())
        if (rules.accepts(criteria.name, name)) classes.push_back(name);
    if (classes.size() == criteria.classes.size()) return;
    notes.push_back("by " + rules.name + " a test weld is accepted by " + accepted_by_words(rules) +
                    ", and these coupons are planned by " + criteria.name +
                    (classes.empty()
                         ? ": what they make would not qualify; plan with the criteria that it takes"
                         : ": there only class " + listed(classes, "and") + " qualifies"));
}

/// What the work tells and no rule looks at is no part of the answer.
void note_not_compared(const Work &work, std::vector<std::string> &notes) {
    std::set<Trait> looked_at;
    const auto look = [&](const Variable &variable) {
        looked_at.merge(work_traits_of(*work.rules, variable));
    };
    for (const auto &variable : work.rules->variables) look(variable);
    for (const auto &one : work.rules->unread) look(one.variable);
    std::vector<std::string> told;
    for (std::size_t i = 0; i < trait_count; ++i) {
        const bool said = std::any_of(work.jobs.begin(), work.jobs.end(), [&](const Job &job) {
            return is_size(static_cast<Trait>(i)) ? job.sizes[i].has_value() : !job.words[i].empty();
        });
        if (said && !looked_at.contains(static_cast<Trait>(i)))
            told.emplace_back(info(static_cast<Trait>(i)).name);
    }
    if (!told.empty())
        notes.push_back("no rule of " + work.rules->name + " that was read looks at " + listed(told) +
                        ", so what the work tells of " + (told.size() == 1 ? "it" : "them") +
                        " was not compared");
}

constexpr const char *work_example =
    "\na work file looks like this:\n"
    "  rules: asme-ix\n"
    "  units: in\n"
    "  work:\n"
    "    - {id: line 4, joint: groove, form: plate, process: GTAW, metal group: P1,\n"
    "       filler group: F6, backing: without, weld thickness: 0.1 to 0.2,\n"
    "       position: [F, V], progression: up}";

/// Whether a part that every work file has is missing or is no list: its writer has not seen one.
bool is_shapeless(const std::vector<Issue> &issues) {
    return std::any_of(issues.begin(), issues.end(), [](const Issue &issue) {
        return issue.text.find("is missing") != std::string::npos ||
               issue.text.find("expected a list") != std::string::npos ||
               issue.text.find("expected a map") != std::string::npos;
    });
}

} // namespace

Work read_work(Catalogue &catalogue, const Source &source, const std::string &rules) {
    const std::string text = source.read(catalogue.outside());
    const auto open = [&](const std::string &name) {
        return catalogue.rules(rules.empty() ? beside(source, name) : name);
    };
    LoadedWork loaded = load_work(text, rules, open);
    if (!loaded.work) {
        const DataError mistakes = mistakes_in("work", source.name, text, loaded.issues);
        throw is_shapeless(loaded.issues) ? DataError(std::string(mistakes.what()) + work_example) : mistakes;
    }
    loaded.work->criteria = beside(source, loaded.work->criteria);
    return std::move(*loaded.work);
}

Truth PlanResult::covers_all() const {
    if (!uncovered.empty()) return Truth::no;
    const bool known = tests.empty() || work.rules->not_known().empty();
    return known && uncertain.empty() ? Truth::yes : Truth::unknown;
}

Truth PlanResult::allows_all() const {
    Truth out = Truth::yes;
    for (const auto &one : jobs) out = both(out, one.allowed);
    return out;
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
    if (result.criteria) {
        check_classes(result.work, *result.criteria);
        note_acceptance(*result.work.rules, *result.criteria, out.notes);
    }

    note_not_compared(result.work, out.notes);

    std::vector<int> numbers;
    std::vector<std::vector<VariableRange>> ranges;
    for (const HeldTest &one : held) {
        if (one.rules->name != result.work.rules->name) continue;
        result.held.push_back(one);
        tell_changed_rules(*result.work.rules, result.held.back());
        if (one.validity.state != Validity::State::valid) continue;
        numbers.push_back(one.number);
        ranges.push_back(one.range);
    }
    result.jobs = allowed_jobs(result.work, result.held);
    const Plan plan = plan_of_rest(result.work, result.jobs, ranges, catalogue.outside().solver);
    result.candidates = plan.candidates;
    result.minimal = plan.minimal;
    result.at_least = plan.at_least;
    result.held_jobs = result.ids(plan.held_jobs);
    for (const auto &coupon : plan.coupons)
        result.tests.push_back(examinations_for(result.work, coupon, result.criteria.get()));
    for (const auto &one : plan.uncertain) {
        const Job &job = result.work.jobs[one.job];
        result.uncertain.push_back({job.id, *job.sizes[index_of(one.unread->variable.of)], one.unread});
    }
    for (const auto &one : plan.missed)
        result.missed.push_back({result.work.jobs[one.job].id, one.work, numbers[one.held],
                                 shortfalls(one.fails, ranges[one.held])});
    for (const auto &one : plan.uncovered) {
        UncoveredWork uncovered{result.work.jobs[one.job].id, one.work, one.nearest, {}};
        if (one.nearest)
            uncovered.because = shortfalls(one.fails, range_of(*result.work.rules, *one.nearest));
        result.uncovered.push_back(std::move(uncovered));
    }
    out.notes.insert(out.notes.end(), plan.notes.begin(), plan.notes.end());
    return out;
}

} // namespace beadbook
