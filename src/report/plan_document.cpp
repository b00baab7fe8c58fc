#include "report/plan_document.hpp"

#include "measure/text.hpp"
#include "operations/shortcoming_words.hpp"
#include "report/exam_words.hpp"
#include "report/range_words.hpp"
#include "report/rules_document.hpp"
#include "report/standing_document.hpp"

#include <algorithm>
#include <map>

namespace beadbook {
namespace {

std::vector<Bullet> because(const std::vector<Shortfall> &shortfalls, const Weld &work, Unit unit) {
    std::vector<Bullet> out;
    for (const auto &one : shortfalls)
        out.push_back({shortfall_words(one.cover, one.allows, work, unit), "", {}});
    return out;
}

std::string numbers_words(const std::vector<int> &numbers) {
    std::vector<std::string> out;
    for (const int n : numbers) out.push_back("#" + std::to_string(n));
    return listed(out);
}

/// "no: pipe, until #1 is renewed (1 coupon)"
Words answer_words(const JobAllowed &job, const std::vector<HeldTest> &held) {
    const bool cannot = job.allowed == Truth::unknown;
    Words out = job.allowed == Truth::yes ? Words("yes", Tone::accept)
                : cannot                  ? Words("cannot say", Tone::cannot_say)
                                          : Words("no", Tone::reject);
    std::string rest = ": " + job.job;
    if (!job.by.empty()) rest += ", by " + numbers_words(job.by);
    std::vector<int> overridden, by_late, by_name, carried, cautions;
    for (const auto &one : held) {
        if (std::find(job.by.begin(), job.by.end(), one.number) == job.by.end()) continue;
        if (!one.aside.empty()) overridden.push_back(one.number);
        if (one.aside.empty() && one.validity.by_late) by_late.push_back(one.number);
        if (one.validity.by_name) by_name.push_back(one.number);
        if (one.carried) carried.push_back(one.number);
        if (one.validity.with_caution) cautions.push_back(one.number);
    }
    if (!overridden.empty()) rest += " (" + numbers_words(overridden) + " by override)";
    if (!by_late.empty()) rest += " (" + numbers_words(by_late) + " by what was entered late)";
    if (!by_name.empty()) rest += " (" + numbers_words(by_name) + " of whom it was asked who the welder is)";
    if (!carried.empty()) rest += " (" + numbers_words(carried) + " carried in with a paper)";
    if (!cautions.empty()) rest += " (" + numbers_words(cautions) + " with a caution)";
    if (!job.lacks.empty()) rest += ", without " + lacks_words(job.lacks);
    if (!job.doubted.empty()) rest += ", until the doubt about " + numbers_words(job.doubted) + " is settled";
    std::vector<std::string> renewals;
    for (const auto &one : job.renewals)
        renewals.push_back("#" + std::to_string(one.number) + " (" + std::to_string(one.coupons) +
                           (one.coupons == 1 ? " coupon)" : " coupons)"));
    if (!renewals.empty())
        rest += ", until " + listed(renewals) + (renewals.size() == 1 ? " is renewed" : " are renewed");
    for (const auto &what : job.unread) rest += "; not known: " + what;
    return out + rest;
}

void add_missed(Document &out, const PlanResult &plan) {
    if (plan.missed.empty()) return;
    out.heading("What is held does not cover:", 2);
    for (const auto &one : plan.missed)
        out.item(one.job + ", for one " + print(one.work, plan.work.unit), "",
                 {{"nearest is #" + std::to_string(one.number), "",
                   because(one.because, one.work, plan.work.unit)}});
}

void add_test(Document &out, const PlanResult &plan, std::size_t number) {
    const PlannedTest &test = plan.tests[number];
    out.heading(std::to_string(number + 1) + ". " + print(test.coupon.test, plan.work.unit), 2);
    out.item("for " + listed(plan.ids(test.coupon.jobs)));
    if (!test.after_failure.empty()) out.item(Words(test.after_failure, Tone::cannot_say));
    if (!test.class_id.empty())
        out.item("judged to class " + test.class_id + " of " + plan.criteria->name +
                 (test.asked_class.empty() ? ""
                                           : ": the work is of class " + test.asked_class +
                                                 ", by which these rules accept no test weld"));
    for (const auto &exam : test.exams) out.item(exams_words(exam.one_of) + ": " + why_words(exam));
    if (test.exams.empty())
        out.item("examinations: none are known; name criteria and classes in the work file");
    for (const auto &one : test.never_accepted)
        out.item(Words(never_accepted_words(one, *plan.criteria), Tone::cannot_say));
    for (const auto caution : test.cautions) out.item(caution_words(caution, plan.criteria.get()));
}

/// "frame, of diameter 1 in to 2 in: not known: whether ..."
void add_uncertain(Document &out, const PlanResult &plan) {
    if (plan.uncertain.empty()) return;
    out.heading("Cannot say whether these coupons cover:", 2);
    for (const auto &one : plan.uncertain) {
        const Trait of = one.unread->variable.of;
        out.item(Words(one.job + ", of " + std::string(info(of).name) + " " +
                           print(of, one.sizes.from, plan.work.unit) + " to " +
                           print(of, one.sizes.to, plan.work.unit) + ": not known: " + one.unread->what(),
                       Tone::cannot_say));
    }
}

void add_uncovered(Document &out, const PlanResult &plan) {
    if (plan.uncovered.empty()) return;
    out.heading("Not covered by any coupon:", 2);
    for (const auto &one : plan.uncovered) {
        std::vector<Bullet> nearest;
        if (one.nearest)
            nearest.push_back({"nearest coupon: " + print(*one.nearest, plan.work.unit), "",
                               because(one.because, one.work, plan.work.unit)});
        out.item(one.job + ": " + print(one.work, plan.work.unit), "", std::move(nearest));
    }
}

/// ", beside 1 that renews #1": coupons of renewals, which the plan does not count.
std::string renewals_beside(const std::vector<JobAllowed> &jobs) {
    std::map<int, int> coupons;
    for (const auto &job : jobs)
        for (const auto &one : job.renewals) coupons[one.number] = std::max(coupons[one.number], one.coupons);
    std::vector<std::string> out;
    for (const auto &[number, count] : coupons)
        out.push_back(std::to_string(count) + (count == 1 ? " that renews #" : " that renew #") +
                      std::to_string(number));
    return out.empty() ? "" : ", beside " + listed(out);
}

void add_plan(Document &out, const PlanResult &plan) {
    add_missed(out, plan);
    if (!plan.held_jobs.empty()) out.gap().line("Covered already: " + listed(plan.held_jobs));
    const std::size_t n = plan.tests.size();
    std::size_t to_weld = 0;
    for (const auto &test : plan.tests) to_weld += static_cast<std::size_t>(test.must_pass);
    const std::string own = plan.work.rules->own_file_mark();
    const std::string more = (to_weld == n ? "" : ", of " + counted(n, "kind")) + renewals_beside(plan.jobs);
    out.heading(counted(to_weld, "coupon") + " to weld" + more + (more.empty() ? "" : ",") + " by " +
                    plan.work.rules->title + " (" + plan.work.rules->edition +
                    (own.empty() ? "" : "; " + own) + ")",
                2);
    if (n > 0)
        out.line((plan.minimal ? std::string("Smallest, proven")
                               : "Best found, at least " + std::to_string(plan.at_least)) +
                 ", of " + std::to_string(plan.candidates) + " kinds of coupon that were weighed.");
    if (const std::string unknown = not_known_words(*plan.work.rules); n > 0 && !unknown.empty())
        out.line(Words("Whether they would qualify cannot be said: " + unknown, Tone::cannot_say));
    for (std::size_t i = 0; i < n; ++i) add_test(out, plan, i);
    add_uncertain(out, plan);
    add_uncovered(out, plan);
    out.caution();
}

/// What it holds by, where that is another text than the one that the work goes by.
std::string granted_by_words(const RangeRules &rules) {
    const std::string own = rules.own_file_mark();
    return " by " + rules.name + " edition " + rules.edition + (own.empty() ? "" : " (" + own + ")");
}

} // namespace

Document document_of(const PlanResult &plan) {
    Document out;
    out.title = "Coupons to weld";
    add_plan(out, plan);
    return out;
}

Document document_of(const HeldWork &work) {
    Document out;
    out.title = "Work that " + work.welder + " may do";
    out.heading(out.title + " on " + print(work.on), 2);
    for (const auto &job : work.plan.jobs) out.line(answer_words(job, work.plan.held));
    const std::string own = work.plan.work.rules->own_file_mark();
    out.heading("Welder " + work.welder + " holds by " + work.plan.work.rules->name +
                    (own.empty() ? "" : " (" + own + ")") + " on " + print(work.on) + ":",
                2);
    for (const auto &one : work.plan.held) {
        auto under = rounded_items(one.range, one.rules->ends, one.unit);
        for (const auto &aside : one.aside) under.push_back({words_of(aside, one.rules.get()), "", {}});
        if (std::string unknown = not_known_words(*one.rules); !unknown.empty())
            under.push_back({std::move(unknown), "", {}});
        const std::string by =
            one.rules->hash == work.plan.work.rules->hash ? "" : granted_by_words(*one.rules);
        out.item("#" + std::to_string(one.number) + " " + print(one.test, one.unit) + by + ": " +
                     std::string(name_of(one.validity.state)) + resting_words(one.aside, one.validity) +
                     ", " + one.validity.reason,
                 "", std::move(under));
    }
    if (work.plan.held.empty()) out.item("nothing");
    if (!work.failed.empty()) out.heading("Failed, and no retest is done with it:", 2);
    add_failed(out, work.failed);
    add_plan(out, work.plan);
    return out;
}

} // namespace beadbook
