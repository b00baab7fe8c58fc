// The technician's pages: the same operations as the commands, by forms alone.
#include "browser.hpp"
#include "catch.hpp"
#include "criteria/load.hpp"
#include "facts/log_line.hpp"
#include "operations/coupon_lines.hpp"
#include "operations/judging.hpp"

#include <algorithm>

using namespace beadbook;
using namespace beadbook::test;

namespace {

using Sent = std::vector<std::pair<std::string, std::string>>;

const Sent plate{{"criteria", "mil-hdbk-1890-table-3"},
                 {"class", "2"},
                 {"joint", "groove"},
                 {"form", "plate"},
                 {"thickness", "3/8 in"},
                 {"weld-length", "8 in"},
                 {"magnetic", "yes"},
                 {"material", "steel"},
                 {"process", "SMAW"}};

/// As they stand in the form once somebody typed something else.
Sent with(Sent fields, const Sent &more) {
    std::erase_if(fields, [&](const auto &old) {
        return std::any_of(more.begin(), more.end(), [&](const auto &now) { return now.first == old.first; });
    });
    fields.insert(fields.end(), more.begin(), more.end());
    return fields;
}

CouponState on_record(const Browser &browser, const std::string &mark) {
    Book book(browser.book(), Ledger::Mode::read);
    return book.coupon(mark);
}

/// T-1 with an open VT.
void begun(Browser &browser) {
    browser.ok("/register", with(plate, {{"mark", "T-1"}}));
    browser.ok("/coupon/T-1/exam", {{"method", "VT"}, {"level", "II"}});
}

/// What the tick or the answer of that question is sent as; empty if it is not asked.
std::string tick_in(const Answer &page, const std::string &question) {
    const std::string before = "name=\"" + question + "\" value=\"";
    const std::size_t at = page.body.find(before);
    if (at == std::string::npos) return "";
    const std::size_t begin = at + before.size();
    return page.body.substr(begin, page.body.find('"', begin) - begin);
}

/// What a form that was opened would send along.
std::string seen_in(const std::string &page) {
    const std::string begin = "name=\"seen\" value=\"";
    const std::size_t at = page.find(begin);
    REQUIRE(at != std::string::npos);
    return page.substr(at + begin.size(), page.find('"', at + begin.size()) - at - begin.size());
}

/// As the form of a page that is open now sends it.
Sent seen_now(Browser &browser, const std::string &path, const Sent &fields) {
    return with(fields, {{"seen", seen_in(browser.get(path).body)}});
}

bool says(const std::string &page, const std::string &text) { return page.find(text) != std::string::npos; }

} // namespace

TEST_CASE("a coupon is registered, and the next one begins as the last one was") {
    Browser browser;
    browser.ok("/register", with(plate, {{"mark", "T-1"}, {"welder", "L1"}, {"note", ""}}));
    const CouponState coupon = on_record(browser, "T-1");
    CHECK(coupon.record.get("thickness") == "3/8 in");
    CHECK(coupon.record.get("welder") == "L1");
    CHECK(coupon.record.fields.count("note") == 0);
    CHECK(says(browser.get("/").body, "T-1 is registered"));
    CHECK_FALSE(says(browser.get("/").body, "T-1 is registered")); // told once
    const std::string form = browser.get("/register").body;
    CHECK(says(form, "name=\"mark\" aria-describedby=\"h-mark\" value=\"T-2\""));
    CHECK(says(form, "name=\"thickness\" aria-describedby=\"h-thickness\" value=\"3/8 in\""));
    CHECK_FALSE(says(form, "value=\"L1\""));
    browser.ok("/register", with(plate, {{"mark", "T-2..T-4"}, {"welder", "L2..L4"}}));
    CHECK(on_record(browser, "T-4").record.get("welder") == "L4");
}

