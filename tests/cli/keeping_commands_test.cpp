// verify, backup, export and import on the command line: words, exit codes, messages.
#include "catch.hpp"
#include "operations/bulk.hpp"
#include "run.hpp"
#include "test_coupon.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <cstdio>
#include <nlohmann/json.hpp>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>

using namespace beadbook;
using namespace beadbook::test;

namespace {

void examined_coupon(const Program &run) {
    run.ok({"register", "T-1", "--criteria", "mil-hdbk-1890-table-3", "--class", "2", "--joint", "groove",
            "--thickness", "0.150in", "--weld-length", "8in", "--magnetic", "yes", "--material", "steel",
            "--process", "GTAW"});
    for (const char *exam : {"VT", "MT", "RT"})
        run.ok({"exam", "T-1", exam, "--examiner", "A. Field", "--level", "II"});
}

/// As somebody with a database program does it, who leaves the guards as he found them.
void cut_off(const Program &run, const std::string &which) {
    SQLite::Database db(run.book(), SQLite::OPEN_READWRITE);
    const std::string guard =
        db.execAndGet("SELECT sql FROM sqlite_schema WHERE name = 'entry_never_goes'").getString();
    db.exec("DROP TRIGGER entry_never_goes; DELETE FROM entry WHERE " + which);
    db.exec(guard);
}

std::string head_of(const Program &run) {
    return nlohmann::json::parse(run.ok({"verify", "--json"}))["head"];
}

} // namespace

TEST_CASE("verify ends with 0 where all holds and with 4 where it does not") {
    const Program run;
    examined_coupon(run);
    run({"judge", "T-1"});
    const std::string head = head_of(run);
    CHECK_THAT(run.ok({"verify"}), says("5 entries hold. Head: " + head));
    CHECK_THAT(run.ok({"verify", "--replay", "--head", head}),
               says("1 verdict judged again and 0 ranges worked out again, all the same"));
    const Run other = run({"verify", "--head", std::string(64, 'a')});
    CHECK(other.code == 4);
    CHECK_THAT(other.err,
               says("beadbook: error: the record ends with " + head + ", not with the hash you gave"));
    CHECK(other.out.empty());
    SQLite::Database(run.book(), SQLite::OPEN_READWRITE)
        .exec("DROP TRIGGER entry_never_changes; UPDATE entry SET who = 'x' WHERE seq = 2");
    const Run broken = run({"verify", "--replay"});
    CHECK(broken.code == 4);
    CHECK_THAT(broken.err, says("beadbook: error: entry 2 does not hold"));
}

TEST_CASE("where entries about a coupon were cut off nothing is written about it, and nothing sealed") {
    const Program run;
    examined_coupon(run);
    run.ok({"log", "T-1", "--exam", "1", "crack 0.2 at 2"});
    cut_off(run, "kind = 'indication'");
    for (const auto &words : {std::vector<std::string>{"verify"},
                              {"remark", "T-1", "hello"},
                              {"finish", "T-1", "VT", "--found", "none"},
                              {"seal", run.file("s.seal"), "--key", run.file("key"), "--new-key"}}) {
        const Run refused = run(words);
        INFO(words.front() << refused.err);
        CHECK(refused.code == (words.front() == "seal" ? 3 : 4));
        CHECK_THAT(refused.err, says("entries about it may have been cut off"));
    }
    CHECK_THAT(run.ok({"refresh"}), says("What they said of T-1 did not follow"));
}

TEST_CASE("where entries about a coupon were cut off its accept does not stand plain") {
    const Program run;
    examined_coupon(run);
    for (const char *exam : {"VT", "MT", "RT"}) run.ok({"finish", "T-1", exam, "--found", "none"});
    CHECK(run({"judge", "T-1"}).code == 0);
    run.ok({"grade", "T-1", "failed", "--remark", "the root was ground out before anybody looked"});
    CHECK_THAT(flat(run.ok({"why", "T-1"})), !says("cut off"));
    cut_off(run, "kind = 'grade'");
    for (const auto &words : {std::vector<std::string>{"why", "T-1"}, {"judge", "T-1", "--no-record"}}) {
        const Run told = run(words);
        INFO(words.front() << told.out << told.err);
        CHECK(told.code == 0);
        CHECK_THAT(flat(told.out), says("Caution, what lists say of coupon T-1") &&
                                       says("entries about it may have been cut off"));
    }
    run.ok({"print", "coupon", "T-1", "--html", run.file("t.html")});
    CHECK_THAT(flat(read_file(run.file("t.html"))), says("entries about it may have been cut off"));
    run.ok({"refresh"});
    CHECK_THAT(flat(run.ok({"why", "T-1"})), !says("cut off"));
    CHECK(run({"verify"}).code == 0);
}

