// Lists that are asked for, and many coupons told in one.
#include "catch.hpp"
#include "cli/deeds.hpp"
#include "cli/json.hpp"
#include "criteria/load.hpp"
#include "records/csv.hpp"
#include "temporary.hpp"

#include <algorithm>
#include <map>

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// T-1 of L1 is accepted, T-2 of L2 rejected, T-3 of L1 open, T-4 of L1 names no criteria; T-5 of L1, of the
/// spring, is rejected.
void cohort(const Program &run) {
    const auto put = [&](const std::string &mark, const std::string &welder, const std::string &of) {
        run.ok({"register",   mark,   "--criteria",  "mil-hdbk-1890-table-3",
                "--class",    "2",    "--joint",     "groove",
                "--form",     "tube", "--seam",      "girth",
                "--diameter", "2in",  "--thickness", "0.150in",
                "--magnetic", "yes",  "--material",  "steel",
                "--process",  "GTAW", "--welder",    welder,
                "--cohort",   of,     "--welded",    "2026-11-02"});
        for (const char *exam : {"VT", "MT"})
            run.ok({"exam", mark, exam, "--examiner", "A. Field", "--level", "II", "--found", "none"});
        run.ok({"exam", mark, "RT", "--examiner", "A. Field", "--level", "II"});
    };
    put("T-1", "L1", "autumn");
    run.ok({"log", "T-1", "gas pore 0.02 at 2in", "--finish"});
    put("T-2", "L2", "autumn");
    run.ok({"log", "T-2", "gas pore 0.2 at 4in", "crack 0.1 at 9:00", "--finish"});
    put("T-3", "L1", "autumn");
    run.ok({"register", "T-4", "--welder", "L1", "--cohort", "autumn"});
    put("T-5", "L1", "spring");
    run.ok({"log", "T-5", "crack 0.1 at 9:00", "--finish"});
}

/// A table by the names of its columns.
std::vector<std::map<std::string, std::string>> table(const std::string &csv) {
    const auto rows = read_csv(csv);
    std::vector<std::map<std::string, std::string>> out;
    for (std::size_t r = 1; r < rows.size(); ++r) {
        REQUIRE(rows[r].size() == rows[0].size());
        auto &row = out.emplace_back();
        for (std::size_t c = 0; c < rows[r].size(); ++c) row[rows[0][c]] = rows[r][c];
    }
    return out;
}

} // namespace

