// The instructor's pages: the board, grading, what goes wrong, learners.
#include "catch.hpp"
#include "criteria/shipped.hpp"
#include "school.hpp"
#include "temporary.hpp"

#include <filesystem>

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// The piece of a page from one text to the next `</li>`.
std::string cell_from(const Answer &page, const std::string &text) {
    const std::size_t at = page.body.find(text);
    return at == std::string::npos ? "" : page.body.substr(at, page.body.find("</li>", at) - at);
}

bool has(const std::string &all, const std::string &text) { return all.find(text) != std::string::npos; }

} // namespace

TEST_CASE("the board tells verdict and grade of each coupon in words, a line each learner") {
    School school;
    const Answer board = school.get("/class");
    REQUIRE(board.status == 200);
    CHECK(says(board, "3 coupons, 3 to be graded"));
    const std::string first = cell_from(board, "/class/coupon/T-1");
    CHECK(has(first, ">accept<"));
    CHECK(has(first, "to be graded"));
    CHECK(has(cell_from(board, "/class/coupon/T-2"), ">reject<"));
    CHECK(has(cell_from(board, "/class/coupon/T-3"), ">cannot say<"));
    CHECK(board.body.find("/class/learner/L1") < board.body.find("/class/learner/L2"));
    school.ok("/class/coupon/T-1", {{"decision", "passed"}});
    const Answer graded = school.get("/class");
    CHECK(has(cell_from(graded, "/class/coupon/T-1"), "graded passed"));
    CHECK(says(graded, "3 coupons, 2 to be graded"));
    // One more find changes the verdict that the grade was given on.
    school.exam("T-1", Exam::RT, false);
    school.desk([](Writing &w) {
        log_lines(w, {"T-1", 4, "crack 0.3 in at 2 in", "line"});
        finish_exam(w, {"T-1", 4, {}, true});
    });
    CHECK(has(cell_from(school.get("/class"), "/class/coupon/T-1"), "to be graded again"));
}

TEST_CASE("criteria of the shop's own stand on the board without the folders of their file") {
    School school;
    const std::string file = school.book() + ".yaml";
    write_file(file, shipped_file("mil-hdbk-1890-table-3.yaml"));
    school.coupon("T-4", "L1", {{"criteria", file}});
    const Answer board = school.get("/class");
    CHECK(says(board, "groove tube GTAW, book.db.yaml class 2"));
    CHECK_FALSE(says(board, file));
}

TEST_CASE("the board shows what is asked for, and says at the field what it cannot read") {
    School school;
    const Answer rejected = school.get("/class?verdict=reject");
    CHECK(says(rejected, "/class/coupon/T-2?verdict=reject"));
    CHECK_FALSE(says(rejected, "/class/coupon/T-1"));
    CHECK(says(rejected, "<option value=\"reject\" selected>"));
    CHECK(says(school.get("/class?welder=L1&graded=none"), "2 coupons, 2 to be graded"));
    CHECK(says(school.get("/class?cohort=none"), "no coupon on record is as asked for"));
    for (const char *wrong : {"verdict=maybe", "from=2026-02-30", "from=2026-12-01&to=x", "method=XX",
                              "graded=well", "from=2026-11-20&to=2026-11-01"}) {
        INFO(wrong);
        const Answer refused = school.get("/class?" + std::string(wrong));
        CHECK(refused.status == 422);
        CHECK(says(refused, "aria-invalid=\"true\""));
    }
}

TEST_CASE("a coupon to be graded has its map, reasons and proof, and leads on through the selection") {
    School school;
    const Answer second = school.get("/class/coupon/T-2");
    REQUIRE(second.status == 200);
    CHECK(says(second, "class=\"weld-map"));
    CHECK(says(second, "accesskey=\"b\" href=\"/class/coupon/T-1\""));
    CHECK(says(second, "accesskey=\"n\" href=\"/class/coupon/T-3\""));
    CHECK(says(second, "crack"));
    const Answer of_one = school.get("/class/coupon/T-1?welder=L1");
    CHECK(says(of_one, "href=\"/class/coupon/T-3?welder=L1\""));
    CHECK(says(of_one, "back to: none"));
    CHECK(says(of_one, "The whole proof"));
    CHECK_FALSE(says(second, "The whole proof"));
    CHECK(school.get("/class/coupon/T-9").status == 404);
    // Whoever grades goes on to the next of the selection.
    const Answer done =
        school.post("/class/coupon/T-1", {{"selection", "?welder=L1"}, {"decision", "passed"}});
    CHECK(header(done, "Location") == "/class/coupon/T-3?welder=L1");
    REQUIRE(school.grade_of("T-1"));
    CHECK(school.grade_of("T-1")->passed);
    CHECK(school.grade_of("T-1")->stamp.who == "A. Field");
}

