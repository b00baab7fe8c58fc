#include "cli/welder_shared.hpp"

#include "measure/text.hpp"
#include "operations/outside_solver.hpp"
#include "report/plan_report.hpp"

namespace po = boost::program_options;

namespace beadbook {
namespace {

/// Ranges of the welder's qualifications that hold on the day and are by the work's rules.
std::vector<std::vector<VariableRange>> held_ranges(const std::vector<HeldQualification> &all,
                                                    const Work &work) {
    std::vector<std::vector<VariableRange>> out;
    for (const auto &held : all)
        if (held.rules->name == work.rules->name && held.validity.state == Validity::State::valid)
            out.push_back(held.range);
    return out;
}

void tell_missed(const Plan &plan, const Work &work, const std::vector<std::vector<VariableRange>> &held,
                 Session &session) {
    if (!plan.missed.empty()) session.out << "What is held does not cover:\n";
    for (const auto &one : plan.missed) {
        session.out << "  " << work.jobs[one.job].id << ", for one " << print(one.work, work.unit) << "\n";
        for (const auto &fail : one.fails)
            session.out << "    " << explain_fail(fail, held[one.held], one.work, work.unit) << "\n";
    }
    if (!plan.missed.empty()) session.out << "\n";
}

ExitCode plan_and_tell(const Args &args, Session &session, const Work &work,
                       const std::vector<std::vector<VariableRange>> &held) {
    const Plan plan = plan_tests(work, held, outside_solver(session.environment("BEADBOOK_SOLVER")));
    const std::string criteria = args.text("criteria", work.criteria);
    const auto set = criteria.empty() ? nullptr : open_criteria(criteria);
    const auto tests = examinations_for(work, plan, set.get());
    if (args.flag("json")) {
        session.out << plan_json(work, plan, tests).dump(2) << "\n";
    } else {
        tell_missed(plan, work, held, session);
        session.out << explain_plan(work, plan, tests, session.paint()) << "\n" << caution;
    }
    return plan.uncovered.empty() ? ExitCode::done : ExitCode::rejected;
}

ExitCode run_plan(const Args &args, Session &session) {
    return plan_and_tell(args, session, open_work(args.at(0), args.text("rules"), session), {});
}

ExitCode run_may(const Args &args, Session &session) {
    const Work work = open_work(args.at(1), args.text("rules"), session);
    Book book = open_book(args, session, Ledger::Mode::read);
    const auto held = held_by(book, args.at(0), day_of(args, session, "on"));
    if (!args.flag("json")) {
        session.out << "Welder " << args.at(0) << " holds by " << work.rules->name << ":\n";
        bool any = false;
        for (const auto &one : held) {
            if (one.rules->name != work.rules->name) continue;
            any = true;
            session.out << "  #" << one.record.number << " " << print(one.weld, one.record.test.unit())
                        << ": " << name_of(one.validity.state) << ", " << one.validity.reason << "\n";
        }
        if (!any) session.out << "  nothing\n";
        session.out << "\n";
    }
    return plan_and_tell(args, session, work, held_ranges(held, work));
}

void add_plan_options(po::options_description &o) {
    o.add_options()("rules", po::value<std::string>()->value_name("RULES"),
                    "rules for welders, instead of those that the file names")(
        "criteria", po::value<std::string>()->value_name("SET"),
        "criteria that the coupons are examined by, instead of those that the file names");
    add_json(o);
}

} // namespace

Command plan_command() {
    return {
        "plan",
        "WORKFILE",
        "the fewest coupons that qualify a welder for all of the shop's work",
        "The file lists the welds (criteria/welder/README.md tells how). Each coupon comes with the\n"
        "examinations that it needs and why; what no coupon covers is named with the reason. Ends with 1 if\n"
        "something stays uncovered.",
        "beadbook plan work.yaml",
        1,
        1,
        add_plan_options,
        run_plan};
}

Command may_command() {
    return {"may",
            "WELDER WORKFILE",
            "which of the shop's work a welder may do, and which coupons would add the rest",
            "Ends with 1 if something would stay uncovered even then.",
            "beadbook may L1 work.yaml",
            2,
            2,
            [](po::options_description &o) {
                o.add_options()("on", po::value<std::string>()->value_name("DAY"),
                                "on this day (default today)");
                add_plan_options(o);
            },
            run_may};
}

} // namespace beadbook