TEST_CASE("each list takes the same words for which coupons, and says when there are none") {
    const Program run;
    cohort(run);
    CHECK(json(run, {"coupons", "--cohort", "autumn"}).size() == 4);
    const auto rejected = json(run, {"coupons", "--verdict", "reject", "--welder", "L2"});
    REQUIRE(rejected.size() == 1);
    CHECK(rejected[0]["id"] == "T-2");
    CHECK(rejected[0]["fields"]["cohort"] == "autumn");
    CHECK(json(run, {"coupons", "--verdict", "cannot say"})[0]["id"] == "T-3");
    CHECK(json(run, {"coupons", "--for-class", "2", "--process", "TIG", "--from", "2026-11-02", "--to",
                     "2026-11-02", "--method", "mt", "--graded", "none"})
              .size() == 4);
    CHECK(json(run, {"coupons", "--unfinished"}).size() == 2);
    CHECK(run.ok({"coupons", "--cohort", "winter"}) == "no coupon on record is as asked for\n");
    CHECK(json(run, {"coupons", "--cohort", "winter"}).empty());

    // One without criteria stops none of the others.
    const Run judged = run({"judge", "--all", "--cohort", "autumn"});
    CHECK(judged.code == 1);
    CHECK_THAT(judged.out, says("T-4") && says("not judged: coupon T-4 names no criteria"));
    CHECK(judged.out.find("T-5") == std::string::npos);
    // A word that is on no coupon is a slip; of no coupon nothing is proved.
    const Run slip = run({"judge", "--all", "--cohort", "winter", "-q"});
    CHECK(slip.code == 3);
    CHECK_THAT(slip.err, says("nothing was judged: no coupon on record is of cohort 'winter'"));
    const Run none = run({"judge", "--all", "--cohort", "spring", "--verdict", "accept"});
    CHECK(none.code == 5);
    CHECK_THAT(none.out, says("no coupon on record is as asked for"));
    CHECK(run({"judge", "--all", "--welder", "L2", "--unfinished", "-q"}).code == 5);
    CHECK(run({"judge", "--all", "--verdict", "accept"}).code == 0);
    CHECK(table(run.ok({"export", "csv", "coupons", "--cohort", "spring"})).size() == 1);
    CHECK(nlohmann::json::parse(run.ok({"export", "json", "--welder", "L2"}))["coupons"].size() == 1);
    CHECK(table(run.ok({"export", "csv", "indications", "--welder", "L2"})).size() == 2);

    for (const auto &[words, expected] : std::vector<std::pair<std::vector<std::string>, std::string>>{
             {{"coupons", "--verdict", "good"}, "expected accept, reject or cannot say"},
             {{"coupons", "--graded", "pased"}, "did you mean 'passed'?"},
             {{"coupons", "--method", "UX"}, "is no exam"},
             {{"judge", "T-1", "--cohort", "autumn"}, "it goes with --all"},
             {{"grade", "T-1", "passed", "--unfinished"}, "it goes with --all"},
             {{"grade", "passed"}, "give one COUPON, several, or --all"},
             {{"grade", "T-1", "passed", "--all"}, "give one COUPON, several, or --all"},
             {{"summary", "--against", "autumn"}, "give the first with --cohort or --welder"},
             {{"summary", "--cohort", "autumn", "--against", "autumn"}, "against itself"},
             {{"export", "csv", "verdict"}, "expected coupons, exams or indications"},
             {{"import", "csv", "verdicts"}, "cannot be imported"}}) {
        const Run r = run(words);
        INFO(r.err);
        CHECK(r.code == 2);
        CHECK_THAT(r.err, says(expected));
    }
    CHECK(run({"coupons", "--from", "2026-13-01"}).code == 3);
}

TEST_CASE(
    "a long list is printed as it comes, and reads as one; the newest of it are asked for by their number") {
    const Program run;
    std::string csv = "coupon,welder\n";
    for (int n = 1; n <= 450; ++n)
        csv += "T-" + std::to_string(n) + (n < 300 ? ",L1\n" : ",somebody with a long name\n");
    write_file(run.file("many.csv"), csv);
    run.ok({"import", "csv", "coupons", "--file", run.file("many.csv")});
    const std::string list = run.ok({"coupons"});
    CHECK(std::count(list.begin(), list.end(), '\n') == 451);
    CHECK(list.find("coupon  welder") == 0);
    CHECK(list.find("coupon  welder", 1) == std::string::npos);
    CHECK_THAT(list, says("\nT-450   somebody with a long name"));
    const std::string newest = run.ok({"coupons", "--newest", "2"});
    CHECK(newest.find("T-448") == std::string::npos);
    CHECK(newest.find("T-449") < newest.find("T-450"));
    CHECK_THAT(newest, says("older ones are left out"));
    CHECK(json(run, {"coupons", "--newest", "3", "--welder", "L1"}).at(0)["id"] == "T-297");
    CHECK(run({"coupons", "--newest", "0"}).code == 2);
    CHECK(run.ok({"refresh"}) == "what lists say of 450 coupons is worked out again\n");
}