TEST_CASE("a grade is about what was looked at: what came since is shown first") {
    School school;
    const auto seen_on = [&](const Answer &page) {
        const std::string begin = "name=\"seen\" value=\"";
        const std::size_t at = page.body.find(begin) + begin.size();
        return page.body.substr(at, page.body.find('"', at) - at);
    };
    const std::string before = seen_on(school.get("/class/coupon/T-1"));
    school.desk([](Writing &w) { remark_on(w, "T-1", "look at the start again"); });
    const Answer stale =
        school.post("/class/coupon/T-1", {{"seen", before}, {"decision", "passed"}, {"remark", "clean"}});
    CHECK(stale.status == 422);
    CHECK(says(stale, "was changed after this page was opened"));
    CHECK(says(stale, "look at the start again"));
    CHECK_FALSE(says(stale, "value=\"clean\"")); // a remark on what stood there before
    CHECK_FALSE(school.grade_of("T-1"));
    // The page that tells so has seen it.
    school.ok("/class/coupon/T-1", {{"seen", seen_on(stale)}, {"decision", "passed"}});
    CHECK(school.grade_of("T-1"));
}

TEST_CASE("pages learn by the record's head that others entered something") {
    School school;
    const std::string head = school.get("/head").body;
    CHECK(head.size() == 64);
    CHECK(says(school.get("/class"), "<meta name=\"bench-head\" content=\"" + head + "\">"));
    CHECK(school.get("/head").body == head);
    school.desk([](Writing &w) { remark_on(w, "T-1", "one more"); });
    CHECK(school.get("/head").body != head);
    Browser empty;
    CHECK(empty.get("/head").status == 200);
    CHECK(empty.get("/head").body.empty());
}

TEST_CASE("a grade against the verdict is refused at the remark, and taken with one") {
    School school;
    const Answer refused = school.post("/class/coupon/T-2", {{"decision", "passed"}});
    CHECK(refused.status == 422);
    CHECK(says(refused, "id=\"e-remark\""));
    CHECK(says(refused, "name=\"remark\" aria-describedby=\"h-remark e-remark\" aria-invalid=\"true\""));
    CHECK_FALSE(school.grade_of("T-2"));
    CHECK(school.post("/class/coupon/T-2", {}).status == 422);
    CHECK(school.post("/class/coupon/T-2", {{"decision", "well"}}).status == 422);
    CHECK_FALSE(school.grade_of("T-2"));
    school.ok("/class/coupon/T-2", {{"decision", "passed"}, {"remark", "seen under the lamp, a scratch"}});
    REQUIRE(school.grade_of("T-2"));
    CHECK(school.grade_of("T-2")->against_verdict);
}

TEST_CASE("what is accepted is graded in one go, each listed before, and no other with it") {
    School school;
    school.coupon("T-4", "L2");
    for (const Exam method : {Exam::VT, Exam::MT, Exam::RT}) school.exam("T-4", method, true);
    const Answer list = school.get("/class/accepted");
    REQUIRE(list.status == 200);
    CHECK(says(list, "name=\"mark\" value=\"T-1\""));
    CHECK(says(list, "name=\"mark\" value=\"T-4\""));
    CHECK_FALSE(says(list, "value=\"T-2\""));
    CHECK_FALSE(says(list, "value=\"T-3\""));
    // What the accepts rest on stands once, as it is the same for both.
    CHECK(says(list, "<p>Each by mil-hdbk-1890-table-3: How sure: "));
    CHECK(says(list, "VT, MT and RT: the examiner's level as typed, nobody on record vouches for it."));
    CHECK(says(list, "Not in this set, so that the accept does not speak of it: "));
    CHECK(list.body.find("How sure: ") == list.body.rfind("How sure: "));
    CHECK(school.post("/class/accepted").status == 422);
    const Answer other = school.post("/class/accepted", {{"mark", "T-1"}, {"mark", "T-2"}});
    CHECK(other.status == 422);
    CHECK(says(other, "T-2: it is not among those asked for"));
    CHECK_FALSE(school.grade_of("T-1")); // all or none
    school.ok("/class/accepted", {{"mark", "T-1"}, {"remark", "clean"}});
    REQUIRE(school.grade_of("T-1"));
    CHECK(school.grade_of("T-1")->remark == "clean");
    CHECK_FALSE(school.grade_of("T-4")); // not ticked
    CHECK_FALSE(says(school.get("/class/accepted"), "value=\"T-1\""));
}

TEST_CASE("what somebody said is meant so is told where it is graded in one go, and not ticked unasked") {
    School school;
    school.desk([&](Writing &w) {
        std::map<std::string, std::string> fields{{"weld-thickness", "40 in"}};
        for (const auto &[name, value] : w.coupon("T-1").record.fields) fields.emplace(name, value.text);
        register_coupon(w, {"T-5", fields, true});
    });
    for (const Exam method : {Exam::VT, Exam::MT, Exam::RT}) school.exam("T-5", method, true);
    const Answer list = school.get("/class/accepted");
    CHECK(says(list, "The coupon is as it was said, sure in spite of "));
    CHECK(says(list, "value=\"T-1\" id=\"m-T-1\" checked"));
    CHECK(says(list, "value=\"T-5\" id=\"m-T-5\"><label"));
}

