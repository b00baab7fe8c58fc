#pragma once

#include "records/ledger.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <limits>
#include <sqlite3.h>
#include <thread>

/// Rows of the ledger's table and SQLite's errors, for the files of the ledger itself.
namespace beadbook::ledger_rows {

inline const std::string no_hash(64, '0');
inline constexpr int busy_milliseconds = 5000;
inline constexpr int first_with_lines = 7; ///< version of a record
inline constexpr int first_with_photos = 8;
inline constexpr const char *columns =
    "seq, at, who, kind, subject, exam, number, supersedes, reason, body, previous, hash";

/// A number of the trade, which must not be cut short to one that holds.
inline std::optional<int> small_number(const SQLite::Column &column, std::int64_t seq) {
    if (column.isNull()) return std::nullopt;
    const std::int64_t value = column.getInt64();
    if (value < 0 || value > std::numeric_limits<int>::max())
        throw StoreError("entry " + std::to_string(seq) + " does not hold: " + std::to_string(value) +
                         " is no number of an exam or indication");
    return static_cast<int>(value);
}

inline Entry entry_from(SQLite::Statement &row) {
    Entry e;
    e.seq = row.getColumn(0).getInt64();
    e.at = row.getColumn(1).getString();
    e.who = row.getColumn(2).getString();
    e.kind = row.getColumn(3).getString();
    e.subject = row.getColumn(4).getString();
    e.exam = small_number(row.getColumn(5), e.seq);
    e.number = small_number(row.getColumn(6), e.seq);
    if (!row.getColumn(7).isNull()) e.supersedes = row.getColumn(7).getInt64();
    if (!row.getColumn(8).isNull()) e.reason = row.getColumn(8).getString();
    e.body = row.getColumn(9).getString();
    e.previous = row.getColumn(10).getString();
    e.hash = row.getColumn(11).getString();
    return e;
}

/// As it was written: what was changed since is not read. The order of entries is for `verify`.
inline Entry sound_entry_from(SQLite::Statement &row) {
    Entry e = entry_from(row);
    if (hash_of(e) != e.hash)
        throw StoreError("entry " + std::to_string(e.seq) +
                         " does not hold: it was changed after it was written");
    return e;
}

/// Whoever only reads takes a journal that goes at this very moment, because its write is done, for one that
/// was left over: SQLite says so of it itself (its ticket 3883). Once more, and it is gone.
inline bool may_pass(const SQLite::Exception &e) {
    return e.getExtendedErrorCode() == SQLITE_READONLY_ROLLBACK;
}

/// `f` may run more than once, but only where it did not write.
template <class F>
auto guarded(const std::string &path, F f) {
    using namespace std::chrono_literals;
    for (int left = 3;; --left) try {
            return f();
        } catch (const SQLite::Exception &e) {
            if (!may_pass(e) || left == 0) throw store_error(path, e);
            std::this_thread::sleep_for(10ms);
        }
}

} // namespace beadbook::ledger_rows
