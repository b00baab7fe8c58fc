// Ways to tamper with a record, one a row, each with what must find it.
#include "catch.hpp"
#include "cli/run.hpp"
#include "faults/child.hpp"
#include "records/behind.hpp"
#include "records/ledger_rows.hpp"
#include "records/schema.hpp"

#include <functional>

using namespace beadbook;
using namespace beadbook::test;

namespace {

using Tampering = std::function<void(const std::string &path)>;

/// What finds it, beside `verify`, which finds all.
enum class Also {
    nothing, ///< what was changed lies behind the newest entries that a write looks at, or is not read by it
    write,   ///< nothing more is written to the record
    read_write, ///< and nothing is read from it
};

struct Row {
    const char *what;
    Tampering tampering;
    const char *finds; ///< words of verify
    Also also = Also::write;
};

/// Rows changed, the tables left as they are.
Tampering rows(const std::string &sql) {
    return [sql](const std::string &path) { behind(path, sql); };
}
/// The tables changed.
Tampering tables(const std::string &sql) {
    return [sql](const std::string &path) { SQLite::Database(path, SQLite::OPEN_READWRITE).exec(sql); };
}
/// The text of a table, trigger or view changed where SQLite keeps it.
Tampering text_of(const std::string &name, const std::string &from, const std::string &to) {
    return [=](const std::string &path) {
        SQLite::Database db(path, SQLite::OPEN_READWRITE);
        db.exec("PRAGMA writable_schema = ON");
        SQLite::Statement change(
            db, "UPDATE sqlite_schema SET sql = replace(sql, ?, ?) WHERE name = ? AND instr(sql, ?) > 0");
        change.bind(1, from);
        change.bind(2, to);
        change.bind(3, name);
        change.bind(4, from);
        REQUIRE(change.exec() == 1);
    };
}
/// By somebody who knows how hashes are made: an entry changed, and all that follow chained anew.
Tampering chained_anew(std::int64_t seq, const std::function<void(Entry &)> &change) {
    return [=](const std::string &path) {
        std::vector<Entry> all;
        {
            SQLite::Database db(path, SQLite::OPEN_READONLY);
            SQLite::Statement query(db, std::string("SELECT ") + ledger_rows::columns +
                                            " FROM entry ORDER BY seq");
            while (query.executeStep()) all.push_back(ledger_rows::entry_from(query));
        }
        std::string sql, previous(64, '0');
        for (auto &e : all) {
            if (e.seq == seq) change(e);
            e.previous = previous;
            e.hash = previous = hash_of(e);
            std::string body;
            for (const char c : e.body) body += c == '\'' ? std::string("''") : std::string(1, c);
            sql += "UPDATE entry SET kind = '" + e.kind + "', body = '" + body + "', previous = '" +
                   e.previous + "', hash = '" + e.hash + "' WHERE seq = " + std::to_string(e.seq) + ";";
        }
        behind(path, sql);
    };
}
/// An entry replaced by INSERT OR REPLACE, which no trigger sees, with a hash of its own that holds.
Tampering replaced(std::int64_t seq) {
    return [=](const std::string &path) {
        SQLite::Database db(path, SQLite::OPEN_READWRITE);
        Entry e;
        {
            SQLite::Statement query(db, std::string("SELECT ") + ledger_rows::columns +
                                            " FROM entry WHERE seq = ?");
            query.bind(1, seq);
            REQUIRE(query.executeStep());
            e = ledger_rows::entry_from(query);
        }
        e.who = "somebody else";
        SQLite::Statement put(
            db, "INSERT OR REPLACE INTO entry (seq, at, who, kind, subject, exam, number, body, previous, "
                "hash) VALUES (?,?,?,?,?,?,?,?,?,?)");
        put.bind(1, e.seq);
        put.bind(2, e.at);
        put.bind(3, e.who);
        put.bind(4, e.kind);
        put.bind(5, e.subject);
        if (e.exam) put.bind(6, *e.exam);
        if (e.number) put.bind(7, *e.number);
        put.bind(8, e.body);
        put.bind(9, e.previous);
        put.bind(10, hash_of(e));
        put.exec();
    };
}

const std::string forged_view =
    "DROP VIEW standing; CREATE VIEW standing AS SELECT * FROM entry WHERE kind <> 'indication'";

const std::vector<Row> &all_rows() {
    static const std::vector<Row> out{
        // Entries.
        {"a body", rows("UPDATE entry SET body = replace(body, '0.04', '0.01') WHERE seq = 3"),
         "entry 3 does not hold"},
        {"who", rows("UPDATE entry SET who = 'x' WHERE seq = 2"), "entry 2 does not hold"},
        {"when", rows("UPDATE entry SET at = '2020-01-01T00:00:00Z' WHERE seq = 1"), "entry 1 does not hold"},
        {"the kind", rows("UPDATE entry SET kind = 'remark' WHERE seq = 4"), "entry 4 does not hold"},
        {"the coupon", rows("UPDATE entry SET subject = 'T-2' WHERE seq = 3"), "entry 3 does not hold"},
        {"the exam", rows("UPDATE entry SET exam = 2 WHERE seq = 3"), "entry 3 does not hold"},
        {"the number", rows("UPDATE entry SET number = 7 WHERE seq = 3"), "entry 3 does not hold"},
        {"no number", rows("UPDATE entry SET number = NULL WHERE seq = 3"), "entry 3 does not hold"},
        {"what it supersedes", rows("UPDATE entry SET supersedes = 3, reason = 'x' WHERE seq = 4"),
         "entry 4 does not hold"},
        {"the hash before", rows("UPDATE entry SET previous = hash WHERE seq = 5"), "entry 5 does not hold"},
        {"the hash", rows("UPDATE entry SET hash = 'x' WHERE seq = 5"), "entry 5 does not hold"},
        {"the first one gone", rows("DELETE FROM entry WHERE seq = 1"), "entry 1 is missing",
         Also::read_write},
        {"one gone", rows("DELETE FROM entry WHERE seq = 4"), "entry 4 is missing", Also::read_write},
        {"one numbered otherwise", rows("UPDATE entry SET seq = 99 WHERE seq = 4"), "entry 4 is missing",
         Also::read_write},
        {"two that changed places",
         rows("UPDATE entry SET seq = -1 WHERE seq = 3; UPDATE entry SET seq = 3 WHERE seq = 4; "
              "UPDATE entry SET seq = 4 WHERE seq = -1"),
         "entry 3 does not hold"},
        {"one more in front", rows("UPDATE entry SET seq = 0 WHERE seq = 1"), "entry 1 is missing",
         Also::read_write},
        {"a number that is cut to the same one",
         rows("UPDATE entry SET exam = exam + 4294967296 WHERE seq = 3"),
         "is no number of an exam or indication"},
        {"replaced, with a hash that holds", replaced(3), "entry 4 does not hold"},
        {"the first one replaced", replaced(1), "entry 2 does not hold"},
        {"one added by hand",
         rows("INSERT INTO entry (seq, at, who, kind, subject, body, previous, hash) SELECT seq + 1, at, "
              "who, kind, subject, body, hash, 'x' FROM entry ORDER BY seq DESC LIMIT 1"),
         "does not hold"},
        // Bodies whose hashes hold.
        {"a key that stands twice", chained_anew(3, [](Entry &e) { e.body.insert(1, R"("type":"crack",)"); }),
         "not written as this program writes it", Also::nothing},
        {"a blank in a body", chained_anew(3, [](Entry &e) { e.body.insert(1, " "); }),
         "not written as this program writes it", Also::nothing},
        {"a number beyond 32 bits",
         chained_anew(3,
                      [](Entry &e) {
                          const auto at = e.body.find(R"("exam":1)");
                          REQUIRE(at != std::string::npos);
                          e.body.replace(at, 8, R"("exam":4294967297)");
                      }),
         "a number in its body is out of range", Also::nothing},
        {"a number beyond 64 bits",
         chained_anew(3,
                      [](Entry &e) {
                          const auto at = e.body.find(R"("nm":)");
                          REQUIRE(at != std::string::npos);
                          e.body.insert(at + 5, "99999999999999999999");
                      }),
         "written as this program writes it", Also::nothing},
        // Tables, and what guards them.
        {"no guard against change", tables("DROP TRIGGER entry_never_changes"),
         "trigger entry_never_changes is gone", Also::read_write},
        {"no guard against deletion", tables("DROP TRIGGER entry_never_goes"),
         "trigger entry_never_goes is gone", Also::read_write},
        {"no guard of texts", tables("DROP TRIGGER criteria_never_change"),
         "trigger criteria_never_change is gone", Also::read_write},
        {"no guard of documents", tables("DROP TRIGGER document_never_goes"),
         "trigger document_never_goes is gone", Also::read_write},
        {"no guard of photos against change", tables("DROP TRIGGER photo_never_changes"),
         "trigger photo_never_changes is gone", Also::read_write},
        {"no guard of photos against deletion", tables("DROP TRIGGER photo_never_goes"),
         "trigger photo_never_goes is gone", Also::read_write},
        {"a guard that lets all pass",
         tables("DROP TRIGGER entry_never_goes; CREATE TRIGGER entry_never_goes BEFORE DELETE ON "
                "entry BEGIN SELECT 1; END"),
         "trigger entry_never_goes is not as", Also::read_write},
        {"a trigger that ignores what is entered",
         tables("CREATE TRIGGER quiet BEFORE INSERT ON entry BEGIN SELECT "
                "RAISE(IGNORE); END"),
         "trigger quiet is none of ours", Also::read_write},
        {"a trigger that enters something else",
         tables("CREATE TRIGGER more AFTER INSERT ON entry BEGIN INSERT OR IGNORE INTO "
                "criteria VALUES ('x', 'x', 'x'); END"),
         "trigger more is none of ours", Also::read_write},
        {"a forged view", tables(forged_view), "view standing is not as", Also::read_write},
        {"no view", tables("DROP VIEW standing"), "view standing is gone", Also::read_write},
        {"a view of somebody else's", tables("CREATE VIEW more AS SELECT 1"), "view more is none of ours",
         Also::read_write},
        {"a table of somebody else's", tables("CREATE TABLE more (x TEXT)"), "table more is none of ours",
         Also::read_write},
        {"an index of somebody else's", tables("CREATE INDEX more ON entry (who)"),
         "index more is none of ours", Also::read_write},
        {"no index", tables("DROP INDEX entry_by_subject"), "index entry_by_subject is gone",
         Also::read_write},
        {"corrected twice", tables("DROP INDEX entry_superseded_once"), "index entry_superseded_once is gone",
         Also::read_write},
        {"a family that hides finds",
         text_of("entry", "'exam', 'indication', 'remark', 'verdict', 'grade', 'photo') THEN 'coupon'",
                 "'exam', 'remark', 'verdict', 'grade', 'photo') THEN 'coupon'"),
         "table entry is not as", Also::read_write},
        {"a kind more",
         text_of("entry", "'confirmation', 'filling'))", "'confirmation', 'filling', 'other'))"),
         "table entry is not as", Also::read_write},
        {"hashes that may be doubled",
         text_of("entry", "hash       TEXT NOT NULL UNIQUE", "hash       TEXT NOT NULL"), "",
         Also::read_write},
        {"texts without a hash", text_of("criteria", "name TEXT NOT NULL", "name TEXT"),
         "table criteria is not as", Also::read_write},
        {"another version", tables("PRAGMA user_version = 3"), "", Also::read_write},
        {"a version that never was", tables("PRAGMA user_version = -1"), "has no version", Also::read_write},
        {"a version to come", tables("PRAGMA user_version = 99"), "newer beadbook", Also::read_write},
        {"another program's", tables("PRAGMA application_id = 7"), "belongs to another program",
         Also::read_write},
        // What entries rest on.
        {"a text of criteria",
         rows("UPDATE criteria SET text = text || ' ' WHERE name = 'mil-hdbk-1890-table-3'"),
         "criteria mil-hdbk-1890-table-3 were changed", Also::nothing},
        {"a text of a practice", rows("UPDATE criteria SET text = text || ' ' WHERE name = 'asme-v-vt'"),
         "criteria asme-v-vt were changed", Also::nothing},
        {"the hash of a text", rows("UPDATE criteria SET hash = 'x' WHERE name = 'asme-v-vt'"),
         "criteria asme-v-vt were changed", Also::nothing},
        {"a paper", rows("INSERT INTO document (hash, name, bytes) VALUES ('x', 'paper', x'79')"),
         "document paper was changed", Also::nothing},
        {"a paper that is missing",
         chained_anew(9,
                      [](Entry &e) {
                          e.body = R"({"document":")" + std::string(64, 'a') + R"("})";
                          e.kind = "qualification";
                      }),
         "the document that it rests on is missing", Also::nothing},
        {"a photo", rows("INSERT INTO photo (hash, bytes) VALUES ('x', x'79')"), "photo x was changed",
         Also::nothing},
        {"a photo that nobody kept",
         rows("INSERT INTO photo (hash, bytes) VALUES "
              "('a1fce4363854ff888cff4b8e7875d600c2682390412a8cf79b37d0b11148b0fa', x'79')"),
         "photo a1fce4363854 is named by no entry", Also::nothing},
        {"a photo that is missing",
         chained_anew(9,
                      [](Entry &e) {
                          e.body = R"({"kind":"JPEG","number":1,"photo":")" + std::string(64, 'a') +
                                   R"(","size":3})";
                          e.kind = "photo";
                      }),
         "the photo that it names is missing", Also::nothing},
    };
    return out;
}

} // namespace