TEST_CASE("another page cannot grade") {
    School school;
    for (const char *path : {"/class/coupon/T-1", "/class/accepted"}) {
        Request q = school.request("POST", path);
        q.origin = "http://evil.example";
        for (const auto &[name, value] : {std::pair("token", school.token.c_str()),
                                          {"decision", "passed"},
                                          {"mark", "T-1"},
                                          {"remark", "theirs"}})
            q.form.add(name, value);
        CHECK(school.send(q).status == 403);
        q.origin = "";
        CHECK(school.send(q).status == 403);
        q.method = "GET";
        school.send(q);
    }
    CHECK_FALSE(school.grade_of("T-1"));
}

TEST_CASE("what goes wrong is told of one group or two, and rows lead to coupons") {
    School school;
    const Answer one = school.get("/class/summary");
    REQUIRE(one.status == 200);
    CHECK(says(one, "By imperfection"));
    CHECK(says(one, "<div class=\"scroll\" tabindex=\"0\" role=\"group\" aria-label=\"Table\"><table>"));
    CHECK(says(one, "<svg"));
    CHECK(says(one, "<a href=\"/class?verdict=reject\">rejected</a>"));
    CHECK(says(one, "<a href=\"/class?welder=L2\">L2</a>"));
    CHECK(says(one, "<a href=\"/class?from=2026-11-02&amp;to=2026-11-08\">2026-W45</a>"));
    const Answer two = school.get("/class/summary?welder=L1&against=L2");
    REQUIRE(two.status == 200);
    CHECK(says(two, "A: "));
    CHECK(says(two, "B: "));
    CHECK(says(two, "<a href=\"/class?welder=L2&amp;verdict=reject\">B</a>"));
    const Answer lacking = school.get("/class/summary?against=L2");
    CHECK(lacking.status == 422);
    CHECK(says(lacking, "id=\"e-cohort\""));
    CHECK(school.get("/class/summary?welder=L1&against=L1").status == 422);
}

TEST_CASE("each learner has a page, and all of them one to print") {
    School school;
    const Answer one = school.get("/class/learner/L1");
    REQUIRE(one.status == 200);
    CHECK(says(one, "Coupon T-1"));
    CHECK(says(one, "Coupon T-3"));
    CHECK_FALSE(says(one, "Coupon T-2"));
    const Answer all = school.get("/class/learners");
    REQUIRE(all.status == 200);
    for (const char *mark : {"Coupon T-1", "Coupon T-2", "Coupon T-3"}) CHECK(says(all, mark));
    CHECK(says(all, "class=\"sheet\""));
    CHECK_FALSE(says(school.get("/class/learners?welder=L2"), "Coupon T-1"));
    CHECK(school.get("/class/learner/L9").status == 404);
}

TEST_CASE("before anything is on record the class is empty, and nothing is made") {
    Browser browser;
    CHECK(says(browser.get("/class"), "Nothing is on record yet"));
    for (const char *path : {"/class/accepted", "/class/summary", "/class/learners"})
        CHECK(browser.get(path).status == 303);
    CHECK(browser.get("/class/coupon/T-1").status == 503);
}

TEST_CASE("no page says where a file of the server lies, nor what is typed at a prompt") {
    School school;
    const std::string folder = std::filesystem::path(school.book()).parent_path().string();
    const std::string own = folder + "/own-set.yaml";
    write_file(own, test::read_file(BEADBOOK_SOURCE "/criteria/mil-hdbk-1890-table-3.yaml"));
    for (const std::string mark : {"T-7", "T-8"}) {
        school.coupon(mark, "L7", {{"criteria", own}});
        for (const Exam method : {Exam::VT, Exam::MT, Exam::RT}) school.exam(mark, method, true);
    }
    CHECK(says(school.get("/class/learner/L7"), "of own-set.yaml"));
    for (const char *path : {"/",
                             "/coupon/T-2",
                             "/coupon/T-7",
                             "/coupon/T-2/exam/3",
                             "/coupon/T-3/exam?method=MT",
                             "/class",
                             "/class/coupon/T-7",
                             "/class/learner/L7",
                             "/class/learners",
                             "/class/summary",
                             "/class/accepted",
                             "/welders",
                             "/welder/L7",
                             "/welder/L7/coupon/T-8",
                             "/keeper/due",
                             "/keeper/people",
                             "/keeper/equipment",
                             "/keeper/criteria",
                             "/keeper/copy",
                             "/person",
                             "/coupon/T-9"}) {
        INFO(path);
        const Answer page = school.get(path);
        CHECK_FALSE(says(page, folder));
        CHECK_FALSE(says(page, " --"));
        CHECK_FALSE(says(page, "beadbook "));
    }
}
