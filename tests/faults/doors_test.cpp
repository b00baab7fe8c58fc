// What must not get in, or must not be waited for: names that are no files, pipes, folders that cannot be
// searched, texts that act on a screen or a spreadsheet, files too deep or too large.
#include "catch.hpp"
#include "cli/run.hpp"
#include "criteria/shipped.hpp"
#include "faults/child.hpp"
#include "records/codecs/located.hpp"
#include "records/csv.hpp"
#include "records/ledger.hpp"
#include "records/schema.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <fcntl.h>
#include <nlohmann/json.hpp>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

using namespace beadbook;
using namespace beadbook::test;

namespace {

std::size_t files_in(const std::string &folder) {
    std::size_t out = 0;
    for ([[maybe_unused]] const auto &one : std::filesystem::directory_iterator(folder)) ++out;
    return out;
}

} // namespace

TEST_CASE("a name that SQLite would keep nowhere is refused, and so is a backup by it", "[faults]") {
    const Program run;
    run.ok({"register", "T-1"});
    const std::size_t files = files_in(run.file(""));
    for (const std::string name : {"", ":memory:", ":x", "file:book.db", "file::memory:?cache=shared"}) {
        INFO("'" << name << "'");
        CHECK(run({"register", "T-2", "--book", name}).code == 4);
        CHECK(run({"coupons", "--book", name}).code == 4);
        CHECK(run({"backup", name}).code == 4);
    }
    CHECK(run({"register", "T-2", "--book", run.file("no/such/folder.db")}).code == 4);
    CHECK(files_in(run.file("")) == files);
}

TEST_CASE("a new record never begins in silence", "[faults]") {
    const Program run;
    const Run first = run({"register", "T-1"});
    CHECK(first.code == 0);
    CHECK_THAT(first.err, says("beadbook: note: a new record begins: " + run.book()));
    CHECK(run({"register", "T-2"}).err.empty());
    const Run slip = run({"enrol", "L1", "--name", "J. Reef", "--book", run.file("bok.db"), "--json"});
    CHECK(nlohmann::json::parse(slip.out)["notes"][0] == "a new record begins: " + run.file("bok.db"));
    // Also where the command then failed.
    const Run failed = run({"import", "json", "--book", run.file("other.db")}, "no JSON");
    CHECK(failed.code == 3);
    CHECK_THAT(failed.err, says("a new record begins: " + run.file("other.db")));
    CHECK_THAT(run({"register", "T-1", "--dry-run", "--book", run.file("dry.db")}).err, !says("begins"));
    CHECK_FALSE(std::filesystem::exists(run.file("dry.db")));
}

TEST_CASE("a pipe or a device is no file to wait for", "[faults]") {
    const Program run;
    run.ok({"register", "T-1"});
    REQUIRE(mkfifo(run.file("pipe").c_str(), 0600) == 0);
    for (const auto &words : std::vector<std::vector<std::string>>{
             {"coupons", "--book", run.file("pipe")},
             {"register", "T-2", "--book", run.file("pipe")},
             {"coupons", "--book", "/dev/null"},
             {"import", "json", "--file", run.file("pipe")},
             {"import", "json", "--file", "/dev/zero"},
             {"log", "T-1", "--file", run.file("pipe")},
             {"criteria", "check", run.file("pipe.yaml")},
             {"backup", run.file("pipe")},
             {"export", "json", "--output", run.file("pipe")},
         }) {
        if (words.front() == "criteria") REQUIRE(mkfifo(run.file("pipe.yaml").c_str(), 0600) == 0);
        const Run ended = run(words);
        INFO(words.front() << ": " << ended.err);
        CHECK((ended.code == 3 || ended.code == 4));
    }
}

TEST_CASE("a folder that may not be searched is no record that is not there", "[faults]") {
    if (geteuid() != 0) {
        WARN("skipped: only root can become somebody else");
        return;
    }
    const Program run;
    run.ok({"register", "T-1"});
    chmod(run.file("").c_str(), 0600);
    const pid_t child = fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        if (setgid(65534) != 0 || setuid(65534) != 0) _exit(99);
        const Run read = run({"coupons"});
        _exit(read.code == 4 && read.err.find("cannot be looked at") != std::string::npos ? 0 : 1);
    }
    int status = 0;
    REQUIRE(waitpid(child, &status, 0) == child);
    chmod(run.file("").c_str(), 0700);
    CHECK(WEXITSTATUS(status) == 0);
}