TEST_CASE("verdicts, findings and grades are tables with numbers apart from their unit") {
    const Program run;
    cohort(run);
    run.ok({"grade", "T-2", "failed", "--remark", "weld it again, \"slowly\""});
    const auto verdicts = table(run.ok({"export", "csv", "verdicts", "--cohort", "autumn"}));
    REQUIRE(verdicts.size() == 3 * 3 + 1); // a class each, and one that cannot be judged
    CHECK(verdicts[1].at("coupon") == "T-1");
    CHECK(verdicts[1].at("class") == "2");
    CHECK(verdicts[1].at("sought") == "yes");
    CHECK(verdicts[0].at("sought") == "no");
    CHECK(verdicts[1].at("verdict") == "accept");
    CHECK(verdicts[1].at("nearest rule") == "pore-size");
    CHECK(verdicts[1].at("nearest measured") == "0.02");
    CHECK(verdicts[1].at("nearest limit") == "0.075"); // the lesser of T/2 and 0.080 in, T = 0.150 in
    CHECK(verdicts[1].at("nearest unit") == "in");
    CHECK(verdicts[1].at("nearest ratio") == "0.266667");
    CHECK(verdicts[9].at("verdict").empty());
    CHECK_THAT(verdicts[9].at("not judged"), says("names no criteria"));

    bool crack = false, pore = false;
    for (const auto &row : table(run.ok({"export", "csv", "findings", "--welder", "L2"}))) {
        CHECK(row.at("coupon") == "T-2");
        if (row.at("sought") != "yes") continue;
        if (row.at("rule") == "crack") {
            crack = true;
            CHECK(row.at("imperfection") == "crack");
            CHECK(row.at("kind") == "not allowed");
            CHECK(row.at("measured").empty());
            CHECK(row.at("from") == "4.7124"); // three quarters of pi times 2 in
        }
        if (row.at("rule") == "pore-size") {
            pore = true;
            CHECK(row.at("effect") == "reject");
            CHECK(row.at("measured") == "0.2");
            CHECK(row.at("limit") == "0.075");
            CHECK(row.at("unit") == "in");
            CHECK(row.at("from") == "4");
            CHECK(row.at("to") == "4.2");
            CHECK(row.at("place unit") == "in");
            CHECK(row.at("standing") == "read");
        }
    }
    CHECK(crack);
    CHECK(pore);

    const auto grades = table(run.ok({"export", "csv", "grades"}));
    REQUIRE(grades.size() == 1);
    CHECK(grades[0].at("coupon") == "T-2");
    CHECK(grades[0].at("grade") == "failed");
    CHECK(grades[0].at("verdict then") == "reject");
    CHECK(grades[0].at("to be graded again") == "no");
    CHECK(grades[0].at("remark") == "weld it again, \"slowly\"");
    run.ok({"withdraw", "T-2", "coupon", "--why", "the wrong plate"});
    CHECK(table(run.ok({"export", "csv", "grades"})).at(0).at("withdrawn") == "the wrong plate");
    const auto withdrawn = table(run.ok({"export", "csv", "verdicts", "--welder", "L2"}));
    REQUIRE(withdrawn.size() == 1);
    CHECK(withdrawn[0].at("verdict").empty());
    CHECK(withdrawn[0].at("not judged") == "withdrawn: the wrong plate");
    CHECK(table(run.ok({"export", "csv", "findings", "--welder", "L2"})).empty());
    CHECK_THAT(run.ok({"export", "csv", "verdicts", "--output", run.file("v.csv")}), says("v.csv"));
}

TEST_CASE("many are graded at once, all or none, each with what decided") {
    const Program run;
    cohort(run);
    const Run refused = run({"grade", "passed", "--all", "--cohort", "autumn"});
    CHECK(refused.code == 3);
    CHECK_THAT(refused.err, says("3 of 4 cannot be graded passed") && says("T-2: the verdict for class 2") &&
                                says("T-3: the verdict for class 2") &&
                                says("T-4: coupon T-4 names no criteria"));
    CHECK(json(run, {"coupons", "--graded", "none"}).size() == 5);
    const Run dry = run({"grade", "passed", "--all", "--verdict", "accept", "-n"});
    CHECK_THAT(dry.out, says("1 coupon graded passed"));
    CHECK(json(run, {"coupons", "--graded", "none"}).size() == 5);
    CHECK_THAT(run.ok({"grade", "passed", "--all", "--verdict", "accept"}),
               says("T-1 by L1, class 2: accept; nearest to a limit: #1 gas pore"));
    const auto failed = json(run, {"grade", "failed", "--all", "--verdict", "reject", "--remark", "again"});
    CHECK(failed["graded"].size() == 2);
    CHECK_THAT(failed["graded"][0]["decided by"].get<std::string>(), says("crack"));
    CHECK(json(run, {"grade", "failed", "--all", "--verdict", "reject"})["left out"].size() == 2);
    CHECK(json(run, {"coupons", "--graded", "failed"}).size() == 2);
    CHECK_THAT(run.ok({"grade", "passed", "--all", "--cohort", "winter"}), says("nothing was graded"));
}