TEST_CASE("nobody is qualified by a coupon of which entries were cut off") {
    const Program run;
    run.ok({"enrol", "L1", "--name", "J. Reef"});
    test_coupon(run, "Q-1", "2026-10-05");
    run.ok({"qualify", "Q-1", "--rules", "asme-ix"});
    CHECK_THAT(flat(run.ok({"welder", "L1"})), says("GTAW by asme-ix: valid"));
    run.ok({"grade", "Q-1", "failed", "--remark", "the bends opened after all"});
    cut_off(run, "kind = 'grade' AND seq = (SELECT max(seq) FROM entry)");
    for (const auto &words : {std::vector<std::string>{"welder", "L1"}, {"record", "L1", "1"}})
        CHECK_THAT(flat(run(words).out), says("in doubt") && says("entries about it may have been cut off"));
    CHECK_THAT(run({"welder", "L1", "--json"}).out, says("in doubt"));
}

TEST_CASE("who is enrolled or gets another role later bears on lists as on verdicts") {
    const Program run;
    examined_coupon(run);
    for (const char *exam : {"VT", "MT", "RT"}) run.ok({"finish", "T-1", exam, "--found", "none"});
    CHECK(run({"judge", "T-1"}).code == 0);
    run.ok({"enrol", "L2", "--name", "A. Field"});
    CHECK(run({"verify"}).code == 0);
    CHECK_THAT(flat(run.ok({"coupons"})), says("accept, with cautions"));
    CHECK_THAT(flat(run.ok({"why", "T-1"})), says("A. Field, on record as a welder alone, made exam 1"));
    run.ok({"person", "A. Field", "--role", "instructor"});
    CHECK(run({"verify"}).code == 0);
    CHECK_THAT(flat(run({"why", "T-1"}).out), !says("welder alone"));
}

TEST_CASE("backup says where it wrote, and never overwrites") {
    const Program run;
    examined_coupon(run);
    CHECK(run.ok({"backup", run.file("copy.db")}) ==
          "backup written to " + run.file("copy.db") + ", and its chain of entries verified\n");
    CHECK(run({"verify", "--book", run.file("copy.db")}).code == 0);
    const Run again = run({"backup", run.file("copy.db")});
    CHECK(again.code == 3);
    CHECK_THAT(again.err, says("a backup never overwrites"));
    CHECK(run({"backup"}).code == 2);
}

TEST_CASE("an export goes to the output or to a new file, and is imported again") {
    const Program run, other, sheets;
    examined_coupon(run);
    run.ok({"log", "T-1", "--exam", "3", "gas pore 0.055 at 2 # \"quoted\", with, commas",
            "slag from 2 to 2.4 across left 0.1"});
    const std::string json = run.ok({"export", "json"});
    CHECK(run.ok({"export", "json", "--output", run.file("all.json")}) ==
          "written to " + run.file("all.json") + "\n");
    CHECK(read_file(run.file("all.json")) == json);
    const Run again = run({"export", "csv", "exams", "-o", run.file("all.json")});
    CHECK(again.code == 3);
    CHECK_THAT(again.err, says("is there already; nothing is overwritten"));
    CHECK(read_file(run.file("all.json")) == json);
    CHECK(run({"export", "json", "-o", run.file("no/folder/all.json")}).code == 3);
    CHECK(run({"export", "json", "--json"}).code == 2);
    CHECK(run({"export", "json", "coupons"}).code == 2);

    CHECK(other.ok({"import", "json", "--file", run.file("all.json")}) == "1 coupon imported\n");
    CHECK(other.ok({"export", "json"}) == json);
    CHECK(sheets.ok({"import", "csv", "coupons"}, run.ok({"export", "csv", "coupons"})) ==
          "1 row imported\n");
    CHECK(sheets.ok({"import", "csv", "exams"}, run.ok({"export", "csv", "exams"})) == "3 rows imported\n");
    CHECK(sheets.ok({"import", "csv", "indications"}, run.ok({"export", "csv", "indications"})) ==
          "2 rows imported\n");
    CHECK(sheets.ok({"export", "json"}) == json);
    CHECK(nlohmann::json::parse(sheets.ok({"history", "T-1", "--json"}))[0]["by"] == "tester");
}

