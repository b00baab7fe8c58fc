// A record that is cut off or in which single bytes differ: it is refused or found out, or says the same as
// before.
#include "catch.hpp"
#include "faults/child.hpp"
#include "measure/refusal.hpp"
#include "records/ledger.hpp"

#include <SQLiteCpp/SQLiteCpp.h>

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// All that people wrote and what it rests on; the name beside a text is only for messages.
std::string told(const std::string &path) {
    SQLite::Database db(path, SQLite::OPEN_READONLY);
    std::string out;
    for (const char *query :
         {"SELECT seq, at, who, kind, subject, exam, number, supersedes, reason, body, previous, "
          "hash, family FROM entry NOT INDEXED ORDER BY seq",
          "SELECT hash, text FROM criteria NOT INDEXED ORDER BY hash",
          "SELECT hash, hex(bytes) FROM document NOT INDEXED ORDER BY hash"}) {
        SQLite::Statement rows(db, query);
        while (rows.executeStep())
            for (int c = 0; c < rows.getColumnCount(); ++c)
                out += rows.getColumn(c).isNull() ? "-\n" : rows.getColumn(c).getString() + "\n";
    }
    return out;
}

/// Whether the program finds that something is wrong.
bool found(const std::string &path) {
    try {
        return !Ledger(path, Ledger::Mode::inspect).verify().faults.empty();
    } catch (const Refusal &) {
        return true;
    }
}

/// Whether what a write would be bound to is looked at before.
bool taken_for_writing(const std::string &path) {
    try {
        Ledger ledger(path, Ledger::Mode::write);
        Ledger::Transaction transaction(ledger);
        return true;
    } catch (const Refusal &) {
        return false;
    }
}

} // namespace

TEST_CASE("a record that was cut off anywhere is refused, found out, or lacks nothing", "[faults]") {
    const Template start;
    const TemporaryFolder folder;
    const std::string path = folder.file("b.db");
    start.copy_to(path);
    const std::string whole = told(path);
    for (const std::size_t size : spread(start.bytes.size(), faults_wanted(150))) {
        write_file(path, start.bytes.substr(0, size));
        INFO("cut off behind byte " << size);
        if (!found(path)) CHECK(told(path) == whole);
        write_file(path, start.bytes.substr(0, size));
        if (size > 0 && taken_for_writing(path) && !found(path)) CHECK(told(path) == whole);
    }
}

TEST_CASE("a byte that differs anywhere is refused, found out, or changes nothing that is told", "[faults]") {
    const Template start;
    const TemporaryFolder folder;
    const std::string path = folder.file("b.db");
    start.copy_to(path);
    const std::string whole = told(path);
    std::size_t harmless = 0, seen = 0;
    for (const std::size_t at : spread(start.bytes.size(), faults_wanted(250)))
        for (const int bit : {0, 5, 7}) {
            std::string bytes = start.bytes;
            bytes[at] = static_cast<char>(bytes[at] ^ (1 << bit));
            for (const char *ending : {"-wal", "-shm"}) std::filesystem::remove(path + ending);
            write_file(path, bytes);
            INFO("bit " << bit << " of byte " << at);
            if (found(path)) {
                ++seen;
                continue;
            }
            ++harmless;
            CHECK(told(path) == whole);
        }
    CHECK(seen > 0);
    CHECK(harmless > 0); // the unused ends of pages
}