TEST_CASE("several are judged and graded by their marks, in the order in which they are named") {
    const Program run;
    cohort(run);
    const auto judged = json(run, {"judge", "T-2,T-1"}, 1);
    REQUIRE(judged.size() == 2);
    CHECK(judged[0]["coupon"] == "T-2");
    CHECK(judged[1]["coupon"] == "T-1");
    CHECK(run({"judge", "T-1..T-3"}).code == 1);
    CHECK(run({"judge", "T-1,T-3"}).code == 5);
    const Run one_unknown = run({"grade", "T-2,T-99", "failed"});
    CHECK(one_unknown.code == 3);
    CHECK_THAT(one_unknown.err,
               says("1 of 2 cannot be taken, nothing was stored:\nT-99: there is no coupon"));
    CHECK(run({"grade", "T-1..T-3", "passed"}).code == 3);
    CHECK(json(run, {"coupons", "--graded", "none"}).size() == 5);
    CHECK_THAT(run.ok({"grade", "T-2,T-5", "failed", "--remark", "again"}), says("2 coupons graded failed"));
    CHECK(json(run, {"coupons", "--graded", "failed"}).size() == 2);
    const Run both = run({"judge", "T-1..T-3", "--cohort", "autumn"});
    CHECK(both.code == 2);
    CHECK_THAT(both.err, says("it goes with --all"));
}

TEST_CASE("a reject that is withdrawn raises nobody's first-pass yield") {
    const Program run;
    cohort(run);
    CHECK(json(run, {"summary", "--welder", "L2"})["groups"][0]["first pass"]["of"] == 1);
    run.ok({"register", "T-6", "--like", "T-2", "--welder", "L2", "--cohort", "autumn", "--welded",
            "2026-11-03"});
    for (const char *exam : {"VT", "MT", "RT"})
        run.ok({"exam", "T-6", exam, "--examiner", "A. Field", "--level", "II", "--found", "none"});
    run.ok({"withdraw", "T-2", "coupon", "--why", "the wrong piece"});
    const auto group = json(run, {"summary", "--welder", "L2"})["groups"][0];
    CHECK(group["accepted"] == 1);
    CHECK(group["first pass"]["of"] == 1); // the withdrawn one
    CHECK(group["first pass"]["count"] == 0);
    CHECK(group["withdrawn rejects"] == 1);
    CHECK_THAT(run.ok({"summary"}), says("1 coupon that its finds reject was withdrawn"));
}

TEST_CASE("a size is counted as held where a rule judged it, and is no find where none did") {
    const Program run;
    for (const auto &[mark, criteria] : {std::pair{"S-1", "iso-5817"}, std::pair{"S-2", "ufgs-15216n"}}) {
        run.ok({"register",     mark,   "--criteria",    criteria, "--joint",       "fillet",
                "--joint-form", "tee",  "--form",        "plate",  "--thickness",   "6 mm",
                "--throat",     "4 mm", "--fillet-size", "6 mm",   "--weld-length", "200 mm",
                "--process",    "GMAW", "--material",    "steel"});
        run.ok({"exam", mark, "VT", "--examiner", "A. Field", "--level", "II"});
        run.ok({"log", mark, "fillet size 6.5 mm from 0 mm to 200 mm", "--finish"});
    }
    const auto group = json(run, {"summary"})["groups"][0];
    CHECK(group["finds"] == 0);
    CHECK(group["measured and held"] == 1);
    CHECK(group["measured and not judged"] == 1);
}

TEST_CASE("who is enrolled and has welded nothing yet is a learner all the same") {
    const Program run;
    cohort(run);
    run.ok({"enrol", "L9", "--name", "N. Comer"});
    run.ok({"print", "learner", "L1", "L9", "--html", run.file("class.html")});
    CHECK_THAT(read_file(run.file("class.html")), says("no coupon on record names this welder yet"));
    const Run slip = run({"learner", "L1", "--cohort", "Autumn"});
    CHECK_THAT(slip.err, says("no coupon on record is of cohort 'Autumn'"));
}

