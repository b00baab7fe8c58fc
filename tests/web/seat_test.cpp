// Who sits at the bench may change while a page is open: nothing goes under another name than the page
// showed.
#include "catch.hpp"
#include "school.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

std::size_t count_of(const std::string &text, const std::string &part) {
    std::size_t count = 0;
    for (std::size_t at = 0; (at = text.find(part, at)) != std::string::npos; at += part.size()) ++count;
    return count;
}

} // namespace

TEST_CASE("every form that sends says who sat here when its page was opened") {
    School school;
    for (const char *path :
         {"/", "/register", "/coupon/T-1", "/coupon/T-1/change", "/coupon/T-1/exam?method=MT",
          "/coupon/T-1/exam/1", "/coupon/T-1/exam/1/conditions", "/class/coupon/T-2", "/class/accepted",
          "/keeper/people", "/keeper/equipment", "/person"}) {
        INFO(path);
        const std::string page = school.get(path).body;
        CHECK(count_of(page, "method=\"post\"") ==
              count_of(page, "<input type=\"hidden\" name=\"sits\" value=\"A. Field\">"));
    }
}

TEST_CASE("what a page of somebody else sends is refused on the page anew, with what was typed") {
    School school;
    school.ok("/person", {{"by", "W4"}});
    const std::vector<std::pair<std::string, std::string>> said{{"sits", "A. Field"},
                                                                {"text", "restart is cold"}};
    const Answer refused = school.post("/coupon/T-1/remark", said);
    CHECK(refused.status == 422);
    CHECK(says(refused,
               "A. Field sat here when this page was opened, and W4 sits here now; nothing is stored"));
    CHECK(says(refused, "value=\"restart is cold\""));
    CHECK(says(refused, "name=\"sits\" value=\"W4\""));
    CHECK_FALSE(says(refused, "name=\"sits\" value=\"A. Field\""));
    for (const auto &[path, field, value] : {std::tuple("/class/coupon/T-1", "decision", "passed"),
                                             {"/class/accepted", "mark", "T-1"},
                                             {"/coupon/T-3/exam", "method", "MT"},
                                             {"/coupon/T-3/exam/1/reopen", "why", "read anew"},
                                             {"/keeper/people", "name", "N. Body"}}) {
        INFO(path);
        const Answer other = school.post(path, {{"sits", "A. Field"}, {field, value}});
        CHECK(other.status == 422);
        CHECK(says(other, "sat here when this page was opened"));
    }
    CHECK_FALSE(school.grade_of("T-1"));
    school.ok("/coupon/T-1/remark", {{"sits", "W4"}, {"text", "restart is cold"}});
    school.ok("/person", {{"sits", "A. Field"}, {"by", "B. Other"}}); // whoever sits down stores nothing
}

TEST_CASE("a form that is shown again says what was seen when it was filled in") {
    School school;
    const auto seen_in = [](const std::string &page) {
        const std::string before = "name=\"seen\" value=\"";
        const std::size_t at = page.find(before) + before.size();
        return page.substr(at, page.find('"', at) - at);
    };
    const std::string path = "/coupon/T-1/change", seen = seen_in(school.get(path).body);
    school.ok(path, {{"seen", seen}, {"note", "as cut"}, {"why", "not said"}});
    school.ok("/person", {{"by", "W4"}});
    const Answer refused =
        school.post(path, {{"sits", "A. Field"}, {"seen", seen}, {"note", "as bent"}, {"why", "not said"}});
    CHECK(says(refused, "sat here when this page was opened"));
    CHECK(seen_in(refused.body) == seen);
}

TEST_CASE("what a module sends for somebody else waits in the browser") {
    School school;
    school.ok("/coupon/T-3/exam", {{"method", "MT"}, {"level", "II"}});
    school.ok("/person", {{"by", "W4"}});
    Request q = school.request("POST", "/coupon/T-3/exam/2/log");
    q.token = school.token;
    q.part = true;
    q.key = "k-1";
    q.form.add("line", "gas pore 0.04 in at 3 in");
    q.form.add("sits", "A. Field");
    const Answer waits = school.send(q);
    CHECK(waits.status == 403);
    CHECK(header(waits, "X-Bench-Wants") == "seat");
    school.ok("/person", {{"by", "A. Field"}});
    CHECK(school.send(q).status == 200);
}
