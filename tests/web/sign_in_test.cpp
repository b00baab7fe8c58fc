// Who comes in at the tablets' bench, how long, and what a role may do there.
#include "catch.hpp"
#include "tablets.hpp"
#include "web/roles.hpp"
#include "web/route.hpp"

#include <filesystem>

using namespace beadbook;
using namespace beadbook::test;

TEST_CASE("behind the proxy nobody comes in but by name and password") {
    Tablets tablets;
    const Answer stranger = tablets.see("", "/coupon/T-1");
    CHECK(stranger.status == 303);
    CHECK(header(stranger, "Location") == "/sign-in");
    CHECK(tablets.see("", "/head").status == 403);
    CHECK(header(tablets.see("", "/head"), "X-Bench-Wants") ==
          "sign-in"); // so that a page can say what it waits for
    CHECK(tablets.see("", "/enter?link=x").status == 303);
    CHECK(tablets.see("", "/sign-in").status == 200);
    const Answer good = tablets.tried("Tess", Tablets::password);
    CHECK(good.status == 303);
    const std::string cookie = header(good, "Set-Cookie");
    CHECK(cookie.starts_with("__Host-bench="));
    CHECK(cookie.ends_with("; Secure; HttpOnly; SameSite=Strict; Path=/"));
    const Answer wrong = tablets.tried("Tess", "another word, wrong"),
                 nobody = tablets.tried("Nora", "ten or more");
    CHECK(wrong.status == 403);
    CHECK(wrong.body == nobody.body);
    CHECK(header(wrong, "Set-Cookie").empty());
}

TEST_CASE("what does not come through the own proxy, or from another origin, gets nothing") {
    Tablets tablets;
    const std::string cookie = tablets.in("Tess");
    CHECK(tablets.see(cookie, "/").status == 200);
    Request q = tablets.asked("GET", "/", cookie);
    q.proxy = "";
    CHECK(tablets.door->answer(q).status == 421);
    q.proxy = std::string(64, 'x');
    CHECK(tablets.door->answer(q).status == 421);
    q = tablets.asked("GET", "/", cookie);
    q.host = "127.0.0.1:8123";
    CHECK(tablets.door->answer(q).status == 421);
    for (const char *origin : {"", "null", "http://bench.shop.internal", "https://evil.example"}) {
        INFO(origin);
        Request in = tablets.asked("POST", "/sign-in");
        in.origin = origin;
        in.form.add("name", "Tess");
        in.form.add("password", Tablets::password);
        CHECK(tablets.door->answer(in).status == 403);
    }
}

TEST_CASE("attempts are limited by account and by address, the right password among them") {
    Tablets tablets;
    for (std::size_t i = 0; i < Attempts::most_of_account; ++i)
        CHECK(tablets.tried("Tess", "another word, wrong").status == 403);
    CHECK(tablets.tried(" tess", Tablets::password, "192.0.2.8").status == 429);
    CHECK(tablets.tried("Inge", Tablets::password).status == 303);
    tablets.now += Attempts::window;
    CHECK(tablets.tried("Tess", Tablets::password).status == 303);

    Attempts attempts;
    for (std::size_t i = 0; i < Attempts::most_of_address; ++i)
        CHECK(attempts.begin("n" + std::to_string(i), "a", tablets.now));
    CHECK_FALSE(attempts.begin("other", "a", tablets.now));
    CHECK(attempts.begin("other", "b", tablets.now));
}