TEST_CASE("a refused field is marked, what was sent stands in the form, and nothing is stored") {
    Browser browser;
    const Answer twice = browser.post("/register", with(plate, {{"mark", "T 1"}, {"note", "a <b> note"}}));
    CHECK(twice.status == 422);
    CHECK(says(twice.body, "value=\"T 1\""));
    CHECK(says(twice.body, "a &lt;b&gt; note"));
    const Answer wrong = browser.post("/register", {{"mark", "T-1"}, {"joint", "sideways"}});
    CHECK(wrong.status == 422);
    CHECK(says(wrong.body, "role=\"alert\""));
    // Beside the field, not at the foot.
    for (const auto &[field, value] : Sent{{"mark", "T 1"},
                                           {"joint", "sideways"},
                                           {"thickness", "abc"},
                                           {"weld-length", "0 in"},
                                           {"diameter", "NPS 99"},
                                           {"criteria", "none-such"}}) {
        INFO(field);
        const Answer refused = browser.post("/register", with({{"mark", "T-1"}}, {{field, value}}));
        CHECK(says(refused.body, "id=\"e-" + field + "\""));
    }
    browser.ok("/register", with(plate, {{"mark", "T-1"}}));
    CHECK(says(browser.post("/register", with(plate, {{"mark", "T-1"}})).body, "id=\"e-mark\""));
    CHECK(browser.get("/coupon/T-9").status == 404);
    CHECK(browser.get("/coupon/T-1/exam/1").status == 404);
    CHECK(browser.get("/coupon/T-1/exam/x").status == 404);
    CHECK(browser.get("/coupon/%3Cscript%3E").status == 404);
}

TEST_CASE("what nobody would believe is asked about, and taken when it is meant so") {
    Browser browser;
    const Sent thick = with(plate, {{"mark", "T-1"}, {"weld-thickness", "40 in"}});
    const Answer asked = browser.post("/register", thick);
    CHECK(asked.status == 422);
    const std::string sure = tick_in(asked, "sure");
    REQUIRE_FALSE(sure.empty());
    // The tick is of the very words that it was shown for.
    CHECK(browser.post("/register", with(thick, {{"sure", "yes"}})).status == 422);
    const Sent thicker = with(thick, {{"weld-thickness", "50 in"}, {"sure", sure}});
    const Answer anew = browser.post("/register", thicker);
    CHECK(anew.status == 422);
    CHECK(tick_in(anew, "sure") != sure);
    browser.ok("/register", with(thick, {{"sure", sure}}));
    CHECK_FALSE(on_record(browser, "T-1").record.sure.empty());
}

TEST_CASE("a find that nobody would believe is asked about in words, and its tick holds for no other find") {
    Browser browser;
    begun(browser);
    const std::string log = "/coupon/T-1/exam/1/log";
    const Sent deep{{"line", "undercut d 5 in at 3 in"}};
    const Answer asked = browser.post(log, deep);
    CHECK(says(asked.body, "is that meant?"));
    CHECK_FALSE(says(asked.body, "(depth-")); // the name of a rule is told in words
    const std::string sure = tick_in(asked, "sure");
    CHECK(browser.post(log, {{"line", "undercut d 6 in at 3 in"}, {"sure", sure}}).status == 422);
    browser.ok(log, with(deep, {{"sure", sure}}));
    CHECK(on_record(browser, "T-1").indications.size() == 1);
}

TEST_CASE("what a correction lacks is asked for on the page that refuses it") {
    Browser browser;
    browser.ok("/register", with(plate, {{"mark", "T-1"}, {"note", "bent"}}));
    const Sent changed = with(plate, {{"note", ""}, {"weld-length", "9 in"}});
    const Answer why = browser.post("/coupon/T-1/change", changed);
    CHECK(why.status == 422);
    CHECK(says(why.body, "aria-invalid=\"true\""));
    browser.ok("/coupon/T-1/change", with(changed, {{"why", "measured again"}}));
    const CouponState coupon = on_record(browser, "T-1");
    CHECK(coupon.record.get("weld-length") == "9 in");
    CHECK(coupon.record.get("note").empty());
    // A field that the form did not hold is not forgotten.
    browser.ok("/coupon/T-1/change", {{"weld-length", "8 in"}, {"why", "the scale slipped"}});
    CHECK(on_record(browser, "T-1").record.get("joint") == "groove");
}