TEST_CASE("an import that is refused ends with 3, names every mistake and stores nothing") {
    const Program run;
    examined_coupon(run);
    const std::string head = head_of(run);
    const std::string begin = R"({"format": "beadbook exchange", "version": 1, "coupons": )";
    const std::vector<std::pair<std::string, std::string>> json{
        {"", "beadbook: error: this is not JSON: 1:1: "},
        {R"({"format": "beadbook exchange", "version": "1", "coupons": []})",
         "version: expected the number 1"},
        {begin + R"([{"id": "T-1"}]})", "coupon T-1 is registered already"},
        {begin + R"([{"id": "N", "criteria": "x"}]})", "1:71: coupon 1 (N): unknown key 'criteria'"},
        {begin + R"([{"id": "N", "fields": {"criteria": "nothing"}}]})",
         "there is no criteria set 'nothing'"},
        {begin + std::string(100'000, '['), "nested deeper than"},
    };
    for (const auto &[text, expected] : json) {
        INFO(text.substr(0, 200));
        const Run r = run({"import", "json"}, text);
        CHECK(r.code == 3);
        CHECK_THAT(r.err, says(expected));
        CHECK(r.out.empty());
    }
    const Run rows = run({"import", "csv", "indications"},
                         "coupon,exam,type,at\nT-1,3,crack,99\nT-1,3,crak,1\nT-1,3,crack,1\n");
    CHECK(rows.code == 3);
    CHECK_THAT(rows.err, says("2 rows cannot be taken, nothing was stored:\nrow 2: "));
    CHECK_THAT(rows.err, says("\nrow 3: 'crak' is no type of imperfection"));
    CHECK(head_of(run) == head);
    const Run doubt =
        run({"import", "json"}, begin + R"([{"id": "N", "fields": {"process": "GTAW"}, "exams": [
        {"method": "VT", "date": "2026-11-20", "indications": [{"type": "slag inclusion"}]}]}]})");
    CHECK(doubt.code == 0);
    CHECK_THAT(doubt.err, says("beadbook: note: coupon N: #1: slag, but GTAW has no flux"));
}

TEST_CASE("another program reads and logs while a long import is prepared") {
    const Program run;
    examined_coupon(run);
    run.ok({"register", "T-2", "--weld-length", "8 in"});
    run.ok({"exam", "T-2", "VT"});
    std::string rows = "coupon,exam,type,size,at\n";
    for (int i = 0; i < 5'000; ++i)
        rows += "T-1,3,gas pore,0.0" + std::to_string(10 + i % 90) + "," + std::to_string(i % 8) + "\n";
    write_file(run.file("found.csv"), rows);
    const pid_t child = fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        if (!std::freopen("/dev/null", "w", stdout)) _exit(126);
        execl(BEADBOOK_PROGRAM, "beadbook", "import", "csv", "indications", "--file",
              run.file("found.csv").c_str(), "--book", run.book().c_str(), "--by", "importer", nullptr);
        _exit(127);
    }
    // All of these must be taken, before, while and after the import holds the record.
    int status = 0, logged = 0;
    for (; waitpid(child, &status, WNOHANG) == 0; ++logged) {
        CHECK(run({"log", "T-2", "crack at 1", "--again"}).code == 0);
        CHECK(run({"show", "T-2"}).code == 0);
    }
    CHECK(WIFEXITED(status));
    CHECK(WEXITSTATUS(status) == 0);
    CHECK(logged > 0);
    CHECK(nlohmann::json::parse(run.ok({"coupons", "--json"}))[0]["indications"] == 5'000);
    CHECK(nlohmann::json::parse(run.ok({"coupons", "--json"}))[1]["indications"] == logged);
    CHECK(run({"verify"}).code == 0);
    // Entries of both programs lie between each other, or the other one wrote before and after: the import is
    // one run of entries.
    const auto history = nlohmann::json::parse(run.ok({"history", "T-1", "--json"}));
    const auto first = history[4]["entry"].get<int>(), last = history.back()["entry"].get<int>();
    CHECK(last - first == 4'999);
}