TEST_CASE("reading an old record does not change a byte of it; writing through a WAL is undone", "[faults]") {
    const TemporaryFolder folder;
    for (int version = 1; version < schema::newest_version(); ++version) {
        const std::string old = folder.file("old" + std::to_string(version) + ".db");
        {
            SQLite::Database db(old, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
            const char *files[] = {"0001_ledger.sql", "0002_welders.sql", "0003_coupons_of_welder.sql",
                                   "0004_people_equipment.sql"};
            for (int v = 0; v < std::min(version, 4); ++v) db.exec(shipped_file(files[v]));
            db.exec("PRAGMA user_version = " + std::to_string(std::min(version, 4)) +
                    "; PRAGMA application_id = 1111834948");
        }
        const std::string before = read_file(old);
        CHECK(Ledger(old, Ledger::Mode::read).verify().faults.empty());
        CHECK(Ledger(old, Ledger::Mode::inspect).verify().faults.empty());
        CHECK(read_file(old) == before);
    }
    const Template start;
    const std::string wal = folder.file("wal.db");
    start.copy_to(wal);
    SQLite::Database(wal, SQLite::OPEN_READWRITE).exec("PRAGMA journal_mode = WAL");
    CHECK(sound_entries(wal) == start.entries);
    CHECK(run({{"remark", "T-1", "x"}, wal}).code == 0);
    CHECK(sound_entries(wal) == start.entries + 1);
    CHECK(SQLite::Database(wal).execAndGet("PRAGMA journal_mode").getString() == "delete");
}

TEST_CASE("a copy may be read by those who may read the record", "[faults]") {
    const Program run;
    run.ok({"register", "T-1"});
    chmod(run.book().c_str(), 0640);
    run.ok({"backup", run.file("copy.db")});
    struct stat of {};
    REQUIRE(stat(run.file("copy.db").c_str(), &of) == 0);
    CHECK((of.st_mode & 0777) == 0640);
    CHECK(files_in(run.file("")) == 2);
}

TEST_CASE("what acts on a screen or is not seen there is told by its number", "[faults]") {
    const Program run;
    const std::string turned = "fine \xE2\x80\xAE txt"; // U+202E turns the direction of writing
    write_file(run.file("own.yaml"), [&] {
        std::string text = shipped_file("iso-5817.yaml");
        const auto at = text.find("title: ");
        return text.replace(at, 7, "title: \"\\e[2J" + turned + "\" # ");
    }());
    run.ok({"register", "T-1"});
    run.ok({"remark", "T-1", turned});
    const std::string shown = run.ok({"history", "T-1"});
    CHECK_THAT(shown, says("fine <U+202E> txt"));
    CHECK_THAT(shown, !says(turned));
    const std::string json = run.ok({"history", "T-1", "--json"});
    CHECK_THAT(json, says("fine \\u202e txt"));
    CHECK(nlohmann::json::parse(json)[1]["body"]["text"] == turned);
    for (const auto &words : std::vector<std::vector<std::string>>{
             {"criteria", "show", run.file("own.yaml")}, {"exam", "T-1", "\x1B[2J"}, {"show", turned}}) {
        const Run ended = run(words);
        INFO(ended.out << ended.err);
        CHECK(ended.out.find('\x1B') == std::string::npos);
        CHECK(ended.err.find('\x1B') == std::string::npos);
        CHECK_THAT(ended.out + ended.err, !says("\xE2\x80\xAE"));
    }
}

TEST_CASE("a spreadsheet runs nothing of an export, and what it holds is read back unchanged", "[faults]") {
    const std::vector<std::pair<std::string, std::string>> cells{
        {"=1+1", "'=1+1"}, {"+cmd", "'+cmd"}, {"-x", "'-x"},         {"@SUM(A1)", "'@SUM(A1)"},
        {"'=1", "''=1"},   {"''-x", "'''-x"}, {"-0.5", "-0.5"},      {"+12", "+12"},
        {"'tis", "'tis"},  {"a=b", "a=b"},    {"=1,2", "\"'=1,2\""}, {"", ""},
        {"'", "'"},        {"-5 F", "'-5 F"}, {"-", "'-"},           {"\xEF\xBB\xBFx", "\"\xEF\xBB\xBFx\""},
    };
    for (const auto &[cell, written] : cells) {
        INFO(cell);
        CHECK(write_csv_row({cell, "x"}) == written + ",x\r\n");
        CHECK(read_csv(write_csv_row({cell, "x"})) == std::vector<std::vector<std::string>>{{cell, "x"}});
        CHECK(read_csv(write_csv_row({cell})) == std::vector<std::vector<std::string>>{{cell}});
    }
    const Program run, other;
    run.ok({"register", "T-1", "--note", "=HYPERLINK(\"http://127.0.0.1\")", "--temperature", "-40 F"});
    const std::string sheet = run.ok({"export", "csv", "coupons"});
    CHECK_THAT(sheet, says("'=HYPERLINK"));
    other.ok({"import", "csv", "coupons"}, sheet);
    CHECK(other.ok({"export", "json"}) == run.ok({"export", "json"}));
}

TEST_CASE("a file that is nested too deeply or holds too much is refused where it does", "[faults]") {
    const Program run;
    run.ok({"register", "T-1"});
    run.ok({"exam", "T-1", "VT"});
    const std::string deep(100'000, '[');
    const std::string head = R"({"format": "beadbook exchange", "version": 1, "coupons": )";
    const Run json = run({"import", "json"}, head + deep);
    CHECK(json.code == 3);
    CHECK_THAT(json.err, says("1:" + std::to_string(head.size() + 24) +
                              ": lists and objects are nested deeper than 24"));
    for (const std::string column : {"conditions", "equipment"}) {
        const Run sheet = run({"import", "csv", "exams"},
                              "coupon,exam,method,date," + column + "\nT-1,2,VT,2026-11-20," + deep + "\n");
        INFO(column);
        CHECK(sheet.code == 3);
        CHECK(sheet.err.size() < 2000);
    }
    CHECK(codec::read_located("[1, 2, 3]", 4).items.size() == 3);
    CHECK_THROWS_WITH(codec::read_located("[1, 2, 3]", 3), says("1:8: more than 3 values"));
    CHECK(run({"register", "T-2", "--weld-length", "1700 m"}).code == 3);
    CHECK_THAT(run({"register", "T-2", "--weld-length", "1700 m"}).err, says("far too large"));
}
