// Every field of every command given nonsense: a clear refusal or a clean take, never a crash, and nothing
// stored of what was refused.
#include "catch.hpp"
#include "cli/deeds.hpp"
#include "facts/coupon_record.hpp"
#include "run.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

using namespace beadbook;
using namespace beadbook::test;

namespace {

const std::vector<std::string> nonsense{"",
                                        " ",
                                        "-1",
                                        "-0",
                                        "0",
                                        "nan",
                                        "inf",
                                        "1e400",
                                        "99999999999999999999",
                                        "1/0",
                                        "3/",
                                        "/3",
                                        "1,5",
                                        "1.2.3",
                                        "5 parsecs",
                                        "5 deg",
                                        "5 F",
                                        "0x10",
                                        "\xff",
                                        "\xC3\x28",
                                        "a\nb",
                                        "a\tb",
                                        "\x01",
                                        "'; DROP TABLE entry; --",
                                        "{}",
                                        "[1]",
                                        "%s%n",
                                        "--",
                                        "#",
                                        "@",
                                        "../../etc",
                                        "/",
                                        "\xF0\x9F\x94\xA5",
                                        std::string(5000, 'x'),
                                        std::string(300, '9')};

/// Changes when anybody else commits anything to the record: SQLite counts for each connection.
int commits_seen(SQLite::Database &record) { return record.execAndGet("PRAGMA data_version").getInt(); }

void check_refused_or_taken(const Program &run, const std::vector<std::string> &words,
                            const std::string &input = "") {
    SQLite::Database record(run.book(), SQLite::OPEN_READONLY);
    const int before = commits_seen(record);
    const Run r = run(words, input);
    INFO(words[0] << " ... " << words.back() << "\n" << r.err);
    CHECK((r.code == 0 || r.code == 1 || r.code == 2 || r.code == 3 || r.code == 5));
    if (r.code == 2 || r.code == 3) {
        CHECK(r.err.starts_with("beadbook: error: "));
        CHECK(commits_seen(record) == before);
    } else {
        std::istringstream lines(r.err);
        for (std::string line; std::getline(lines, line);) CHECK(line.starts_with("beadbook: note: "));
    }
}

} // namespace

TEST_CASE("nonsense in every field of a coupon", "[long]") {
    const Program run;
    int n = 0;
    for (const auto &field : coupon_fields()) {
        const std::string base = "B" + std::to_string(n); // a long history is read again with each change
        run.ok({"register", base, "--thickness", "0.1in", "--weld-length", "8in"});
        for (const auto &value : nonsense) {
            check_refused_or_taken(run,
                                   {"register", "N" + std::to_string(n++), "--" + field.name + "=" + value});
            check_refused_or_taken(run, {"change", base, "--why", "slip", "--" + field.name + "=" + value});
        }
    }
    CHECK(run.ok({"verify"}).find("entries hold") != std::string::npos);
}

TEST_CASE("nonsense in the words and options of every other command", "[long]") {
    const Program run;
    run.ok({"register", "T", "--criteria", "ufgs-15216n", "--thickness", "0.1in", "--weld-length", "8in"});
    run.ok({"exam", "T", "VT"});
    run.ok({"log", "T", "gas pore 0.1 at 1"});
    for (const auto &value : nonsense) {
        for (const char *option :
             {"date", "examiner", "level", "procedure", "condition", "incomplete", "note", "replaces", "by"})
            check_refused_or_taken(run, {"exam", "T", "VT", std::string("--") + option + "=" + value});
        check_refused_or_taken(run, {"exam", "T", value});
        check_refused_or_taken(run, {"log", "T", "--exam=" + value, "gas pore 0.1 at 2"});
        check_refused_or_taken(run, {"log", "T", value});
        check_refused_or_taken(run, {"log", "T"}, value);
        check_refused_or_taken(run, {"log", "T", "gas pore " + value});
        check_refused_or_taken(run, {"log", "T", "gas pore 0.1 at " + value});
        check_refused_or_taken(run, {"log", "T", "slag l " + value + " w 0.1"});
        check_refused_or_taken(run, {"log", "T", "--file=" + value});
        check_refused_or_taken(run, {"correct", "T", "1", value, "--why", "slip"});
        check_refused_or_taken(run, {"correct", "T", value, "pore 0.1", "--why", "slip"});
        check_refused_or_taken(run, {"correct", "T", "1", "gas pore 0.1 at 1", "--why=" + value});
        check_refused_or_taken(run, {"withdraw", "T", value, "1", "--why", "slip"});
        check_refused_or_taken(run, {"withdraw", "T", "indication", value, "--why", "slip"});
        check_refused_or_taken(run, {"remark", "T", value});
        check_refused_or_taken(run, {"judge", value});
        check_refused_or_taken(run, {"judge", "T", "--class=" + value});
        check_refused_or_taken(run, {"judge", "T", "--criteria=" + value});
        check_refused_or_taken(run, {"why", "T", "--class=" + value});
        check_refused_or_taken(run, {"grade", "T", value});
        check_refused_or_taken(run, {"grade", "T", "failed", "--remark=" + value});
        check_refused_or_taken(run, {"show", value});
        check_refused_or_taken(run, {"history", value});
        check_refused_or_taken(run, {"coupons", "--welder=" + value});
        check_refused_or_taken(run, {"criteria", "show", value});
        check_refused_or_taken(run, {"import", "json"}, value);
        check_refused_or_taken(run, {"import", "csv", "coupons"}, value);
        check_refused_or_taken(run, {value});
    }
    CHECK(run.ok({"verify"}).find("entries hold") != std::string::npos);
}

TEST_CASE("a busy record is waited for, then reported, and nothing is stored") {
    const Program run;
    run.ok({"register", "T"});
    SQLite::Database other(run.book(), SQLite::OPEN_READWRITE);
    other.exec("BEGIN IMMEDIATE");
    const Run r = run({"remark", "T", "x"});
    CHECK(r.code == 4);
    CHECK(r.err.find("another program is writing to the record; nothing was stored, try again") !=
          std::string::npos);
    other.exec("ROLLBACK");
    run.ok({"remark", "T", "x"});
}

TEST_CASE("a read-only record can be read and says that it cannot be written") {
    if (geteuid() != 0) {
        const Program run;
        run.ok({"register", "T"});
        chmod(run.book().c_str(), 0444);
        CHECK(run({"remark", "T", "x"}).code == 4);
        return;
    }
    // Root may write anywhere, so a child gives its rights up first.
    const Program run;
    run.ok({"register", "T"});
    chmod(run.book().c_str(), 0444);
    chmod(run.file("").c_str(), 0555);
    const pid_t child = fork();
    if (child == 0) {
        if (setgid(65534) != 0 || setuid(65534) != 0) _exit(99);
        const Run read = run({"coupons"}), written = run({"remark", "T", "x"});
        const bool says_so = written.err.find("read-only") != std::string::npos;
        _exit(read.code * 10 + (says_so ? written.code : 9));
    }
    int status = 0;
    waitpid(child, &status, 0);
    CHECK(WEXITSTATUS(status) == 4);
}
