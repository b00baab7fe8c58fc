#include "records/ledger_checks.hpp"

#include "measure/refusal.hpp"
#include "measure/text.hpp"
#include "records/ledger_rows.hpp"
#include "records/schema.hpp"
#include "records/walked_note.hpp"

#include <SQLiteCpp/SQLiteCpp.h>

namespace beadbook {

using namespace ledger_rows;

namespace {

/// Newest entries that are held to the chain before anything is added behind them.
constexpr int looked_back_at = 500;

/// Whether what was counted is there, and what came since goes on from it without a gap.
bool go_on_from(SQLite::Database &db, const Counted &counted) {
    SQLite::Statement query(db, "SELECT EXISTS (SELECT 1 FROM entry WHERE seq = ?1 AND hash = ?2), (SELECT "
                                "count(*) FROM entry NOT INDEXED WHERE seq > ?1), (SELECT max(seq) FROM "
                                "entry), (SELECT min(seq) FROM entry)");
    query.bind(1, counted.entries);
    query.bind(2, counted.hash);
    query.executeStep();
    return query.getColumn(0).getInt() == 1 && query.getColumn(3).getInt64() == 1 &&
           query.getColumn(2).getInt64() == counted.entries + query.getColumn(1).getInt64();
}

} // namespace

void check_schema(SQLite::Database &db, const std::string &path) {
    SQLite::Transaction moment(db); // another program may be migrating it
    const auto faults = schema::faults(db, db.execAndGet("PRAGMA user_version").getInt());
    if (!faults.empty())
        throw StoreError(
            path + ": the record's own tables were changed behind the program: " + faults.front() +
            "; nothing is read from it or written to it, 'verify' names all. Take the last backup");
}

void check_whole(SQLite::Database &db, const std::string &path) {
    SQLite::Transaction moment(db);
    db.execAndGet("SELECT count(*) FROM sqlite_schema"); // from here on nobody changes the file
    Noted noted = walked_note::read(path);
    if (noted.counted && go_on_from(db, *noted.counted)) return;
    SQLite::Statement query(
        db, "SELECT (SELECT count(*) FROM entry), (SELECT max(seq) FROM entry), (SELECT min(seq) FROM "
            "entry), (SELECT hash FROM entry ORDER BY seq DESC LIMIT 1)");
    query.executeStep();
    const std::int64_t count = query.getColumn(0).getInt64(), last = query.getColumn(1).getInt64(),
                       first = query.getColumn(2).getInt64();
    if (count == 0 || (first == 1 && last == count)) {
        if (count < worth_noting) return;
        noted.counted = Counted{count, query.getColumn(3).getString()};
        return walked_note::write(path, noted);
    }
    throw StoreError(
        path + ": entries were taken out behind the program: " +
        counted(static_cast<std::size_t>(count), "is", "are") + " there, numbered from " +
        std::to_string(first) + " to " + std::to_string(last) +
        "; nothing is read from it or written to it, 'verify' names the first one. Take the last "
        "backup");
}

void check_end(SQLite::Database &db, const std::string &path) {
    SQLite::Statement query(db, std::string("SELECT ") + columns + " FROM entry ORDER BY seq DESC LIMIT " +
                                    std::to_string(looked_back_at));
    const auto refuse = [&](std::int64_t seq) {
        throw StoreError(
            path + ": entry " + std::to_string(seq) +
            " does not hold: it was changed after it was written. A record that was tampered with " +
            "is not written to; take the last backup");
    };
    std::optional<Entry> later;
    int looked_at = 0;
    for (; query.executeStep(); ++looked_at) {
        Entry e = entry_from(query);
        if (hash_of(e) != e.hash || (e.seq == 1 && e.previous != no_hash)) refuse(e.seq);
        if (later && (later->seq != e.seq + 1 || later->previous != e.hash)) refuse(later->seq);
        later = std::move(e);
    }
    if (later && looked_at < looked_back_at && later->seq != 1) refuse(1);
}

Walked held_to_chain(SQLite::Database &db, const std::string &path, Walked walked) {
    SQLite::Statement query(db, std::string("SELECT ") + columns + " FROM entry WHERE seq >= ? ORDER BY seq");
    query.bind(1, walked.seq);
    const auto refuse = [&](std::int64_t seq) {
        throw StoreError(path + ": entry " + std::to_string(seq) +
                         " does not hold: it was changed after it was written. By a record that was tampered "
                         "with nobody is qualified; 'verify' tells more. Take the last backup");
    };
    while (query.executeStep()) {
        const Entry e = entry_from(query);
        const bool known = e.seq == walked.seq;
        if (hash_of(e) != e.hash) refuse(e.seq);
        if (known ? e.hash != walked.hash : e.previous != (walked.seq == 0 ? no_hash : walked.hash))
            refuse(e.seq);
        walked = {e.seq, e.hash};
    }
    return walked;
}

} // namespace beadbook