TEST_CASE("an exam is begun, logged and finished by forms; the verdict goes with it") {
    Browser browser;
    begun(browser);
    const std::string path = "/coupon/T-1/exam/1";
    CHECK(says(browser.get(path).body, "None found"));
    browser.ok(path + "/log", {{"line", "undercut l 3/8 d 0.010 at 1-1/2"}});
    browser.ok(path + "/log", {{"line", "gas pore 0.04 in at 3.2 in root"}});
    CouponState coupon = on_record(browser, "T-1");
    REQUIRE(coupon.indications.size() == 2);
    CHECK(coupon.indications[1].exam == 1);
    CHECK(says(browser.get(path).body, "These are all: 2"));
    // What was entered since is no slip any more: the reason is asked.
    const Answer why = browser.post(path + "/undo", {{"number", "1"}});
    CHECK(why.status == 422);
    CHECK(says(why.body, "The reason"));
    browser.ok(path + "/undo", {{"number", "2"}});
    CHECK(on_record(browser, "T-1").indications.size() == 1);
    // Pressed again on an old page it takes nothing else back.
    CHECK(browser.post(path + "/undo", {{"number", "2"}}).status == 422);
    // What the examiner saw on the button was another number.
    CHECK(browser.post(path + "/finish", {{"found", "2"}}).status == 422);
    // A line that stands in the field, sent along where no script looks, is not lost.
    const Answer line = browser.post(path + "/finish", {{"found", "1"}, {"line", "crack 0.5 at 4"}});
    CHECK(line.status == 422);
    CHECK(says(line.body, "value=\"crack 0.5 at 4\""));
    browser.ok(path + "/finish", {{"found", "1"}});
    coupon = on_record(browser, "T-1");
    REQUIRE(coupon.exams[0].finished);
    CHECK(coupon.exams[0].finished->found == 1);
    CHECK(coupon.exams[0].finished->by == "A. Field");
    const std::string page = browser.get(path).body;
    CHECK(says(page, "Finished by A. Field: 1 found"));
    CHECK(says(page, "begin MT"));
    CHECK(browser.post(path + "/log", {{"line", "crack 0.2 in at 3 in"}}).status == 422);
    CHECK(browser.post(path + "/reopen").status == 422);
    browser.ok(path + "/reopen", {{"why", "one more under the light"}});
    browser.ok(path + "/log", {{"line", "crack 0.2 in at 3 in"}});
    const std::string verdict = browser.get("/coupon/T-1").body; // Table III has no rule for what VT finds
    CHECK((says(verdict, "cannot say") && says(verdict, "#3 crack (VT)")));
}

TEST_CASE("an exam whose note reads like a find is finished with none by a tick beside what is asked") {
    Browser browser;
    browser.ok("/register", with(plate, {{"mark", "T-1"}}));
    browser.ok("/coupon/T-1/exam", {{"method", "VT"}, {"level", "II"}, {"note", "crack at 3:00"}});
    const Sent none = GENERATE(Sent{{"found", "0"}}, Sent{{"line", ""}, {"found", "0"}}); // without a script
    const Answer asked = browser.post("/coupon/T-1/exam/1/finish", none);
    CHECK(asked.status == 422);
    CHECK(says(asked.body, "reads like a find"));
    CHECK(says(asked.body, "<h2>Found</h2>"));
    CHECK_FALSE(on_record(browser, "T-1").exams[0].finished);
    browser.ok("/coupon/T-1/exam/1/finish", with(none, {{"sure", tick_in(asked, "sure")}}));
    CHECK(on_record(browser, "T-1").exams[0].finished);
}

TEST_CASE("a bad line stands in the form again with what is wrong, and nothing is stored") {
    Browser browser;
    begun(browser);
    const Answer bad = browser.post("/coupon/T-1/exam/1/log", {{"line", "pore 0.04 inn at <3>"}});
    CHECK(bad.status == 422);
    CHECK(says(bad.body, "value=\"pore 0.04 inn at &lt;3&gt;\""));
    CHECK(says(bad.body, "class=\"refused\""));
    CHECK(says(bad.body, "at sign 11: 'inn'"));
    CHECK(on_record(browser, "T-1").indications.empty());
}

