// What a welder needs: what a test would qualify, which coupons the shop's work needs, what a welder may do.
#include "operations/planning.hpp"
#include "cli/command.hpp"
#include "cli/shop.hpp"
#include "cli/tell.hpp"
#include "cli/words.hpp"
#include "operations/described.hpp"
#include "render/json_planning.hpp"
#include "report/plan_document.hpp"
#include "report/range_document.hpp"

namespace beadbook {
namespace {

PlanRequest plan_request(const Args &args, std::size_t file, Session &session) {
    return {input_named(args.at(file), session), args.text("rules"), args.text("criteria")};
}

ExitCode run_plan(const Args &args, Session &session) {
    Shop shop(args, session);
    const auto done = plan_work(shop.catalogue(), plan_request(args, 0, session));
    tell(args, session, done);
    return done.value.covers_all() ? ExitCode::done : ExitCode::rejected;
}

ExitCode run_may(const Args &args, Session &session) {
    Shop shop(args, session);
    const auto done =
        held_work(shop.office(), {args.at(0), day_given(args, "on"), plan_request(args, 1, session)});
    tell(args, session, done);
    switch (done.value.plan.allows_all()) {
    case Truth::no: return ExitCode::not_allowed;
    case Truth::unknown: return ExitCode::cannot_say;
    case Truth::yes: break;
    }
    return ExitCode::done;
}

ExitCode run_range(const Args &args, Session &session) {
    Shop shop(args, session);
    const auto fields = coupon_fields_given(args);
    const CouponRecord coupon = args.positional().empty()
                                    ? described_coupon(fields)
                                    : described_coupon(shop.office(), args.at(0), fields);
    tell(args, session, range_of_coupon(shop.catalogue(), args.text("rules"), coupon));
    return ExitCode::done;
}

std::vector<Option> plan_options() {
    return {{"rules", "RULES", "rules for welders, instead of those that the file names"},
            {"criteria", "SET",
             "criteria that the coupons are examined by, instead of those that the file names"},
            json_option()};
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
        plan_options(),
        run_plan};
}

Command may_command() {
    return {
        "may",
        "WELDER WORKFILE",
        "which of the shop's work a welder may do, and which coupons would add the rest",
        "One line a job: yes, no or cannot say. Ends with 6 if one is not allowed, else with 5 if it cannot\n"
        "be said of one. Where the renewal of a lapsed qualification does, no test is asked for.",
        "beadbook may L1 work.yaml",
        2,
        2,
        options(date_option("on", "on this day (default today)"), plan_options()),
        run_may};
}

Command range_command() {
    return {
        "range",
        "[COUPON]",
        "what a test would qualify, with the rule behind each part",
        "Of a coupon on record, or of one that the options describe. A coupon of several processes is one "
        "test of each.",
        "beadbook range --rules aws-d17.1 --joint groove --form tube --process GTAW --position 6G "
        "--thickness 0.045in --metal-group IIa",
        0,
        1,
        options(Option{"rules", "RULES", "rules for welders: a shipped name or a file"},
                coupon_field_options(), json_option()),
        run_range};
}

} // namespace beadbook