TEST_CASE("a summary tells one group, or two side by side") {
    const Program run;
    cohort(run);
    const auto one = json(run, {"summary"})["groups"];
    REQUIRE(one.size() == 1);
    CHECK(one[0]["of"] == "all coupons");
    CHECK(one[0]["coupons"] == 5);
    CHECK(one[0]["accepted"] == 1);
    CHECK(one[0]["rejected"] == 2);
    CHECK(one[0]["cannot say"] == 1);
    CHECK(one[0]["not judged"] == 1);
    CHECK(one[0]["first pass"]["of"] == 2); // T-5 is the same weld again
    CHECK(one[0]["by rule"][0]["name"] == "mil-hdbk-1890-table-3: crack");
    CHECK(one[0]["by rule"][0]["coupons"]["count"] == 2);
    CHECK(one[0]["by place"][0]["name"] == "3:00 to 6:00");
    const auto two = json(run, {"summary", "--cohort", "autumn", "--against", "spring"})["groups"];
    REQUIRE(two.size() == 2);
    CHECK(two[1]["of"] == "cohort spring");
    CHECK(two[1]["first pass"]["of"] == 0);
    CHECK_FALSE(two[1]["first pass"].contains("share"));
    CHECK(json(run, {"summary", "--welder", "L1", "--cohort", "autumn", "--against",
                     "L2"})["groups"][1]["of"] == "cohort autumn, welder L2");
    const std::string text = run.ok({"summary", "--cohort", "autumn", "--against", "spring"});
    CHECK_THAT(text, says("A: cohort autumn") && says("B: cohort spring") && says("By imperfection") &&
                         says("1 of 2, 50 % (1 % to 99 %)") && says("An aid, not the code"));
    CHECK(run.ok({"summary", "--cohort", "autumn", "--against", "spring"}) == text);
    CHECK_THAT(run.ok({"summary", "--cohort", "winter"}), says("none to count"));
}

TEST_CASE("everything for one learner stands in one text, JSON or page") {
    const Program run;
    cohort(run);
    run.ok({"enrol", "L1", "--name", "J. <Reef>"});
    run.ok({"remark", "T-5", "ask for a shorter arc"});
    run.ok({"grade", "T-5", "failed", "--remark", "on Friday again"});
    run.ok({"remark", "T-4", "it waits for its criteria"});
    const std::string text = run.ok({"learner", "L1"});
    CHECK_THAT(text, says("Welder L1, J. <Reef>") && says("Coupon T-1") && says("Coupon T-4") &&
                         says("Not judged: coupon T-4 names no criteria") &&
                         says("it waits for its criteria") && says("Why it is not accepted") &&
                         says("Change:") && says("on Friday again") && says("ask for a shorter arc") &&
                         says("Accepted, of those decided: 1 of 2"));
    CHECK(text.find("Coupon T-2") == std::string::npos);
    CHECK(text.find("An aid, not the code") == text.rfind("An aid, not the code"));
    const auto told = json(run, {"learner", "L1"});
    CHECK(told["name"] == "J. <Reef>");
    CHECK(told["coupons"].size() == 4);
    CHECK(told["coupons"][2]["why"]["grade"]["decision"] == "failed");
    CHECK(told["coupons"][3].contains(
        "not judged")); // without a day of the weld, by the one of the registration
    CHECK(json(run, {"learner", "L1", "--cohort", "spring"})["coupons"].size() == 1);
    CHECK(json(run, {"learner", "L1", "--html", run.file("L1.html")})["written"] == run.file("L1.html"));
    const std::string page = read_file(run.file("L1.html"));
    CHECK_THAT(page, says("<!DOCTYPE html>") && says("J. &lt;Reef&gt;") && says("Coupon T-5"));
    const Run nobody = run({"learner", "l1"});
    CHECK(nobody.code == 3);
    CHECK_THAT(nobody.err, says("did you mean 'L1'?"));
    CHECK_THAT(run.ok({"learner", "L1", "--cohort", "winter"}),
               says("no coupon of this welder is as asked for"));
}