TEST_CASE("what is refused on the page of an exam leaves it there, with the reason and the way on") {
    Browser browser;
    begun(browser);
    const std::string path = "/coupon/T-1/exam/1";
    browser.ok(path + "/log", {{"line", "undercut l 3/8 d 0.010 at 1-1/2"}});
    browser.ok(path + "/log", {{"line", "gas pore 0.04 in at 3.2 in root"}});
    CHECK(says(browser.get(path).body, "stored as #2: gas pore"));
    const auto stays = [&](const Answer &page, const std::string &why) {
        INFO(page.body);
        CHECK(page.status == 422);
        CHECK(says(page.body, why));
        CHECK(says(page.body, "<h2>Found</h2>"));
    };
    const Answer finish = browser.post(path + "/finish", {{"found", "7"}});
    stays(finish, "is said to have found 7");
    CHECK(says(finish.body, "id=\"log\""));
    stays(browser.post(path + "/finish", {{"found", "many"}}), "is no number");
    const Answer undo = browser.post(path + "/undo", {{"number", "1"}, {"why", " "}});
    stays(undo, "reason");
    CHECK(says(undo.body, "<details open><summary>Undo #1"));
    const Answer unread =
        browser.post(path + "/correct", {{"number", "1"}, {"now", "undercut at 99 in"}, {"why", "x"}});
    stays(unread, "cannot be taken");
    CHECK(says(unread.body, "<details open><summary>Correct #1"));
    CHECK(says(unread.body, "value=\"undercut at 99 in\""));
    stays(browser.post(path + "/correct",
                       {{"number", "1"}, {"now", "undercut l 1/8 d 0.010 at 2"}, {"why", ""}}),
          "a correction needs a reason");
    browser.ok(path + "/correct",
               {{"number", "1"}, {"now", "undercut l 1/8 d 0.010 at 2"}, {"why", "read anew"}});
    CHECK(says(browser.get(path).body, "#1 is corrected; the old line is kept"));
    CHECK(print_log_line(on_record(browser, "T-1").needed_indication(1)).find("at 2") != std::string::npos);
    browser.ok(path + "/finish", {{"found", "2"}});
    const Answer reopen = browser.post(path + "/reopen", {{"why", ""}});
    stays(reopen, "reason");
    CHECK(says(reopen.body, "<details open><summary>Open it again"));
    const Answer remark = browser.post("/coupon/T-1/remark", {{"text", std::string(6000, 'x')}});
    CHECK(remark.status == 422);
    CHECK(says(remark.body, std::string(6000, 'x') + "\""));
}

TEST_CASE("an exam as before that is refused is asked in the form, filled in as the last one was") {
    Browser browser;
    browser.ok("/register", with(plate, {{"mark", "T-1..T-2"}}));
    browser.ok("/coupon/T-1/exam", {{"method", "VT"}, {"level", "II"}, {"procedure", "P-9"}});
    browser.ok("/person", {{"by", "B. Other"}});
    const Answer asked = browser.post("/coupon/T-2/exam", {{"method", "VT"}, {"as-before", "yes"}});
    CHECK(asked.status == 422);
    CHECK(says(asked.body, "<h1>Begin VT of T-2</h1>"));
    CHECK(says(asked.body, "value=\"B. Other\""));
}

TEST_CASE("a page that refuses leads back to where one came from") {
    Browser browser;
    begun(browser);
    const auto back_from = [&](Request q) {
        const Answer page = browser.send(q);
        const std::string before = "<a class=\"button\" href=\"";
        const std::size_t at = page.body.rfind(before) + before.size();
        return page.body.substr(at, page.body.find('"', at) - at);
    };
    Request lost = browser.request("GET", "/coupon/T-9");
    CHECK(back_from(lost) == "/");
    lost.from = "http://" + lost.host + "/class?cohort=autumn";
    CHECK(back_from(lost) == "/class?cohort=autumn");
    lost.from = "http://elsewhere.example/class";
    CHECK(back_from(lost) == "/");
    Request undone = browser.request("POST", "/coupon/T-1/photo/abc/withdraw");
    undone.origin = "http://" + undone.host;
    undone.form.add("token", browser.token);
    CHECK(back_from(undone) == "/coupon/T-1");
}

TEST_CASE("what would mend a refusal is told in the words of pages, and leads there") {
    Browser browser;
    begun(browser);
    browser.ok("/coupon/T-1/exam/1/finish", {{"found", "0"}});
    const std::string page = browser.post("/coupon/T-1/exam/1/finish", {{"found", "0"}}).body;
    CHECK(says(page, "<a href=\"/coupon/T-1/exam/1\">open exam 1 of T-1 again</a>"));
    CHECK_FALSE(says(page, "again: why"));
}