TEST_CASE("whatever is changed behind the program's back, verify finds it, and nothing is written on top",
          "[faults]") {
    const Template start;
    for (const auto &row : all_rows()) {
        const Program run;
        start.copy_to(run.book());
        row.tampering(run.book());
        const Run verified = run({"verify"}), written = run({"remark", "T-1", "on top"}),
                  read = run({"coupons"});
        INFO(row.what << ": verify: " << verified.err << "write: " << written.err << "read: " << read.err);
        CHECK(verified.code == 4);
        CHECK_THAT(verified.err, says(row.finds));
        if (row.also != Also::nothing) {
            CHECK(written.code == 4);
            CHECK_THAT(written.out, !says("remark kept"));
        }
        if (row.also == Also::read_write) CHECK(read.code == 4);
        CHECK(run({"verify"}).code == 4); // also afterwards
        CHECK(run({"backup", run.file("copy.db")}).code == 4);
        CHECK_FALSE(std::filesystem::exists(run.file("copy.db")));
    }
}

TEST_CASE("what the chain alone cannot show, a head that was noted shows", "[faults]") {
    const Template start;
    const std::vector<std::pair<const char *, Tampering>> unseen{
        {"the end cut off", rows("DELETE FROM entry WHERE seq = " + std::to_string(start.entries))},
        {"the last one replaced", replaced(start.entries)},
        {"the whole chain written anew", chained_anew(3,
                                                      [](Entry &e) {
                                                          const auto at = e.body.find("0.04");
                                                          REQUIRE(at != std::string::npos);
                                                          e.body.replace(at, 4, "0.01");
                                                      })},
    };
    for (const auto &[what, tampering] : unseen) {
        const Program run;
        start.copy_to(run.book());
        tampering(run.book());
        INFO(what);
        CHECK(run({"verify"}).code == 0);
        CHECK(run({"verify", "--head", start.head}).code == 4);
    }
    const Program run;
    start.copy_to(run.book());
    run.ok({"remark", "T-1", "added"});
    const Run later = run({"verify", "--head", start.head});
    CHECK(later.code == 0);
    CHECK_THAT(later.err, says("the head that was given is on record, and 1 entry came after it"));
}

