// Whom the bench answers, and whom not.
#include "browser.hpp"
#include "catch.hpp"

#include <filesystem>

using namespace beadbook;
using namespace beadbook::test;

TEST_CASE("a link lets one browser in, once") {
    Browser browser;
    CHECK(browser.get("/").status == 200);
    const std::string link = browser.bench.link(), word = link.substr(link.find("/enter"));
    CHECK(browser.get(word).status == 303);
    CHECK(browser.get(word).status == 403);
    CHECK(browser.get("/enter?link=" + std::string(64, '0')).status == 403);
    CHECK(browser.get("/enter").status == 403);
}

TEST_CASE("a browser without the session's cookie gets nothing of the record, but the files of the pages") {
    Browser browser;
    browser.ok("/person", {{"by", "B. Secret"}});
    for (const char *path : {"/", "/person", "/no/such/page"}) {
        Request stranger = browser.request("GET", path);
        stranger.cookies = {};
        const Answer none = browser.send(stranger);
        CHECK(none.status == 403);
        CHECK(none.body.find("B. Secret") == std::string::npos);
        stranger.cookies = fields_in("bench-8123=" + std::string(64, 'a'));
        CHECK(browser.send(stranger).status == 403);
    }
    Request file = browser.request("GET", "/files/bench.css");
    file.cookies = {};
    CHECK(browser.send(file).status == 200);
}

TEST_CASE("another host is not answered, whatever it asks: a name that leads here is no key") {
    Browser browser;
    for (const char *host :
         {"evil.example:8123", "127.0.0.1", "127.0.0.1:80", "", "127.0.0.1:8123.evil.example"}) {
        INFO(host);
        Request q = browser.request("GET", "/");
        q.host = host;
        CHECK(browser.send(q).status == 421);
        q.path = "/files/bench.css";
        CHECK(browser.send(q).status == 421);
    }
    Request q = browser.request("GET", "/");
    q.host = "localhost:8123";
    CHECK(browser.send(q).status == 200);
}

TEST_CASE("nothing is written for another origin, or without the session's word") {
    Browser browser;
    const auto tried = [&](const std::string &origin, const std::string &token,
                           const std::string &in_header) {
        Request q = browser.request("POST", "/person");
        q.origin = origin;
        q.form.add("by", "Mallory");
        if (!token.empty()) q.form.add("token", token);
        q.token = in_header;
        return browser.send(q).status;
    };
    const std::string ours = "http://127.0.0.1:8123";
    CHECK(tried("http://evil.example", browser.token, "") == 403);
    CHECK(tried("http://127.0.0.1:8124", browser.token, "") == 403);
    CHECK(tried("https://127.0.0.1:8123", browser.token, "") == 403);
    CHECK(tried("null", browser.token, "") == 403);
    CHECK(tried("null", "", browser.token) == 403);
    CHECK(tried("", browser.token, "") == 403);
    CHECK(tried(ours, "", "") == 403);
    CHECK(tried(ours, std::string(64, '0'), "") == 403);
    CHECK(browser.get("/person").body.find("Mallory") == std::string::npos);
    CHECK(tried("", "", browser.token) == 303);
    CHECK(tried(ours, browser.token, "") == 303);
    CHECK(browser.get("/person").body.find("Mallory") != std::string::npos);
}

TEST_CASE("a field that is sent twice is refused, and named; but a list may be") {
    Browser browser;
    const Answer twice = browser.post("/person", {{"by", "B. Shore"}, {"by", "J. Quay"}});
    CHECK(twice.status == 400);
    CHECK_THAT(twice.body, says("the field 'by' was sent more than once; nothing was stored"));
    CHECK_THAT(twice.body, says("data-field=\"by\""));
    CHECK(browser.get("/person").body.find("J. Quay") == std::string::npos);
    // There is no record yet, which is another matter.
    CHECK(browser.post("/class/accepted", {{"mark", "T-1"}, {"mark", "T-2"}}).status == 503);
    CHECK(browser.post("/class/accepted", {{"mark", "T-1"}, {"remark", "x"}, {"remark", "y"}}).status == 400);
}

TEST_CASE("every answer carries its cautions, also to strangers") {
    Browser browser;
    Request stranger = browser.request("GET", "/");
    stranger.cookies = {};
    Request elsewhere = stranger;
    elsewhere.host = "evil.example";
    for (const Answer &answer : {browser.get("/"), browser.get("/none"), browser.get("/files/bench.css"),
                                 browser.send(stranger), browser.send(elsewhere), browser.post("/person")}) {
        const std::string policy = header(answer, "Content-Security-Policy");
        CHECK(policy.find("default-src 'none'") != std::string::npos);
        CHECK(policy.find("unsafe") == std::string::npos);
        CHECK(policy.find("frame-ancestors 'none'") != std::string::npos);
        CHECK(header(answer, "X-Content-Type-Options") == "nosniff");
        CHECK(header(answer, "Referrer-Policy") == "same-origin");
    }
    CHECK(header(browser.get("/"), "Cache-Control") == "no-store");
    const std::string link = browser.bench.link();
    const std::string cookie = header(browser.get(link.substr(link.find("/enter"))), "Set-Cookie");
    CHECK(cookie.find("; HttpOnly; SameSite=Strict; Path=/") != std::string::npos);
}

TEST_CASE("what does not fit is refused by its status: no page, another way, too long") {
    Browser browser;
    CHECK(browser.get("/no/such/page").status == 404);
    CHECK(browser.get("/files/none.css").status == 404);
    CHECK(browser.get("/files/../bench.db").status == 404);
    const Answer other = browser.get("/link");
    CHECK(other.status == 405);
    CHECK(header(other, "Allow") == "POST");
    Request q = browser.request("POST", "/person");
    q.origin = "http://127.0.0.1:8123";
    q.token = browser.token;
    q.too_long = true;
    CHECK(browser.send(q).status == 413);
    q = browser.request("DELETE", "/person");
    q.token = browser.token;
    CHECK(browser.send(q).status == 405);
}

TEST_CASE("a name is text on every page, whatever it holds") {
    Browser browser;
    const std::string hostile = "<script>alert(1)</script>\"'><img src=x onerror=alert(1)>";
    browser.ok("/person", {{"by", hostile}});
    for (const char *path : {"/", "/person"}) {
        const std::string page = browser.get(path).body;
        CHECK(page.find("<script>alert") == std::string::npos);
        CHECK(page.find("<img") == std::string::npos);
        CHECK(page.find("&lt;script&gt;alert(1)&lt;/script&gt;&quot;") != std::string::npos);
    }
}

TEST_CASE("looking makes no record") {
    Browser browser;
    CHECK(browser.get("/").body.find("Nothing is on record yet") != std::string::npos);
    CHECK(browser.get("/register").status == 200);
    CHECK(browser.get("/coupon/T-1").status == 503);
    CHECK(browser.post("/coupon/T-1/remark", {{"text", "x"}}).status == 503);
    CHECK_FALSE(std::filesystem::exists(browser.book()));
}

TEST_CASE("the files of the pages are told by what they hold") {
    Browser browser;
    const Answer first = browser.get("/files/bench.css");
    CHECK(first.type == "text/css; charset=utf-8");
    Request again = browser.request("GET", "/files/bench.css");
    again.have = header(first, "ETag");
    CHECK(again.have.size() == 34);
    CHECK(browser.send(again).status == 304);
    CHECK(browser.send(again).body.empty());
    again.have = "\"" + std::string(32, '0') + "\"";
    CHECK(browser.send(again).status == 200);
}