TEST_CASE("a verdict on record that is older than a change says of when it is, and before which entry") {
    Browser browser;
    begun(browser);
    browser.ok("/coupon/T-1/exam/1/finish", {{"found", "0"}});
    {
        Book book(browser.book(), Ledger::Mode::write);
        Catalogue catalogue(browser.bench.world().outside);
        Office office(book, catalogue);
        Writing writing(office, "A. Field");
        judge_and_keep(writing, "T-1");
        commit(writing);
    }
    CHECK(says(browser.get("/coupon/T-1").body, "Verdict on record, 2026-11-25T10:00:00Z by A. Field"));
    browser.ok("/coupon/T-1/exam/1/reopen", {{"why", "one more look"}});
    const std::int64_t entry = on_record(browser, "T-1").exam_seq.at(1);
    const std::string page = browser.get("/coupon/T-1").body;
    CHECK(says(page, "Verdict on record, as of 2026-11-25T10:00:00Z, before entry " + std::to_string(entry)));
    CHECK(says(page, "it was not judged again"));
}

TEST_CASE("a line is read back before it is stored") {
    Browser browser;
    begun(browser);
    const std::string reading = "/coupon/T-1/exam/1/reading?line=";
    CHECK(says(browser.get(reading + url_word("undercu 3/16 at 4 in")).body,
               "<b>reads as</b> undercut depth 3/16 in at 4 in"));
    CHECK(says(browser.get(reading + url_word("undercut 3/16 at 4 in")).body, "not stored yet"));
    CHECK(
        says(browser.get(reading + url_word("undercu 3/16 at 4 in")).body, "'undercu' is taken as undercut"));
    const Answer bad = browser.get(reading + url_word("undercut 3/16 at 9 in"));
    CHECK(bad.status == 200);
    CHECK(says(bad.body, "class=\"open\""));
    CHECK_FALSE(says(browser.get(reading + url_word("<script>")).body, "<script>"));
    CHECK(on_record(browser, "T-1").indications.empty());
}

TEST_CASE("the next exam of a person takes over what the last one said, and goes on from coupon to coupon") {
    Browser browser;
    browser.ok("/register", with(plate, {{"mark", "T-1..T-3"}}));
    browser.ok("/coupon/T-1/exam", {{"method", "VT"},
                                    {"level", "II"},
                                    {"procedure", "P-9"},
                                    {"condition:light", "1000 lx"},
                                    {"condition:aids", "mirror"}});
    const std::string form = browser.get("/coupon/T-2/exam?method=VT").body;
    CHECK(says(form, "value=\"P-9\""));
    CHECK(says(form, "value=\"mirror\""));
    CHECK(says(form, "from the last VT by A. Field"));
    browser.ok("/coupon/T-1/exam/1/finish", {{"found", "0"}});
    const std::string done = browser.get("/coupon/T-1/exam/1").body;
    CHECK(says(done, "VT of T-2"));
    CHECK(says(done, "name=\"as-before\" value=\"yes\""));
    browser.ok("/coupon/T-2/exam", {{"method", "VT"}, {"as-before", "yes"}});
    CHECK(on_record(browser, "T-2").exams[0].conditions.at("aids") == "mirror");
    browser.ok("/coupon/T-1/exam", {{"method", "MT"}, {"coupons", "T-1,T-3"}, {"level", "II"}});
    CHECK(on_record(browser, "T-3").exams[0].method == Exam::MT);
    CHECK(browser.post("/coupon/T-1/exam", {{"method", "XT"}}).status == 422);
}

TEST_CASE("the conditions of an exam are corrected, and its finish stands") {
    Browser browser;
    begun(browser);
    browser.ok("/coupon/T-1/exam/1/finish", {{"found", "0"}});
    const std::string path = "/coupon/T-1/exam/1/conditions";
    CHECK(browser.get(path).status == 200);
    const Sent read{{"level", "II"}, {"condition:light", "800 lx"}, {"why", "read at the bench"}};
    CHECK(browser.post(path, seen_now(browser, path, with(read, {{"condition:light", "much"}}))).status ==
          422);
    // What does not say what it stands in place of would put away what nobody saw.
    const Answer unseen = browser.post(path, read);
    CHECK(unseen.status == 422);
    CHECK(says(unseen.body, "does not say which conditions it stands in place of"));
    CHECK(on_record(browser, "T-1").exams[0].conditions.count("light") == 0);
    browser.ok(path, seen_now(browser, path, read));
    const CouponState coupon = on_record(browser, "T-1");
    CHECK(coupon.exams[0].conditions.at("light") == "800 lx");
    CHECK(coupon.exams[0].finished);
}

