// The records of several shops, read as one.
#include "catch.hpp"
#include "json.hpp"
#include "temporary.hpp"
#include "test_coupon.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <filesystem>

using namespace beadbook::test;

namespace {

/// Two shops with a coupon T-1 of a welder L1 each: north accepts and passes it, south rejects it.
struct TwoShops {
    TwoShops() {
        test_coupon(north, "T-1", "2026-11-02");
        test_coupon(south, "T-1", "2026-11-03", "failed");
        south.ok({"reopen", "T-1", "3", "--why", "one was missed"});
        south.ok({"log", "T-1", "crack 0.2 at 2 in", "--exam", "3", "--finish"});
        test_coupon(south, "S-2", "2026-11-04");
    }
    std::vector<std::string> join_words(const std::string &folder) const {
        return {"join", north.file(folder), "north=" + north.book(), "south=" + south.book()};
    }
    std::string joined() const {
        north.ok(join_words("all"));
        return north.file("all");
    }

    Program north, south;
};

} // namespace

TEST_CASE("joined records are told apart by shop, and each coupon is judged as in its own", "[join]") {
    const TwoShops shops;
    const Program &run = shops.north;
    CHECK_THAT(run.ok(shops.join_words("all")), says("south: 2 coupons, "));
    const std::string all = run.file("all");
    const auto list = json(run, {"coupons", "--book", all});
    REQUIRE(list.size() == 3);
    CHECK(list[0]["id"] == "north.T-1");
    CHECK(list[0]["fields"]["welder"] == "north.L1");
    CHECK(list[0]["verdict"] == "accept");
    CHECK(list[1]["id"] == "south.T-1");
    CHECK(list[1]["verdict"] == "reject");
    CHECK(list[2]["id"] == "south.S-2");

    const auto of = [&](const std::string &welder) {
        return json(run, {"coupons", "--book", all, "--welder", welder}).size();
    };
    CHECK(of("north.L1") == 1);
    CHECK(of("south.L1") == 2);
    CHECK(of("L1") == 3); // whoever is called so in any of them
    CHECK(of("south.L2") == 0);

    const std::string summary = run.ok({"summary", "--book", all});
    CHECK_THAT(summary, says("north.L1"));
    CHECK_THAT(summary, says("south.L1"));
    const std::string lines = run.ok({"export", "lines", "--book", all});
    CHECK(std::count(lines.begin(), lines.end(), '\n') == 3);
    CHECK_THAT(lines, says("\"id\":\"south.T-1\""));
    CHECK_THAT(run.ok({"export", "csv", "verdicts", "--book", all}), says("north.T-1"));
    // They are marks like any other.
    const Program third;
    CHECK(third.ok({"import", "lines"}, lines) == "3 coupons imported\n");
    CHECK(third({"import", "lines"}, "\n").code == 3); // no coupon in it
}

TEST_CASE("each record of a joined folder keeps its chain", "[join]") {
    const TwoShops shops;
    const Program &run = shops.north;
    const std::string all = shops.joined();
    const auto verified = json(run, {"verify", "--replay", "--book", all});
    CHECK(verified["holds"] == true);
    REQUIRE(verified["shops"].size() == 2);
    CHECK(verified["shops"][0]["head"] == json(shops.north, {"verify"})["head"]);
    CHECK(verified["shops"][1]["head"] == json(shops.south, {"verify"})["head"]);
    SQLite::Database(all + "/south.db", SQLite::OPEN_READWRITE)
        .exec("UPDATE coupon_line SET body = '{}' WHERE coupon = 'T-1'");
    const Run changed = run({"verify", "--book", all});
    CHECK(changed.code == 4);
    CHECK_THAT(changed.err, says("south: what lists say of coupon T-1"));
    CHECK(run({"verify", "--book", all, "--head", std::string(64, 'a')}).code == 2);
}

TEST_CASE("of a joined folder in which a shop's record is missing or is another nothing is told", "[join]") {
    const TwoShops shops;
    const Program &run = shops.north;
    const std::string all = shops.joined(), north = all + "/north.db", kept = run.file("kept.db");
    std::filesystem::copy_file(north, kept);
    const auto told = [&](const char *what) {
        const Run done = run({what, "--book", all});
        CHECK_THAT(done.err, done.code == 4 ? says("north.db") : says(""));
        return done.code;
    };
    for (const char *what : {"verify", "coupons", "summary"}) CHECK(told(what) == 0);
    std::filesystem::remove(north);
    for (const char *what : {"verify", "coupons", "summary"}) CHECK(told(what) == 4);
    std::filesystem::copy_file(shops.south.book(), north); // which is written to, and no copy
    CHECK(told("verify") == 4);
    write_file(north, "");
    CHECK(told("verify") == 4);
    std::filesystem::remove(north);
    std::filesystem::copy_file(kept, north);
    CHECK(told("verify") == 0);
}

TEST_CASE("nothing is entered in a joined folder or in its records", "[join]") {
    const TwoShops shops;
    const std::string all = shops.joined();
    const Run folder = shops.north({"remark", "T-1", "x", "--book", all});
    CHECK(folder.code != 0);
    CHECK_THAT(folder.err, says("what is entered goes into the shop's own record"));
    const Run one = shops.north({"remark", "T-1", "x", "--book", all + "/north.db"});
    CHECK(one.code == 4);
    CHECK_THAT(one.err, says("nothing is entered in it"));
    CHECK_THAT(shops.north.ok({"show", "T-1", "--book", all + "/north.db"}), says("T-1"));
    CHECK(shops.north({"coupons", "--newest", "1", "--book", all}).code == 2);
    shops.north.ok({"remark", "T-1", "x"}); // the record itself goes on
}

TEST_CASE("a folder is joined whole or not at all", "[join]") {
    const TwoShops shops;
    const Program &run = shops.north;
    const auto refused = [&](const std::vector<std::string> &words, const std::string &why) {
        const auto files = std::distance(std::filesystem::directory_iterator(run.file("")), {});
        const Run done = run(words);
        INFO(done.err);
        CHECK(done.code != 0);
        CHECK_THAT(done.err, says(why));
        CHECK(files == std::distance(std::filesystem::directory_iterator(run.file("")), {}));
    };
    run.ok({"backup", run.file("copy.db")});
    run.ok({"remark", "T-1", "later"});
    const std::string north = "north=" + run.book(), to = run.file("new");
    refused({"join", to, north, "copy=" + run.file("copy.db")}, "the same record");
    refused({"join", to, "copy=" + run.file("copy.db"), north}, "the same record");
    refused({"join", to, north, "North=" + shops.south.book()}, "a name of its own");
    refused({"join", to, north, "a.b=" + shops.south.book()}, "no name of a shop");
    refused({"join", to, north, "south=" + run.file("none.db")}, "no record yet");
    refused({"join", to, north, "south"}, "expected SHOP=FILE");
    shops.joined();
    refused({"join", run.file("all"), north}, "is there already");
}