TEST_CASE("a session ends idle, after a day's work, by signing out, and when the account changes") {
    Tablets tablets;
    std::string cookie = tablets.in("Tess");
    tablets.now += Sessions::longest_idle - std::chrono::seconds(1);
    CHECK(tablets.see(cookie, "/head").status == 200); // a page that looks by itself is no use
    tablets.now += std::chrono::seconds(1);
    CHECK(tablets.see(cookie, "/head").status == 403);

    cookie = tablets.in("Tess");
    for (auto left = Sessions::longest; left > std::chrono::minutes(20); left -= std::chrono::minutes(20)) {
        CHECK(tablets.see(cookie, "/").status == 200);
        tablets.now += std::chrono::minutes(20);
    }
    CHECK(tablets.see(cookie, "/").status == 200);
    tablets.now += std::chrono::minutes(20);
    CHECK(tablets.see(cookie, "/").status == 303);

    cookie = tablets.in("Tess");
    CHECK(tablets.send(cookie, "/sign-out").status == 303);
    CHECK(tablets.see(cookie, "/").status == 303);

    cookie = tablets.in("Tess");
    tablets.account({"Tess", "a new one, and longer", {}});
    CHECK(tablets.see(cookie, "/").status == 403);
    cookie = tablets.in("Tess", "a new one, and longer");
    tablets.account({"Tess", {}, true});
    CHECK(tablets.see(cookie, "/").status == 403);
    CHECK(tablets.tried("Tess", "a new one, and longer").status == 403);

    cookie = tablets.in("Inge");
    PersonRequest more{"Inge", {"instructor", "technician"}, {}, {}, {}, {}, "more work"};
    tablets.desk([&](Writing &w) { write_person(w, more); });
    CHECK(tablets.see(cookie, "/").status == 403);
    CHECK(tablets.see(tablets.in("Inge"), "/").status == 200);
}

TEST_CASE("every route is in the table of roles, and each role gets what the table says") {
    Tablets tablets;
    const std::vector<std::string> names{"Tess", "Inge", "Kim", "L1"};
    const std::vector<std::string> roles{"technician", "instructor", "keeper", "welder"};
    std::size_t granted = 0, refused = 0;
    for (std::size_t i = 0; i < names.size(); ++i) {
        std::string cookie = tablets.in(names[i]);
        for (const auto &family : page_families())
            for (const auto &route : family.routes) {
                INFO(roles[i] << " " << route.method << " " << route.pattern);
                const Access access = access_to(route.method, route.pattern, {roles[i]});
                if (roles[i] == "keeper")
                    CHECK((access == Access::all) ==
                          (route.pattern != "/link" &&
                           !(route.method == "POST" && route.pattern == "/person")));
                if (roles[i] == "welder" && route.method == "POST")
                    CHECK((access == Access::none) !=
                          (route.pattern == "/sign-out" || route.pattern == "/person/password"));
                if (route.pattern == "/sign-out") continue;
                const Answer answer = route.method == "GET" ? tablets.see(cookie, route.pattern)
                                                            : tablets.send(cookie, route.pattern);
                CHECK(says(answer, "Not for this role") == (access == Access::none));
                if (access == Access::none) {
                    CHECK(answer.status == (route.method == "GET" ? 403 : 422));
                    ++refused;
                } else {
                    ++granted;
                }
            }
    }
    CHECK(granted > 100);
    CHECK(refused > 50);
}

namespace {

/// What an attribute says wherever a page has it.
std::vector<std::string> all_of(const std::string &page, const std::string &attribute) {
    std::vector<std::string> out;
    const std::string before = attribute + "=\"";
    for (std::size_t at = 0; (at = page.find(before, at)) != std::string::npos;) {
        at += before.size();
        out.push_back(page.substr(at, page.find('"', at) - at));
    }
    return out;
}

} // namespace

TEST_CASE("nobody is offered a door that is shut to him", "[long]") {
    Tablets tablets;
    for (const std::string name : {"Tess", "Inge", "Kim", "L1"}) {
        const std::string cookie = tablets.in(name);
        std::vector<std::string> seen{"/"};
        std::size_t forms = 0;
        for (std::size_t i = 0; i < seen.size() && i < 150; ++i) {
            INFO(name << " at " << seen[i]);
            const std::size_t query = seen[i].find('?');
            Request q = tablets.asked("GET", seen[i].substr(0, query), cookie);
            if (query != std::string::npos) q.query = fields_in(seen[i].substr(query + 1), '&');
            const Answer answer = tablets.door->answer(q);
            CHECK(answer.status < 400);
            auto ways = all_of(answer.body, "href");
            ways.push_back(header(answer, "Location"));
            for (auto &way : ways)
                if (way.starts_with("/") && !way.starts_with("/files/") &&
                    std::find(seen.begin(), seen.end(), way) == seen.end())
                    seen.push_back(way);
            if (answer.body.find("method=\"post\"") == std::string::npos) continue;
            for (const auto &action : all_of(answer.body, "action")) {
                if (!action.starts_with("/") || action == "/sign-out") continue;
                INFO(action);
                ++forms;
                const Answer sent = tablets.send(cookie, action);
                CHECK_FALSE(says(sent, "Not for this role"));
            }
        }
        CHECK(seen.size() > 5);
        CHECK(forms > 0);
    }
}