TEST_CASE("what is wrong with an own set stands in a cell in short, and once below") {
    const Program run;
    const std::string own = run.file("own.yaml"), text = shipped_criteria("mil-hdbk-1890-table-3")->text;
    write_file(own, text);
    run.ok({"register", "T-1..T-3", "--criteria", own, "--class", "2"});
    write_file(own, text + "\n  broken: [\n");
    const std::string all = run.ok({"coupons"});
    for (const char *mark : {"T-1", "T-2", "T-3"})
        CHECK_THAT(all, says("\n" + std::string(mark) +
                             "                          2                    the "
                             "criteria set file has mistakes\n"));
    CHECK_THAT(all, says("\nT-1 to T-3: the criteria set file has mistakes:\n"));
    CHECK(all.find("this is not YAML") == all.rfind("this is not YAML"));
}

TEST_CASE("two groups that began in different weeks stand side by side by the week of each") {
    const Program run;
    const auto welded = [&](const std::string &mark, const std::string &cohort, const std::string &day) {
        run.ok(
            {"register", mark, "--cohort", cohort, "--welder", "L1", "--joint", "groove", "--welded", day});
    };
    welded("A-1", "autumn", "2026-09-07"); // week 37
    welded("A-2", "autumn", "2026-09-21"); // 39
    welded("S-1", "spring", "2026-03-02"); // 10
    welded("S-2", "spring", "2026-03-17"); // 12
    welded("S-3", "spring", "2026-03-18");
    const std::vector<std::string> against{"summary", "--cohort", "autumn", "--against", "spring"};
    std::string text = run.ok(against);
    CHECK_THAT(text,
               says("By week of each group") && !says("By week\n") &&
                   says("Week 1 is the first in which the group welded: 2026-W37 in A, 2026-W10 in B."));
    const auto row = [&](const std::string &week) {
        const auto at = text.find("\n" + week);
        std::string out = text.substr(at + 1, text.find('\n', at + 1) - at - 1);
        out.erase(std::unique(out.begin(), out.end(), [](char a, char b) { return a == ' ' && b == ' '; }),
                  out.end());
        return out;
    };
    CHECK_THAT(row("week 1"), says("week 1 1 none to count none to count 1 none to count"));
    CHECK_THAT(row("week 3"), says("week 3 1 none to count none to count 2 none to count"));
    CHECK(text.find("\nweek 2") == std::string::npos);
    // Where weeks of the calendar are in both, these stand as well.
    welded("S-4", "spring", "2026-09-09");
    text = run.ok(against);
    CHECK_THAT(text, says("By week\n") && says("By week of each group"));
    CHECK_THAT(row("2026-W37"), says("2026-W37 1 none to count none to count 1 none to count"));
    CHECK_THAT(row("week 28"), says("week 28"));
    CHECK_THAT(run.ok({"summary"}), says("By week\n") && !says("of each group"));
}

TEST_CASE("a long list is written part by part, and is the same list") {
    const Program run;
    CHECK(run.ok({"register", "T-1..T-200"}).find("T-200") != std::string::npos);
    CHECK(json(run, {"coupons"}).size() == 200);
    run.ok({"register", "T-201..T-401"});
    const std::string whole = run.ok({"coupons", "--json"});
    const auto all = nlohmann::json::parse(whole);
    REQUIRE(all.size() == 401);
    for (std::size_t n = 0; n < all.size(); ++n) CHECK(all[n]["id"] == "T-" + std::to_string(n + 1));
    CHECK(whole == all.dump(2) + "\n");
    CHECK(run.ok({"coupons", "--json", "--newest", "401"}) == whole);
    const std::string text = run.ok({"coupons"});
    CHECK(std::count(text.begin(), text.end(), '\n') == 402);
}

TEST_CASE("a dry run of judging all stores nothing, whatever it prints") {
    const Program run;
    cohort(run);
    const std::string before = run.ok({"verify"}), told = run({"judge", "--all", "--dry-run"}).out;
    CHECK_THAT(told, says("T-1") && says("T-5"));
    CHECK(run.ok({"verify"}) == before);
    CHECK(run({"judge", "--all"}).out == told);
    CHECK(run.ok({"verify"}) != before);
}
