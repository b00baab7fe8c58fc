#include "report/plan_report.hpp"

#include "judge/item.hpp"
#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// The coupon as the judge sees it, as far as the plan says.
Coupon facts_of(const Weld &weld, const std::string &magnetic) {
    Coupon out;
    const auto put = [&](Fact fact, const std::string &word) {
        out.facts[static_cast<std::size_t>(fact)] = word_index(info(fact), word);
    };
    put(Fact::joint, weld.word(Trait::joint));
    put(Fact::form, weld.word(Trait::form));
    put(Fact::magnetic, magnetic);
    for (std::size_t i = word_traits; i < trait_count; ++i)
        if (const auto &size = weld.size(static_cast<Trait>(i)))
            out.values.set(*info(static_cast<Trait>(i)).size, *size);
    return out;
}

std::string conditions_text(const std::vector<Condition> &conditions) {
    std::vector<std::string> words;
    for (const auto &c : conditions) words.push_back(c.text);
    return listed(words);
}

std::vector<Exam> magnetic_only() {
    auto out = all_exams();
    std::erase_if(out, [](Exam exam) { return info(exam).needs_magnetic.empty(); });
    return out;
}

/// Whoever does what `asked` asks does what `wanted` wants.
bool fulfils(const PlannedExam &asked, const std::vector<std::string> &wanted) {
    return std::all_of(asked.one_of.begin(), asked.one_of.end(), [&](const std::string &one) {
        return std::find(wanted.begin(), wanted.end(), one) != wanted.end();
    });
}

} // namespace

std::vector<PlannedExam> required_exams(const CriteriaSet &set, std::size_t class_index,
                                        const Coupon &coupon) {
    std::vector<PlannedExam> out;
    const bool magnetic =
        coupon.facts[static_cast<std::size_t>(Fact::magnetic)] != word_index(info(Fact::magnetic), "no");
    for (const auto &required : set.required) {
        Missing lacks;
        const Truth asked = holds_for(required.when, coupon, {}, {}, lacks);
        if (!required.classes[class_index] || asked == Truth::no) continue;
        PlannedExam exam;
        for (const Exam one : required.one_of)
            if (magnetic || info(one).needs_magnetic.empty() || required.one_of.size() == 1)
                exam.one_of.emplace_back(name_of(one));
        exam.why = authority(required.clause, required.standing);
        if (const auto when = conditions_text(required.when); !when.empty()) exam.why += "; because " + when;
        if (asked == Truth::unknown) exam.why += " (unknown here: " + listed(names_of(lacks)) + ")";
        out.push_back(std::move(exam));
    }
    return out;
}

std::vector<PlannedTest> examinations_for(const Work &work, const Plan &plan, const CriteriaSet *set) {
    std::vector<PlannedTest> out;
    for (const auto &coupon : plan.coupons) {
        PlannedTest test{coupon, "", {}, {}};
        std::optional<std::size_t> strictest;
        std::string magnetic;
        bool mixed = false;
        for (const std::size_t j : coupon.jobs) {
            const Job &job = work.jobs[j];
            if (set)
                if (const auto index = set->class_index(job.class_id);
                    index && (!strictest || *index < *strictest))
                    strictest = index;
            if (job.magnetic.empty()) continue;
            mixed = mixed || (!magnetic.empty() && magnetic != job.magnetic);
            magnetic = job.magnetic;
        }
        if (mixed) {
            magnetic.clear();
            for (const Exam exam : magnetic_only())
                test.notes.push_back("its work is partly magnetic: " + std::string(name_of(exam)) +
                                     " where the coupon is magnetic, else " +
                                     listed(stand_ins_for(exam), "or"));
        }
        if (strictest) {
            test.class_id = set->classes[*strictest].id;
            test.exams = required_exams(*set, *strictest, facts_of(coupon.test, magnetic));
            if (!set->ordered)
                test.notes.push_back("the classes of " + set->name +
                                     " are not ordered; check each job's own");
        }
        for (const auto &exam : work.rules->exams) {
            if (passes(exam.test, coupon.test) == Truth::no) continue;
            std::vector<std::string> one_of = exam.one_of;
            if (magnetic == "no" && one_of.size() > 1)
                for (const Exam needs : magnetic_only()) std::erase(one_of, name_of(needs));
            const bool there = std::any_of(test.exams.begin(), test.exams.end(),
                                           [&](const PlannedExam &e) { return fulfils(e, one_of); });
            if (!there) test.exams.push_back({one_of, authority(exam.clause, exam.standing)});
        }
        if (magnetic == "no")
            for (const Exam exam : magnetic_only())
                test.notes.push_back("not magnetic: " + std::string(name_of(exam)) + " finds nothing, " +
                                     listed(stand_ins_for(exam), "or") + " takes its place");
        if (coupon.test.word(Trait::joint) == "fillet")
            for (const auto &method : method_table)
                if (!method.not_on_fillets.empty())
                    test.notes.push_back("no " + std::string(method.name) + " of a fillet: " +
                                         std::string(method.not_on_fillets) + " (common practice)");
        out.push_back(std::move(test));
    }
    return out;
}