TEST_CASE("nobody's reason stands in the conditions of a finished exam, and an empty one is refused") {
    Browser browser;
    begun(browser);
    const std::string path = "/coupon/T-1/exam/1/conditions", words = "read at the bench";
    CHECK(says(browser.get(path).body, words));
    browser.ok("/coupon/T-1/exam/1/finish", {{"found", "0"}});
    CHECK_FALSE(says(browser.get(path).body, words));
    const Sent sent = seen_now(browser, path, {{"level", "II"}, {"condition:light", "800 lx"}, {"why", ""}});
    CHECK(browser.post(path, sent).status == 422);
    CHECK(on_record(browser, "T-1").exams[0].conditions.count("light") == 0);
}

TEST_CASE("an emptied examiner or day is asked at its field") {
    Browser browser;
    browser.ok("/register", with(plate, {{"mark", "T-1"}}));
    for (const std::string field : {"examiner", "date"}) {
        INFO(field);
        const Answer asked =
            browser.post("/coupon/T-1/exam", {{"method", "VT"}, {"level", "II"}, {field, ""}});
        CHECK(asked.status == 422);
        CHECK(says(asked.body, "id=\"e-" + field + "\""));
    }
    CHECK(on_record(browser, "T-1").exams.empty());
}

TEST_CASE("the conditions stand open where one of them is refused") {
    Browser browser;
    browser.ok("/register", with(plate, {{"mark", "T-1"}}));
    const Answer asked = browser.post("/coupon/T-1/exam", {{"method", "VT"}, {"condition:light", "much"}});
    CHECK(asked.status == 422);
    CHECK(says(asked.body, "<details open><summary>Conditions"));
}

TEST_CASE("a condition that is refused is marked where it stands") {
    Browser browser;
    browser.ok("/register", with(plate, {{"mark", "T-1"}}));
    for (const auto &[name, value] : Sent{{"light", "much"}, {"light", "0 lx"}, {"vision", "2100-01-01"}}) {
        INFO(name << " " << value);
        const Answer asked =
            browser.post("/coupon/T-1/exam", {{"method", "VT"}, {"condition:" + name, value}});
        CHECK(asked.status == 422);
        CHECK(says(asked.body, "id=\"e-condition:" + name + "\""));
    }
}

TEST_CASE("what an exam found is asked about where its correction makes it count") {
    Browser browser;
    begun(browser);
    const std::string path = "/coupon/T-1/exam/1", conditions = path + "/conditions";
    const Sent left_out{{"level", "II"}, {"incomplete", "the root was not seen"}, {"why", "said late"}};
    browser.ok(conditions, seen_now(browser, conditions, left_out));
    browser.ok(path + "/finish", {{"found", "0"}});
    browser.ok(
        conditions,
        seen_now(browser, conditions,
                 with(left_out, {{"incomplete", "neither end was seen"}}))); // it counts no more than before
    const Sent whole = seen_now(browser, conditions, with(left_out, {{"incomplete", ""}}));
    const Answer asked = browser.post(conditions, whole);
    CHECK(asked.status == 422);
    CHECK(says(asked.body, "did not count: neither end was seen"));
    CHECK(says(asked.body, "finished with none found; is that what it found?"));
    const std::string sure = tick_in(asked, "sure");
    REQUIRE_FALSE(sure.empty());
    CHECK_FALSE(on_record(browser, "T-1").exams[0].incomplete.empty());
    browser.ok(conditions, with(whole, {{"sure", sure}}));
    CHECK(on_record(browser, "T-1").exams[0].incomplete.empty());
    CHECK(on_record(browser, "T-1").exams[0].finished);
    browser.ok(conditions,
               seen_now(browser, conditions, with(whole, {{"procedure", "P-9"}}))); // it counted already
}

