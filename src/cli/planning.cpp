// What a test would qualify, which coupons the shop's work needs, what a welder may do.
#include "operations/planning.hpp"
#include "cli/command.hpp"
#include "operations/described.hpp"
#include "render/json_planning.hpp"
#include "report/plan_document.hpp"
#include "report/range_document.hpp"

namespace beadbook {
namespace {

PlanRequest plan_request(const Call &call, std::size_t file) {
    return {call.source(call.at(file)), call.text("rules"), call.text("criteria")};
}

ExitCode run_plan(Call &call) {
    const auto done = plan_work(call.catalogue(), plan_request(call, 0));
    call.tell(done);
    return done.value.covers_all() ? ExitCode::done : ExitCode::rejected;
}

ExitCode run_may(Call &call) {
    const auto done = held_work(call.office(), {call.at(0), call.day("on"), plan_request(call, 1)});
    call.tell(done);
    switch (done.value.plan.allows_all()) {
    case Truth::no: return ExitCode::not_allowed;
    case Truth::unknown: return ExitCode::cannot_say;
    case Truth::yes: break;
    }
    return ExitCode::done;
}

ExitCode run_range(Call &call) {
    return call.tell(range_of_coupon(call.catalogue(), call.text("rules"), coupon_meant(call)));
}

} // namespace

CouponRecord coupon_meant(Call &call) {
    const auto fields = call.coupon_fields();
    return call.words().empty() ? described_coupon(fields)
                                : described_coupon(call.office(), call.at(0), fields);
}

std::vector<Command> planning_commands() {
    const std::vector<Option> instead{
        {"rules", "RULES", "rules for welders, instead of those that the file names"},
        {"criteria", "SET",
         "criteria that the coupons are examined by, instead of those that the file names"}};
    return {
        looks(For::instructor, run_plan, R"(plan WORKFILE
the fewest coupons that qualify a welder for all of the shop's work
plan work.yaml
The file lists the welds (criteria/welder/README.md tells how). Each coupon comes with the
examinations that it needs and why; what no coupon covers is named with the reason. Ends with 1 if
something stays uncovered.)",
              instead),
        looks(For::instructor, run_range, R"(range [COUPON]
what a test would qualify, with the rule behind each part
range --rules aws-d17.1 --joint groove --form tube --process GTAW --position 6G --thickness 0.045in --metal-group IIa
Of a coupon on record, or of one that the options describe. A coupon of several processes is one
test of each.)",
              options(Option{"rules", "RULES", "rules for welders: a shipped name or a file"},
                      coupon_field_options())),
        looks(For::welder, run_may, R"(may WELDER WORKFILE
which of the shop's work a welder may do, and which coupons would add the rest
may L1 work.yaml
One line a job: yes, no or cannot say. Ends with 6 if one is not allowed, else with 5 if it cannot
be said of one. Where the renewal of a lapsed qualification does, no test is asked for.)",
              options(on_option(), instead)),
    };
}

} // namespace beadbook