TEST_CASE("a text that verdicts rest on is not judged by once it was changed", "[faults]") {
    const Template start;
    const Program run;
    start.copy_to(run.book());
    behind(run.book(),
           "UPDATE criteria SET text = replace(text, 'title', 'titel') WHERE name = 'mil-hdbk-1890-table-3'");
    CHECK(run({"judge", "T-2"}).code == 4);
}

TEST_CASE("nothing is said of a welder by a chain that does not hold, whatever was moved away from him",
          "[faults]") {
    const Program run;
    run.ok({"enrol", "L1", "--name", "J. Reef"});
    run.ok({"register", "T-1", "--criteria", "mil-hdbk-1890-table-3", "--class", "2", "--joint", "groove",
            "--thickness", "0.150in", "--welder", "L1"});
    run.ok({"welder", "L1"});
    behind(run.book(), "UPDATE entry SET subject = 'T-2' WHERE kind = 'coupon'");
    for (const auto &words : {std::vector<std::string>{"welder", "L1"}, {"welders"}, {"due"}}) {
        const Run refused = run(words);
        INFO(words.front() << ": " << refused.out << refused.err);
        CHECK(refused.code == 4);
        CHECK_THAT(refused.err, says("entry 2 does not hold"));
    }
}

TEST_CASE("the tables are held against those that this program makes, of every version", "[faults]") {
    for (int version = 1; version <= schema::newest_version(); ++version) {
        SQLite::Database db(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
        CHECK_FALSE(schema::faults(db, version).empty());
    }
    SQLite::Database db(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    schema::migrate(db);
    CHECK(schema::faults(db, schema::newest_version()).empty());
    // Whoever adds a migration puts this into records/schema.cpp.
    CHECK_THAT(read_file(BEADBOOK_SOURCE "/src/records/schema.cpp"), says(schema::fingerprint(db)));
    db.exec("ANALYZE"); // steers only which index is taken
    CHECK(schema::faults(db, schema::newest_version()).empty());
}