TEST_CASE("that nothing was found is said before the line; what was found stands before its number") {
    Browser browser;
    begun(browser);
    const std::string path = "/coupon/T-1/exam/1";
    const auto is_before = [](const std::string &page, const std::string &one, const std::string &other) {
        INFO(one << ", " << other);
        REQUIRE(says(page, one));
        return page.find(one) < page.find(other);
    };
    CHECK(is_before(browser.get(path).body, ">None found</button></form>", "id=\"log\""));
    browser.ok(path + "/log", {{"line", "gas pore 0.04 in at 3.2 in"}});
    const std::string one = browser.get(path).body;
    CHECK_FALSE(says(one, "None found"));
    CHECK(is_before(one, "<h2>Found</h2>", ">These are all: 1</button></form>"));
}

TEST_CASE("criteria in a file of this machine are shown by the file's name and title, and stay that file") {
    Browser browser;
    const TemporaryFolder folder;
    const std::string file = folder.file("ours.yaml");
    write_file(file, shipped_criteria("mil-hdbk-1890-table-3")->text);
    browser.ok("/register", with(plate, {{"mark", "T-1"}, {"criteria", file}}));
    for (const std::string path : {"/coupon/T-1/change", "/register"}) {
        const std::string page = browser.get(path).body;
        CHECK(says(page, "value=\"ours.yaml\""));
        CHECK(says(page, "ours.yaml: Radiographic acceptance"));
        CHECK_FALSE(says(page, file));
    }
    browser.ok("/coupon/T-1/change",
               with(plate, {{"criteria", "ours.yaml"}, {"weld-length", "9 in"}, {"why", "measured again"}}));
    CHECK(on_record(browser, "T-1").record.get("criteria") == file);
    browser.ok("/register", with(plate, {{"mark", "T-2"}, {"criteria", "ours.yaml"}, {"like", "T-1"}}));
    CHECK(on_record(browser, "T-2").record.get("criteria") == file);
}

TEST_CASE("an exam is reached from its coupon, and one that was begun by mistake is withdrawn there") {
    Browser browser;
    begun(browser);
    const std::string path = "/coupon/T-1/exam/1";
    CHECK(says(browser.get("/coupon/T-1").body, "href=\"" + path + "\">Exam 1</a>: VT"));
    CHECK(says(browser.get("/class/coupon/T-1").body, "href=\"" + path + "\">Exam 1</a>: VT"));
    const Answer asked = browser.post(path + "/withdraw", {{"why", ""}});
    CHECK(asked.status == 422);
    CHECK(says(asked.body, "<details open><summary>Withdraw this exam"));
    CHECK(on_record(browser, "T-1").exams.size() == 1);
    browser.ok(path + "/withdraw", {{"why", "begun for the wrong coupon"}});
    CHECK(on_record(browser, "T-1").exams.empty());
}

TEST_CASE("a page that was opened before a change does not put back what it said then") {
    Browser browser;
    begun(browser);
    browser.ok("/coupon/T-1/exam/1/finish", {{"found", "0"}});
    for (const std::string path : {"/coupon/T-1/change", "/coupon/T-1/exam/1/conditions"}) {
        INFO(path);
        const std::string seen = seen_in(browser.get(path).body);
        const Sent same{{"level", "II"}, {"thickness", "1/16 in"}, {"seen", seen}, {"why", "measured again"}};
        browser.ok(path, same);
        Sent stale = same;
        stale[1].second = "1 in";
        const Answer refused = browser.post(path, stale);
        CHECK(refused.status == 422);
        CHECK(says(refused.body, "was changed after this page was opened"));
        CHECK(seen_in(browser.get(path).body) != seen);
    }
    CHECK(on_record(browser, "T-1").record.get("thickness") == "1/16 in");
}

