#include "append_bench.hpp"

#include "records/ledger.hpp"
#include "temporary.hpp"

#include <SQLiteCpp/SQLiteCpp.h>

namespace beadbook::bench {
namespace {

constexpr int one_by_one = 200, at_once = 20'000;

Entry find(int number) {
    Entry out;
    out.at = "2026-11-25T10:00:00Z";
    out.who = "A. Field";
    out.kind = "indication";
    out.subject = "C-" + std::to_string(number / 5);
    out.exam = 1;
    out.number = number % 5 + 1;
    out.body =
        R"({"at":{"nm":76200000,"typed":"3 in"},"size":{"nm":254000,"typed":"0.01 in"},"type":"gas pore"})";
    return out;
}

/// One table of the same columns, and nothing else.
class Bare {
public:
    explicit Bare(const std::string &path) : db_(path, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE) {
        db_.exec("PRAGMA synchronous = EXTRA; CREATE TABLE entry (seq INTEGER PRIMARY KEY, at TEXT, who "
                 "TEXT, kind TEXT, "
                 "subject TEXT, exam INTEGER, number INTEGER, supersedes INTEGER, reason TEXT, body TEXT, "
                 "previous TEXT, "
                 "hash TEXT)");
    }
    /// `count` rows in one transaction, from the number on.
    void append(int from, int count) {
        SQLite::Transaction all(db_, SQLite::TransactionBehavior::IMMEDIATE);
        SQLite::Statement add(
            db_, "INSERT INTO entry (at, who, kind, subject, exam, number, body, previous, hash) VALUES "
                 "(?, ?, ?, ?, ?, ?, ?, ?, ?)");
        for (int n = from; n < from + count; ++n) {
            const Entry e = find(n);
            add.bind(1, e.at);
            add.bind(2, e.who);
            add.bind(3, e.kind);
            add.bind(4, e.subject);
            add.bind(5, *e.exam);
            add.bind(6, *e.number);
            add.bind(7, e.body);
            add.bind(8, hash_);
            add.bind(9, hash_);
            add.exec();
            add.reset();
        }
        all.commit();
    }

private:
    SQLite::Database db_;
    const std::string hash_ = std::string(64, 'a');
};

void append(Ledger &ledger, int from, int count) {
    Ledger::Transaction all(ledger);
    for (int n = from; n < from + count; ++n) ledger.append(find(n));
    all.commit();
}

} // namespace

void appends(Figures &figures) {
    const test::TemporaryFolder folder;
    Ledger ledger(folder.file("book.db"), Ledger::Mode::create);
    Bare bare(folder.file("bare.db"));
    std::vector<double> ours, theirs;
    for (int n = 0; n < one_by_one; ++n) { // by turns, so that a busy disk meets both
        ours.push_back(seconds_of([&] { append(ledger, n, 1); }));
        theirs.push_back(seconds_of([&] { bare.append(n, 1); }));
    }
    figures.add("append/one by one, record", median(ours) * 1e3, "ms");
    figures.add("append/one by one, bare SQLite", median(theirs) * 1e3, "ms");
    figures.ratio("append/one by one, record", "append/one by one, bare SQLite", "; bar 1.3");
    const double n = at_once;
    figures.add("append/20,000 at once, record",
                seconds_of([&] { append(ledger, one_by_one, at_once); }) * 1e6 / n, "us each");
    figures.add("append/20,000 at once, bare SQLite",
                seconds_of([&] { bare.append(one_by_one, at_once); }) * 1e6 / n, "us each");
    figures.ratio("append/20,000 at once, record", "append/20,000 at once, bare SQLite");
}

} // namespace beadbook::bench
