// The welder's and the keeper's pages.
#include "catch.hpp"
#include "operations/qualifying.hpp"
#include "operations/welders.hpp"
#include "school.hpp"

#include <filesystem>

using namespace beadbook;
using namespace beadbook::test;

TEST_CASE("a welder sees the own coupons, each with its page, and none of another") {
    School school;
    const Answer mine = school.get("/welder/L1");
    REQUIRE(mine.status == 200);
    CHECK(says(mine, "/welder/L1/coupon/T-1"));
    CHECK(says(mine, "/welder/L1/coupon/T-3"));
    CHECK_FALSE(says(mine, "T-2"));
    CHECK(says(mine, "no welder is enrolled under it"));
    const Answer why = school.get("/welder/L1/coupon/T-1");
    REQUIRE(why.status == 200);
    CHECK(says(why, "Class 2"));
    CHECK(says(why, ">accept<"));
    CHECK(says(school.get("/welder/L2/coupon/T-2"), "Why it is not accepted"));
    CHECK(says(school.get("/welder/L1/coupon/T-3"), "What is missing before anybody can say"));
    CHECK(school.get("/welder/L1/coupon/T-2").status == 404);
    CHECK(school.get("/welder/L9").status == 404);
    CHECK(header(school.get("/welders?mark=L1"), "Location") == "/welder/L1");
    const Answer nobody = school.get("/welders?mark=L9");
    CHECK(nobody.status == 404);
    CHECK(says(nobody, "aria-invalid=\"true\""));
}

TEST_CASE("a welder who is enrolled has what is held, until when, and its record") {
    School school;
    school.desk([](Writing &w) { enrol(w, {"L1", "A. Field", {}, {}, ""}); });
    CHECK(says(school.get("/welders"), "<td><a href=\"/welder/L1\">L1</a></td>"));
    CHECK(says(school.get("/welders"), "My coupons, L1")); // who is at the bench bears that name
    CHECK(says(school.get("/welder/L1"), "holds no qualification"));
    CHECK(school.get("/welder/L1/record/1").status == 404);
    CHECK(school.get("/welder/L1/record/x").status == 404);
}

TEST_CASE("the keeper puts people and equipment on record, and changes them with a reason") {
    Browser browser;
    browser.ok("/keeper/people", {{"name", "M. Tide"},
                                  {"role-technician", "yes"},
                                  {"certificate", "MT II until 2026-12-20 number 4711\r\nVT II"},
                                  {"vision", "2026-03-01 J1"}});
    CHECK(says(browser.get("/keeper/people"), "<a href=\"/keeper/people/M.%20Tide\">M. Tide</a>"));
    const Answer tide = browser.get("/keeper/people/M.%20Tide");
    CHECK(tide.status == 404); // a path comes decoded from the server
    const Answer sheet = browser.get("/keeper/people/M. Tide");
    REQUIRE(sheet.status == 200);
    CHECK(says(sheet, "certificate MT II until 2026-12-20 number 4711"));
    CHECK(says(browser.get("/keeper/due"), "M. Tide"));
    CHECK(says(browser.get("/keeper"), "M. Tide"));
    const Answer unsaid =
        browser.post("/keeper/people", {{"name", "M. Tide"}, {"note", "left"}, {"why", ""}});
    CHECK(unsaid.status >= 400);
    CHECK(says(unsaid, "id=\"e-why\""));
    CHECK(says(unsaid, "value=\"left\""));
    const Answer wrong = browser.post("/keeper/people", {{"name", "B. Reef"}, {"certificate", "MT nine"}});
    CHECK(wrong.status == 422);
    CHECK(says(wrong, "role=\"alert\""));
    browser.ok("/keeper/equipment",
               {{"serial", "LM-7"}, {"kind", "light meter"}, {"calibration", "2026-05-01 until 2026-12-01"}});
    CHECK(says(browser.get("/keeper/equipment"), "<a href=\"/keeper/equipment/LM-7\">LM-7</a>"));
    CHECK(says(browser.get("/keeper/equipment/LM-7"), "in calibration"));
    CHECK(says(browser.get("/keeper/due?days=10"), "LM-7"));
    CHECK(says(browser.get("/keeper/due?days=2"),
               "nothing is due through 2026-11-27; the next day is 2026-12-01"));
    CHECK(browser.get("/keeper/due?days=x").status >= 400);
    browser.ok("/keeper/equipment", {{"serial", "LM-7"}, {"withdraw", "it fell"}, {"why", "it fell"}});
    CHECK(says(browser.get("/keeper/equipment/LM-7"), "withdrawn since 2026-11-25: it fell"));
}

