#pragma once

#include "measure/refusal.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <functional>
#include <memory>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <vector>

namespace beadbook {

/// What an entry is about. A coupon and a welder may have the same mark.
enum class Family : std::uint8_t { coupon, welder };

/// One line of the ledger.
struct Entry {
    std::int64_t seq = 0; ///< 0 until it is written
    std::string at, who, kind;
    std::string subject; ///< the coupon, or the welder's mark
    std::optional<int> exam, number;
    std::optional<std::int64_t> supersedes;
    std::string reason; ///< why it supersedes
    nlohmann::json body;
    std::string previous, hash;
};

/// What `verify` found. `entries` and `head` can be noted elsewhere, which also proves that nothing was cut
/// off at the end.
struct Verification {
    std::int64_t entries = 0;
    std::string head;
    std::vector<std::string> faults; ///< the first entry that does not hold, and what SQLite says of the file
};

/// The record file: append-only, hash-chained, one SQLite database.
///
/// Rollback journal and synchronous=EXTRA, not WAL: SQLite up to 3.51.2 can corrupt a WAL file when two
/// connections checkpoint at once, Debian 12 ships 3.40.1, and a thousand durable commands a second are
/// plenty.
class Ledger {
public:
    enum class Mode { read, write, create };
    /// Throws StoreError: not there, not ours, newer than this program, read-only, damaged, busy.
    Ledger(const std::string &path, Mode mode);

    /// Runs `work` in one transaction that begins IMMEDIATE: all it appends is stored, or nothing.
    void transact(const std::function<void()> &work);

    /// Adds a line; fills in seq, previous and hash. Only inside transact().
    Entry append(Entry entry);
    void keep_criteria(const std::string &hash, const std::string &name, const std::string &text);

    /// Keeps a paper by its content and returns its SHA-256.
    std::string keep_document(const std::string &name, const std::string &bytes);

    bool knows(Family family, const std::string &subject);
    std::vector<Entry> entries_of(Family family, const std::string &subject);
    std::vector<std::string> subjects(Family family);
    struct Document {
        std::string name, bytes;
    };
    std::optional<Document> document(const std::string &hash);
    /// The hash of the newest entry.
    std::string head();
    std::optional<std::string> criteria_text(const std::string &hash);
    Verification verify();
    /// A consistent copy, verified. Throws StoreError, and never overwrites a file.
    void backup(const std::string &to);

private:
    void migrate(bool fresh);

    std::string path_;
    std::unique_ptr<SQLite::Database> db_;
};

/// The hash of an entry: SHA-256 over its fields and the hash before it, as one JSON array.
std::string hash_of(const Entry &entry);

/// What people read for an SQLite error.
StoreError store_error(const std::string &path, const SQLite::Exception &e);

} // namespace beadbook
