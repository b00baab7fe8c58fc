// What a test would qualify, which coupons the shop's work needs, what a welder may do.
#include "operations/planning.hpp"
#include "cli/deeds.hpp"
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
    return code_of(done.value.covers_all());
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

Deeds planning_deeds() { return {{"plan", run_plan}, {"range", run_range}, {"may", run_may}}; }

} // namespace beadbook
