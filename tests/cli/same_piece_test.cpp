// One piece that an import brings in under another mark.
#include "catch.hpp"
#include "cli/run.hpp"
#include "command_file.hpp"
#include "measure/text.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

void test_piece(const Program &run, const std::string &mark) {
    const std::vector<std::string> lines{
        "register " + mark +
            " --welder L1 --criteria asme-ix-tests --class \"test coupon\" --joint groove --form plate "
            "--thickness 0.25in --weld-length 8in --material steel --process GTAW --welded 2026-11-02",
        "exam " + mark + " VT --examiner \"A. Field\" --level II --found none --date 2026-11-03",
        "exam " + mark + " RT --examiner \"A. Field\" --level II --date 2026-11-03",
        "log " + mark + " \"pore 0.02 at 1\" --finish"};
    for (const auto &line : lines) {
        const Run done = run(shell_words(line));
        INFO(line << "\n" << done.out << done.err);
        CHECK(done.code == 0);
    }
}

std::string under_another_mark(std::string text, const std::string &from, const std::string &to) {
    for (std::size_t at = 0; (at = text.find(from, at)) != std::string::npos; at += to.size())
        text.replace(at, from.size(), to);
    return text;
}

} // namespace

TEST_CASE("a piece that is on record is not taken under another mark unasked") {
    const Program run;
    run.ok(shell_words("enrol L1 --name \"D. Spar\""));
    test_piece(run, "Q-2");
    const std::string json = run.ok({"export", "json"});
    const Run same = run({"import", "json"}, json);
    CHECK(same.code == 3);
    CHECK_THAT(same.err, says("Q-2 is registered already") && !says("is free"));
    const std::string renamed = under_another_mark(json, "Q-2", "Q-3");
    const Run asked = run({"import", "json"}, renamed);
    CHECK(asked.code == 3);
    CHECK_THAT(asked.err,
               says("coupon Q-3: all that is said of it, of its exams and of what they found is said "
                    "of Q-2 of the same welder too; is it another piece?"));
    // Of one that differs nobody asks.
    run.ok({"import", "json"},
           under_another_mark(under_another_mark(json, "Q-2", "Q-4"), "2026-11-02", "2026-10-30"));
    run.ok({"import", "json", "--sure"}, renamed);
    CHECK_THAT(run.ok({"show", "Q-3"}), says("piece-like-another"));
    // What somebody was sure of stays so where it comes to.
    const Program there;
    there.ok(shell_words("enrol L1 --name \"D. Spar\""));
    there.ok({"import", "json"}, run.ok({"export", "json"}));
}

TEST_CASE("two marks of one file that say the same of a welder's piece are asked about, in tables too") {
    const Program run, there, sheets;
    for (const auto *one : {&run, &there, &sheets}) one->ok(shell_words("enrol L1 --name \"D. Spar\""));
    test_piece(run, "Q-2");
    test_piece(run, "Q-3");
    const Run asked = there({"import", "json"}, run.ok({"export", "json"}));
    CHECK(asked.code == 3);
    CHECK_THAT(asked.err, says("coupon Q-3: all that is said of it"));
    sheets.ok({"import", "csv", "coupons"}, run.ok({"export", "csv", "coupons"}));
    sheets.ok({"import", "csv", "exams"}, run.ok({"export", "csv", "exams"})); // what they found is to come
    const Run finds = sheets({"import", "csv", "indications"}, run.ok({"export", "csv", "indications"}));
    CHECK(finds.code == 3);
    CHECK_THAT(finds.err, says("coupon Q-3: all that is said of it"));
}