TEST_CASE("a welder sees his own, and another's coupon answers as one that there is not") {
    Tablets tablets;
    const std::string cookie = tablets.in("L1");
    CHECK(header(tablets.see(cookie, "/"), "Location") == "/welders");
    const Answer mine = tablets.see(cookie, "/welders");
    CHECK(says(mine, "/welder/L1"));
    CHECK_FALSE(says(mine, "L2"));
    CHECK(header(tablets.see(cookie, "/coupon/T-1"), "Location") == "/welder/L1/coupon/T-1");
    CHECK(tablets.see(cookie, "/welder/L1").status == 200);
    CHECK(tablets.see(cookie, "/welder/L1/coupon/T-1").status == 200);
    for (const std::string way : {"/coupon/", "/welder/L1/coupon/", "/welder/L2/coupon/"}) {
        const Answer others = tablets.see(cookie, way + "T-2"), none = tablets.see(cookie, way + "T-9");
        CHECK(others.status == 404);
        CHECK(none.status == 404);
        CHECK(others.body == none.body);
    }
    CHECK(tablets.see(cookie, "/welder/L2").status == 404);
    CHECK(tablets.see(cookie, "/welder/L2").body == tablets.see(cookie, "/welder/L9").body);
    CHECK(tablets.send(cookie, "/coupon/T-1/remark", {{"text", "x"}}).status == 422);
}

TEST_CASE("the password is kept as a hash, in a file of its own that others do not read") {
    Tablets tablets;
    const std::string file = tablets.book() + ".accounts";
    CHECK((std::filesystem::status(file).permissions() &
           (std::filesystem::perms::group_all | std::filesystem::perms::others_all)) ==
          std::filesystem::perms::none);
    CHECK(test::read_file(file).find(Tablets::password) == std::string::npos);
    CHECK(test::read_file(file).find("$argon2id$") != std::string::npos);
    CHECK(test::read_file(tablets.book()).find("$argon2id$") == std::string::npos);
    CHECK_THROWS_AS(tablets.account({"Tess", "short", {}}), Refusal);
    std::filesystem::permissions(file, std::filesystem::perms::others_read,
                                 std::filesystem::perm_options::add);
    CHECK(tablets.tried("Tess", Tablets::password).status == 503);
}

TEST_CASE("what is entered signed in says so, and what is entered by a typed name does not", "[sign-in]") {
    Tablets tablets;
    const std::string cookie = tablets.in("Tess");
    CHECK(tablets.send(cookie, "/coupon/T-1/remark", {{"text", "seen on the tablet"}}).status == 303);
    tablets.ok("/coupon/T-1/remark", {{"text", "seen on this machine"}});
    Book record(tablets.book(), Ledger::Mode::read);
    const auto remarks = record.coupon("T-1").remarks;
    REQUIRE(remarks.size() == 2);
    CHECK(remarks[0].stamp.who == "Tess");
    CHECK(remarks[0].stamp.signed_in);
    CHECK_FALSE(remarks[1].stamp.signed_in);
    CHECK(record.ledger().verify().faults.empty());
    CHECK(says(tablets.see(cookie, "/coupon/T-1"), "Remark by Tess, signed in at"));
}