TEST_CASE("the keeper fills blanks and confirms limits by forms that tell what is wrong in their place") {
    Browser browser;
    CHECK(says(browser.get("/keeper/copy"), "<a href=\"/keeper/copy/aws-d17.1\">aws-d17.1</a>"));
    const Answer sheet = browser.get("/keeper/copy/aws-d17.1");
    REQUIRE(sheet.status == 200);
    CHECK(says(sheet, "height of the reinforcement on the face"));
    std::map<std::string, std::string> sent{
        {"blank", "reinforcement"},    {"class", "C"}, {"value", "0.060 in"},
        {"edition", "AWS D17.1:2017"}, {"page", "21"}, {"second", ""}};
    const Answer alone = browser.post("/keeper/copy/aws-d17.1/fill", {sent.begin(), sent.end()});
    CHECK(alone.status >= 400);
    CHECK(says(alone, "id=\"e-second\""));
    CHECK(says(alone, "value=\"0.060 in\""));
    sent["second"] = "B. Reed";
    browser.ok("/keeper/copy/aws-d17.1/fill", {sent.begin(), sent.end()});
    CHECK(says(browser.get("/keeper/copy/aws-d17.1"), "B. Reed (page 21 of AWS D17.1:2017)"));
    CHECK(says(browser.get("/keeper/criteria/aws-d17.1"), "filled by"));
    browser.ok("/keeper/copy/aws-d17.1/confirm",
               {{"rule", "undercut-depth"}, {"class", "B"}, {"edition", "AWS D17.1:2017"}, {"page", "12"}});
    CHECK(says(browser.get("/keeper/copy/aws-d17.1"), "undercut-depth, class B: confirmed by"));
    browser.ok("/keeper/copy/aws-d17.1/withdraw",
               {{"rule", "reinforcement"}, {"class", "C"}, {"why", "the wrong row"}});
    CHECK_FALSE(says(browser.get("/keeper/copy/aws-d17.1"), "page 21"));
    CHECK(browser.get("/keeper/copy/no-such-set").status >= 400);
    CHECK(browser.get("/keeper/copy/x.yaml").status >= 400);
}

TEST_CASE("what is shipped is listed, and each shown with its rules; no other file is") {
    Browser browser;
    for (const auto &[shelf, name] :
         {std::pair<std::string, std::string>("criteria", "mil-hdbk-1890-table-3"),
          {"practices", "asme-v-pt"},
          {"rules", "asme-ix"}}) {
        INFO(shelf);
        const std::string path = "/keeper/" + shelf;
        const Answer all = browser.get(path);
        CHECK(all.status == 200);
        CHECK(says(all, "<a href=\"" + path + "/" + name + "\">" + name + "</a>"));
        const Answer one = browser.get(path + "/" + name);
        CHECK(one.status == 200);
        CHECK(says(one, "<li>"));
        CHECK(browser.get(path + "/none-of-these").status == 404);
        test::write_file(browser.book() + ".yaml", "name: secret-of-mine\n");
        Request file = browser.request("GET", path);
        file.path += "/x.yaml";
        CHECK(browser.send(file).status == 404);
        CHECK_FALSE(says(browser.send(file), "secret-of-mine"));
    }
    CHECK(browser.get("/keeper/types").status == 200);
    CHECK_FALSE(std::filesystem::exists(browser.book()));
}

TEST_CASE("the keeper proves the record, notes its head, and takes a copy that holds") {
    School school;
    std::string head;
    {
        Book record(school.book(), Ledger::Mode::read);
        head = record.ledger().head();
    }
    CHECK(says(school.get("/keeper"), head));
    CHECK(says(school.get("/keeper/verify"), "It holds."));
    CHECK(says(school.get("/keeper/verify?replay=yes&head=" + head), "It holds."));
    const Answer other = school.get("/keeper/verify?head=" + std::string(64, '1'));
    CHECK(says(other, "It does not hold."));
    CHECK(says(other, "entries were cut off or added since"));
    const Answer copy = school.get("/keeper/backup");
    REQUIRE(copy.status == 200);
    CHECK(header(copy, "Content-Disposition") == "attachment; filename=\"beadbook-2026-11-25.db\"");
    const std::string path = school.book() + ".copy";
    test::write_file(path, copy.body);
    Book record(path, Ledger::Mode::read);
    CHECK(record.ledger().head() == head);
    CHECK(record.ledger().verify().faults.empty());
}

TEST_CASE("names are text on the pages of instructor, welder and keeper, whatever they hold") {
    School school;
    const std::string hostile = "<img src=x onerror=alert(1)>\"'";
    school.coupon("T-5", hostile, {{"note", hostile}, {"cohort", hostile}});
    school.desk([&](Writing &w) {
        remark_on(w, "T-5", hostile);
        enrol(w, {"L1", hostile, {}, hostile, ""});
    });
    school.ok("/keeper/people", {{"name", hostile}, {"note", hostile}});
    school.ok("/keeper/equipment", {{"serial", hostile}, {"kind", "yoke"}, {"note", hostile}});
    const std::vector<std::string> paths{"/class",
                                         "/class?cohort=" + url_word(hostile),
                                         "/class/coupon/T-5",
                                         "/class/summary",
                                         "/class/learners",
                                         "/class/learner/" + hostile,
                                         "/welders",
                                         "/welders?mark=%3Cimg%20src%3Dx%3E",
                                         "/welder/L1",
                                         "/welder/" + hostile,
                                         "/keeper/people",
                                         "/keeper/equipment",
                                         "/keeper/people/" + hostile,
                                         "/keeper/equipment/" + hostile,
                                         "/class?verdict=" + url_word(hostile)};
    for (const auto &path : paths) {
        INFO(path);
        const Answer page = school.get(path);
        CHECK_FALSE(says(page, "<img"));
        CHECK(says(page, "&lt;img"));
    }
}