std::string exams_text(std::vector<std::string> one_of) {
    for (auto &name : one_of)
        if (name == "mechanical") name = "mechanical tests (bend, fracture or section)";
    return listed(one_of, "or");
}

std::string explain_plan(const Work &work, const Plan &plan, const std::vector<PlannedTest> &tests,
                         const Paint &paint) {
    const auto ids = [&](const std::vector<std::size_t> &jobs) {
        std::vector<std::string> names;
        for (const std::size_t j : jobs) names.push_back(work.jobs[j].id);
        return listed(names);
    };
    std::string out;
    if (!plan.held_jobs.empty()) out += "Covered already: " + ids(plan.held_jobs) + "\n";
    out += paint.strong(std::to_string(tests.size()) + (tests.size() == 1 ? " coupon" : " coupons")) +
           " to weld by " + work.rules->title + " (" + work.rules->edition + ")\n";
    if (!tests.empty())
        out += std::string(plan.minimal ? "No smaller number does it" : "Perhaps a smaller number would do") +
               ", of " + std::to_string(plan.candidates) + " kinds of coupon that were weighed.\n";
    int number = 0;
    for (const auto &test : tests) {
        out += "\n" + std::to_string(++number) + ". " + print(test.coupon.test, work.unit) + "\n";
        out += "   for " + ids(test.coupon.jobs) + "\n";
        if (!test.class_id.empty())
            out += "   judged to class " + test.class_id + " of " + work.criteria + "\n";
        for (const auto &exam : test.exams) out += "   " + exams_text(exam.one_of) + ": " + exam.why + "\n";
        if (test.exams.empty())
            out += "   examinations: none are known; name criteria and classes in the work file\n";
        for (const auto &note : test.notes) out += "   " + note + "\n";
    }
    if (!plan.uncovered.empty()) out += "\n" + paint.strong("Not covered by any coupon") + ":\n";
    for (const auto &one : plan.uncovered) {
        out += "  " + work.jobs[one.job].id + ": " + print(one.work, work.unit) + "\n";
        if (!one.nearest) continue;
        const auto range = range_of(*work.rules, *one.nearest);
        out += "    nearest coupon: " + print(*one.nearest, work.unit) + "\n";
        for (const auto &fail : one.fails)
            out += "    " + explain_fail(fail, range, one.work, work.unit) + "\n";
    }
    return out;
}

nlohmann::json plan_json(const Work &work, const Plan &plan, const std::vector<PlannedTest> &tests) {
    const auto ids = [&](const std::vector<std::size_t> &jobs) {
        nlohmann::json names = nlohmann::json::array();
        for (const std::size_t j : jobs) names.push_back(work.jobs[j].id);
        return names;
    };
    nlohmann::json coupons = nlohmann::json::array(), uncovered = nlohmann::json::array();
    for (const auto &test : tests) {
        nlohmann::json exams = nlohmann::json::array();
        for (const auto &exam : test.exams) exams.push_back({{"one of", exam.one_of}, {"why", exam.why}});
        nlohmann::json one{{"test", weld_json(test.coupon.test, work.unit)},
                           {"for", ids(test.coupon.jobs)},
                           {"exams", exams},
                           {"notes", test.notes}};
        if (!test.class_id.empty()) one["class"] = test.class_id;
        coupons.push_back(std::move(one));
    }
    for (const auto &one : plan.uncovered) {
        nlohmann::json why = nlohmann::json::array();
        if (one.nearest) {
            const auto range = range_of(*work.rules, *one.nearest);
            for (const auto &fail : one.fails) why.push_back(explain_fail(fail, range, one.work, work.unit));
        }
        nlohmann::json json{
            {"id", work.jobs[one.job].id}, {"weld", weld_json(one.work, work.unit)}, {"why", why}};
        if (one.nearest) json["nearest coupon"] = weld_json(*one.nearest, work.unit);
        uncovered.push_back(std::move(json));
    }
    return {{"rules", work.rules->name},      {"edition", work.rules->edition},
            {"rules hash", work.rules->hash}, {"coupons", coupons},
            {"uncovered", uncovered},         {"covered already", ids(plan.held_jobs)},
            {"minimal", plan.minimal},        {"candidates", plan.candidates}};
}

} // namespace beadbook