TEST_CASE("each change of a password or a lock is a line of a log that only its owner reads", "[sign-in]") {
    Tablets tablets;
    const std::string log = tablets.book() + ".accounts.log";
    const auto lines = [&] { return test::read_file(log); };
    const std::string before = lines();
    CHECK(before.find("\tKim\tTess\tpassword set\n") != std::string::npos);
    CHECK(before.find(Tablets::password) == std::string::npos);
    CHECK((std::filesystem::status(log).permissions() &
           (std::filesystem::perms::group_all | std::filesystem::perms::others_all)) ==
          std::filesystem::perms::none);
    const std::string cookie = tablets.in("Kim");
    CHECK(tablets.send(cookie, "/keeper/account/Inge", {{"lock", "yes"}}).status == 303);
    CHECK(tablets.send(cookie, "/keeper/account/Inge", {{"lock", "no"}}).status == 303);
    CHECK(tablets.send(cookie, "/keeper/account/Inge", {{"password", "short"}}).status == 422);
    const std::string now = lines();
    CHECK(now.starts_with(before)); // it only grows
    const std::string at = "2026-11-25T10:00:00Z";
    CHECK(now.substr(before.size()) == at + "\tKim\tInge\tlocked\n" + at + "\tKim\tInge\tunlocked\n");
    // What cannot be told is not done.
    std::filesystem::remove(log);
    std::filesystem::create_directory(log);
    CHECK(tablets.send(cookie, "/keeper/account/Inge", {{"lock", "yes"}}).status == 503);
    CHECK(tablets.tried("Inge", Tablets::password).status == 303);
}

TEST_CASE("a technician finishes his own exams, and a keeper those of others for a reason", "[sign-in]") {
    Tablets tablets;
    tablets.desk([](Writing &w) {
        register_coupon(w, {"T-9", {{"criteria", "iso-5817"}}});
        ExamRequest exam;
        exam.coupon = "T-9";
        exam.examiner = "A. Field";
        exam.level = "II";
        record_exam(w, exam);
    });
    const std::string path = "/coupon/T-9/exam/1", technician = tablets.in("Tess"),
                      keeper = tablets.in("Kim");
    CHECK(says(tablets.see(keeper, path), "Finish it for A. Field"));
    const Answer offered = tablets.see(technician, path);
    CHECK_FALSE(says(offered, "Finish it for"));
    CHECK(says(offered, "A. Field, its examiner, says what it found"));
    const Answer another =
        tablets.send(technician, path + "/finish", {{"found", "0"}, {"why", "he is away"}});
    CHECK(another.status == 422);
    CHECK(says(another, "is said by A. Field, its examiner, and not by T"));
    CHECK(tablets.send(keeper, path + "/finish", {{"found", "0"}}).status == 422);
    CHECK(tablets.send(keeper, path + "/finish", {{"found", "0"}, {"why", "he is away"}}).status == 303);
    CHECK(says(tablets.see(keeper, path), "Finished by Kim: none found, on 2026-11-"));
    CHECK(says(tablets.see(keeper, "/coupon/T-9"), "(the reason: he is away)"));
}

TEST_CASE("who signed in and begins an exam in another one's name is asked whether that is meant",
          "[sign-in]") {
    Tablets tablets;
    tablets.desk([](Writing &w) { register_coupon(w, {"T-9", {{"criteria", "iso-5817"}}}); });
    const std::string technician = tablets.in("Tess"), path = "/coupon/T-9/exam";
    std::vector<std::pair<std::string, std::string>> sent{
        {"method", "VT"}, {"examiner", "A. Field"}, {"level", "II"}};
    const Answer asked = tablets.send(technician, path, sent);
    CHECK(asked.status == 422);
    CHECK(says(asked, "and Tess is signed in: what it found is then said by that examiner"));
    const std::string before = "name=\"sure\" value=\"";
    const std::size_t at = asked.body.find(before);
    REQUIRE(at != std::string::npos);
    sent.emplace_back("sure", asked.body.substr(at + before.size(), 32));
    CHECK(tablets.send(technician, path, sent).status == 303);
    // In his own name that is not asked.
    CHECK_FALSE(says(tablets.send(technician, path, {{"method", "PT"}, {"level", "II"}}), "is signed in"));
}
