// Verdicts: judge, why, grade.
#include "operations/judging.hpp"
#include "cli/command.hpp"
#include "cli/shop.hpp"
#include "cli/tell.hpp"
#include "cli/words.hpp"
#include "measure/text.hpp"
#include "render/json_judging.hpp"

namespace beadbook {
namespace {

std::vector<Option> criteria_options() {
    return {{"criteria", "SET", "another set than the coupon's: a name or a file"},
            {"class", "CLASS", "the class that decides the exit code (default the coupon's)"}};
}

Option proof_option() { return {"proof", "", "every part of what an accept rests on"}; }

JudgeRequest judge_request(const Args &args) { return {args.text("criteria"), args.text("class")}; }

ExitCode judge_one(const Args &args, Session &session, Shop &shop) {
    const JudgeRequest request = judge_request(args);
    Done<Judged> done;
    if (args.flag("no-record"))
        done.value = judge_coupon(shop.office(), shop.office().coupon(args.at(0)), request);
    else
        done = shop.write([&](Writing &w) { return judge_and_keep(w, args.at(0), request); });
    if (args.flag("proof"))
        tell(args, session, InFull<Judged>{done.value}, done.notes);
    else
        tell(args, session, done);
    return code_of(done.value.verdict());
}

/// Prints each as it comes; the worst verdict is the exit code's.
class AllJudged {
public:
    AllJudged(const Args &args, Session &session) : args_(args), session_(session) {}

    void take(const JudgedOrNot &one) {
        worst_ = std::max(worst_, one.judged ? one.judged->verdict() : Verdict::cannot_say);
        if (args_.flag("json")) {
            std::string json = json_text(one);
            json.pop_back(); // its line end; the comma comes first
            session_.out << (any_ ? ",\n" : "[\n") << json;
        } else {
            session_.out << text(document_of(one), session_.paint());
        }
        any_ = true;
    }
    ExitCode finish() {
        if (args_.flag("json"))
            session_.out << (any_ ? "\n]\n" : "[]\n");
        else
            session_.out << (any_ ? "\n" : "no coupon is on record\n") << caution;
        return code_of(worst_);
    }

private:
    const Args &args_;
    Session &session_;
    bool any_ = false;
    Verdict worst_ = Verdict::accept;
};

ExitCode judge_every(const Args &args, Session &session, Shop &shop) {
    AllJudged all(args, session);
    const auto take = [&](const JudgedOrNot &one) { all.take(one); };
    if (args.flag("no-record"))
        judge_all(shop.office(), judge_request(args), take);
    else
        shop.write([&](Writing &w) {
            judge_and_keep_all(w, judge_request(args), take);
            return 0;
        });
    return all.finish();
}

ExitCode run_judge(const Args &args, Session &session) {
    if (args.flag("all") && args.flag("proof")) throw UsageError("--proof is of one COUPON, not of --all");
    if (args.flag("all") == !args.positional().empty()) throw UsageError("give one COUPON or --all");
    Shop shop(args, session);
    return args.flag("all") ? judge_every(args, session, shop) : judge_one(args, session, shop);
}

ExitCode run_why(const Args &args, Session &session) {
    Shop shop(args, session);
    const Explained explained = explain(shop.office(), args.at(0), judge_request(args));
    if (args.flag("proof"))
        tell(args, session, InFull<Explained>{explained});
    else
        tell(args, session, explained);
    return code_of(explained.judged.verdict());
}

ExitCode run_grade(const Args &args, Session &session) {
    const std::string &decision = args.at(1);
    if (decision != "passed" && decision != "failed")
        throw UsageError("'" + shown(decision) + "' is no grade; expected passed or failed");
    Shop shop(args, session);
    const GradeRequest request{args.at(0), decision == "passed", args.text("remark"), judge_request(args)};
    tell(args, session, shop.write([&](Writing &w) { return grade_coupon(w, request); }));
    return ExitCode::done;
}

} // namespace

Command judge_command() {
    return {"judge",
            "[COUPON]",
            "judge a coupon against every class; the verdict is kept",
            "Each reason names the indication, what was measured, the limit, its clause and standing, and by "
            "how much.",
            "beadbook judge T-7 --class B",
            0,
            1,
            options(Option{"all", "", "every coupon, one line each"},
                    Option{"no-record", "", "judge only, keep nothing"}, proof_option(), criteria_options(),
                    by_option(), json_option()),
            run_judge};
}

Command why_command() {
    return {"why",
            "COUPON",
            "explain the verdict to the welder: where, why, cause and remedy",
            "",
            "beadbook why T-7",
            1,
            1,
            options(proof_option(), criteria_options(), json_option()),
            run_why};
}

Command grade_command() {
    return {
        "grade",
        "COUPON passed|failed",
        "the instructor's decision on a coupon, with a remark",
        "A grade that differs from the verdict needs a remark and is marked as such.",
        "beadbook grade T-7 failed --remark \"shorter arc at the toes, then weld it again\"",
        2,
        2,
        options(criteria_options(), Option{"remark", "TEXT", "for the welder"}, by_option(), json_option()),
        run_grade};
}

} // namespace beadbook