TEST_CASE("the first page lists what waits: the person's own first, nothing that is done or withdrawn") {
    Browser browser;
    browser.ok("/register", with(plate, {{"mark", "T-1..T-3"}}));
    browser.ok("/person", {{"by", "B. Other"}});
    browser.ok("/coupon/T-2/exam", {{"method", "VT"}, {"level", "II"}});
    browser.ok("/person", {{"by", "A. Field"}});
    browser.ok("/coupon/T-3/exam", {{"method", "VT"}, {"level", "II"}});
    const std::string page = browser.get("/").body;
    const std::size_t one = page.find(">T-1<"), two = page.find(">T-2<"), three = page.find(">T-3<");
    REQUIRE(one != std::string::npos);
    CHECK(three < two);
    CHECK(two < one);
    CHECK(says(page, "begin MT of all 3"));
    for (const char *mark : {"T-1", "T-2", "T-3"})
        for (const char *method : {"VT", "MT", "RT"}) {
            const CouponState before = on_record(browser, mark);
            int number = 0;
            for (const auto &exam : before.exams)
                if (name_of(exam.method) == method) number = exam.number;
            if (number == 0) {
                browser.ok(std::string("/coupon/") + mark + "/exam", {{"method", method}, {"level", "II"}});
                number = before.last_exam + 1;
            }
            browser.ok(std::string("/coupon/") + mark + "/exam/" + std::to_string(number) + "/finish",
                       {{"found", "0"}});
        }
    CHECK(says(browser.get("/").body, "Nothing waits"));
}

TEST_CASE("what is sent twice under one key is entered once; with other words it is refused") {
    Browser browser;
    begun(browser);
    const std::string path = "/coupon/T-1/exam/1/log";
    const auto sent = [&](const std::string &line, const std::string &key, bool in_header) {
        Request q = browser.request("POST", path);
        q.token = browser.token;
        q.part = true;
        q.form.add("line", line);
        if (in_header)
            q.key = key;
        else
            q.form.add("key", key);
        return browser.send(q);
    };
    for (const bool in_header : {true, false}) {
        const std::string key = in_header ? "k-1" : "k-2", place = in_header ? " at 3 in" : " at 4 in";
        const std::size_t before = on_record(browser, "T-1").indications.size();
        const Answer first = sent("gas pore 0.04 in" + place, key, in_header);
        CHECK(first.status == 200);
        const Answer again = sent("gas pore 0.04 in" + place, key, in_header);
        CHECK(again.status == 200);
        CHECK(again.body == first.body);
        CHECK(sent("gas pore 0.05 in" + place, key, in_header).status == 409);
        CHECK(on_record(browser, "T-1").indications.size() == before + 1);
    }
    // What was refused used no key up: mended, it is taken.
    CHECK(sent("gas pore 0.04 in at 99 in", "k-3", true).status == 422);
    CHECK(sent("gas pore 0.04 in at 5 in", "k-3", true).status == 200);
    // A form that is pressed twice.
    const std::string page = browser.get("/coupon/T-1/exam/1").body, mark = "name=\"key\" value=\"";
    const std::size_t at = page.find(mark) + mark.size();
    const std::string key = page.substr(at, page.find('"', at) - at);
    CHECK(key.size() == 64);
    const std::size_t before = on_record(browser, "T-1").indications.size();
    browser.ok(path, {{"line", "overlap 0.1 in at 6 in"}, {"key", key}});
    browser.ok(path, {{"line", "overlap 0.1 in at 6 in"}, {"key", key}});
    CHECK(on_record(browser, "T-1").indications.size() == before + 1);
}

TEST_CASE("what is entered is entered by the person at the bench") {
    Browser browser;
    browser.ok("/person", {{"by", "C. Third"}});
    browser.ok("/register", with(plate, {{"mark", "T-1"}}));
    browser.ok("/coupon/T-1/remark", {{"text", "restart looks cold"}});
    CHECK(browser.post("/coupon/T-1/remark", {{"text", ""}}).status == 422);
    Book book(browser.book(), Ledger::Mode::read);
    for (const auto &entry : book.history("T-1")) CHECK(entry.who == "C. Third");
    CHECK(on_record(browser, "T-1").remarks.size() == 1);
    CHECK(browser.post("/person", {{"by", " "}}).status == 422);
}

TEST_CASE("a busy record is told as such, to be tried again") {
    Browser browser;
    begun(browser);
    Book book(browser.book(), Ledger::Mode::write);
    const Ledger::Transaction other(book.ledger());
    const Answer busy = browser.post("/coupon/T-1/remark", {{"text", "x"}});
    CHECK(busy.status == 503);
    CHECK(header(busy, "Retry-After") == "2");
    CHECK(browser.get("/coupon/T-1").status == 200); // reading goes on
}
