#include "records/ledger.hpp"

#include "criteria/shipped.hpp"
#include "measure/sha256.hpp"

#include <SQLiteCpp/Backup.h>
#include <SQLiteCpp/SQLiteCpp.h>
#include <filesystem>
#include <fstream>
#include <sqlite3.h>

namespace beadbook {
namespace {

constexpr int application_id = 0x42454144; // "BEAD"
constexpr int newest_version = 5;
constexpr int oldest_readable = 2; ///< version 3 only adds an index, version 4 kinds, version 5 a table
constexpr int busy_milliseconds = 5000;
const std::string no_hash(64, '0');

/// Numbered migrations; version n is reached by the n-th.
const std::vector<std::string> migrations{"0001_ledger.sql", "0002_welders.sql", "0003_coupons_of_welder.sql",
                                          "0004_people_equipment.sql", "0005_sent.sql"};

int pragma(SQLite::Database &db, const std::string &name) { return db.execAndGet("PRAGMA " + name).getInt(); }

std::string text_or_empty(const SQLite::Column &c) { return c.isNull() ? "" : c.getString(); }

Entry entry_from(SQLite::Statement &row) {
    Entry e;
    e.seq = row.getColumn(0).getInt64();
    e.at = row.getColumn(1).getString();
    e.who = row.getColumn(2).getString();
    e.kind = row.getColumn(3).getString();
    e.subject = row.getColumn(4).getString();
    if (!row.getColumn(5).isNull()) e.exam = row.getColumn(5).getInt();
    if (!row.getColumn(6).isNull()) e.number = row.getColumn(6).getInt();
    if (!row.getColumn(7).isNull()) e.supersedes = row.getColumn(7).getInt64();
    e.reason = text_or_empty(row.getColumn(8));
    e.body = row.getColumn(9).getString();
    e.previous = row.getColumn(10).getString();
    e.hash = row.getColumn(11).getString();
    return e;
}

constexpr const char *columns =
    "seq, at, who, kind, subject, exam, number, supersedes, reason, body, previous, hash";

bool begins_like_sqlite(const std::string &path) {
    std::ifstream in(path, std::ios::binary);
    std::string head(16, '\0');
    in.read(head.data(), 16);
    return in.gcount() == 0 || head == std::string("SQLite format 3\0", 16);
}

template <class F>
auto guarded(const std::string &path, F f) {
    try {
        return f();
    } catch (const SQLite::Exception &e) {
        throw store_error(path, e);
    }
}

} // namespace

StoreError store_error(const std::string &path, const SQLite::Exception &e) {
    switch (e.getErrorCode()) {
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
        return StoreError(path + ": another program is writing to the record; nothing was stored, try again");
    case SQLITE_READONLY:
    case SQLITE_PERM:
        return StoreError(path + ": the record cannot be written to (read-only); nothing was stored");
    case SQLITE_FULL: return StoreError(path + ": the disk is full; nothing was stored");
    case SQLITE_CANTOPEN:
        return StoreError(path + ": cannot be opened; is it a file in a folder that you may write to?");
    case SQLITE_CORRUPT:
    case SQLITE_NOTADB:
        return StoreError(path + ": the record is damaged or is no record of ours (" + e.what() +
                          "); do not write to it, take the last backup");
    default: return StoreError(path + ": " + e.what());
    }
}

/// Statements that a long write runs again and again.
struct Ledger::Statements {
    explicit Statements(SQLite::Database &db)
        : last(db, "SELECT seq, hash FROM entry ORDER BY seq DESC LIMIT 1"),
          add(db, std::string("INSERT INTO entry (") + columns + ") VALUES (?,?,?,?,?,?,?,?,?,?,?,?)") {}
    SQLite::Statement last, add;
};

Ledger::~Ledger() = default;
Ledger::Ledger(Ledger &&) noexcept = default;
Ledger &Ledger::operator=(Ledger &&) noexcept = default;

Ledger::Transaction::Transaction(Ledger &ledger) : ledger_(ledger) {
    guarded(ledger.path_, [&] {
        open_ = std::make_unique<SQLite::Transaction>(*ledger.db_, SQLite::TransactionBehavior::IMMEDIATE);
    });
}

Ledger::Transaction::~Transaction() = default;

void Ledger::Transaction::commit() {
    guarded(ledger_.path_, [&] { open_->commit(); });
}

Ledger::Ledger(const std::string &path, Mode mode) : path_(path) {
    std::error_code ignored;
    const bool exists = std::filesystem::exists(path, ignored);
    if (!exists && mode != Mode::create)
        throw Refusal(Refusal::Kind::record, path + ": there is no record yet")
            .mend({"register", {"COUPON"}, {}});
    if (std::filesystem::is_directory(path, ignored))
        throw StoreError(path + ": this is a folder, not a record file");
    if (exists && !begins_like_sqlite(path)) throw StoreError(path + ": this file is no record of ours");
    guarded(path_, [&] {
        if (mode == Mode::create && !exists)
            if (const auto folder = std::filesystem::path(path).parent_path(); !folder.empty())
                std::filesystem::create_directories(folder, ignored);
        const int flags = mode == Mode::read     ? SQLite::OPEN_READONLY
                          : mode == Mode::create ? SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE
                                                 : SQLite::OPEN_READWRITE;
        db_ = std::make_unique<SQLite::Database>(path, flags, busy_milliseconds);
        db_->exec("PRAGMA foreign_keys = ON");
        if (mode != Mode::read) {
            db_->exec("PRAGMA synchronous = EXTRA");
            // A long write stays in memory until it is committed, so that others can read meanwhile.
            db_->exec("PRAGMA cache_spill = OFF");
        }
        const bool fresh = pragma(*db_, "application_id") == 0 && pragma(*db_, "user_version") == 0 &&
                           db_->execAndGet("SELECT count(*) FROM sqlite_schema").getInt() == 0;
        if (!fresh && pragma(*db_, "application_id") != application_id)
            throw StoreError(path + ": this database belongs to another program");
        if (pragma(*db_, "user_version") > newest_version)
            throw StoreError(path + ": the record was made by a newer beadbook; use that one");
        if (fresh && mode == Mode::read) throw StoreError(path + ": the file is empty, no record of ours");
        if (mode != Mode::read) migrate(fresh);
        if (mode == Mode::read && pragma(*db_, "user_version") < oldest_readable) Ledger(path, Mode::write);
    });
}

void Ledger::migrate(bool fresh) {
    if (!fresh && pragma(*db_, "user_version") == newest_version) return;
    SQLite::Transaction transaction(*db_, SQLite::TransactionBehavior::IMMEDIATE);
    // Another program may have been quicker.
    for (int version = pragma(*db_, "user_version"); version < newest_version; ++version) {
        db_->exec(shipped_file(migrations[static_cast<std::size_t>(version)]));
        db_->exec("PRAGMA user_version = " + std::to_string(version + 1));
        db_->exec("PRAGMA application_id = " + std::to_string(application_id));
    }
    transaction.commit();
}

Entry Ledger::append(Entry e) {
    return guarded(path_, [&] {
        if (!statements_) statements_ = std::make_unique<Statements>(*db_);
        SQLite::Statement &last = statements_->last, &add = statements_->add;
        last.reset();
        const bool any = last.executeStep();
        e.seq = any ? last.getColumn(0).getInt64() + 1 : 1;
        e.previous = any ? last.getColumn(1).getString() : no_hash;
        last.reset(); // an open read would hold the commit up
        e.hash = hash_of(e);
        add.reset();
        add.clearBindings();
        add.bind(1, e.seq);
        add.bind(2, e.at);
        add.bind(3, e.who);
        add.bind(4, e.kind);
        add.bind(5, e.subject);
        if (e.exam) add.bind(6, *e.exam);
        if (e.number) add.bind(7, *e.number);
        if (e.supersedes) {
            add.bind(8, *e.supersedes);
            add.bind(9, e.reason);
        }
        add.bind(10, e.body);
        add.bind(11, e.previous);
        add.bind(12, e.hash);
        add.exec();
        add.reset();
        return e;
    });
}

void Ledger::keep_criteria(const std::string &hash, const std::string &name, const std::string &text) {
    guarded(path_, [&] {
        SQLite::Statement add(*db_, "INSERT OR IGNORE INTO criteria (hash, name, text) VALUES (?, ?, ?)");
        add.bind(1, hash);
        add.bind(2, name);
        add.bind(3, text);
        add.exec();
    });
}

std::string Ledger::keep_document(const std::string &name, const std::string &bytes) {
    return guarded(path_, [&] {
        const std::string hash = sha256(bytes);
        SQLite::Statement add(*db_, "INSERT OR IGNORE INTO document (hash, name, bytes) VALUES (?, ?, ?)");
        add.bind(1, hash);
        add.bind(2, name);
        add.bind(3, bytes.data(), static_cast<int>(bytes.size()));
        add.exec();
        return hash;
    });
}

bool Ledger::knows(Family family, const std::string &subject) {
    return guarded(path_, [&] {
        SQLite::Statement query(*db_, "SELECT 1 FROM entry WHERE family = ? AND subject = ? LIMIT 1");
        query.bind(1, name_of(family));
        query.bind(2, subject);
        return query.executeStep();
    });
}

std::vector<Entry> Ledger::entries_of(Family family, const std::string &subject) {
    return guarded(path_, [&] {
        SQLite::Statement query(*db_, std::string("SELECT ") + columns +
                                          " FROM entry WHERE family = ? AND subject = ? ORDER BY seq");
        query.bind(1, name_of(family));
        query.bind(2, subject);
        std::vector<Entry> out;
        while (query.executeStep()) out.push_back(entry_from(query));
        return out;
    });
}

std::int64_t Ledger::last_entry_of(Family family, const std::string &subject) {
    return guarded(path_, [&] {
        SQLite::Statement query(*db_, "SELECT max(seq) FROM entry WHERE family = ? AND subject = ?");
        query.bind(1, name_of(family));
        query.bind(2, subject);
        return query.executeStep() && !query.getColumn(0).isNull() ? query.getColumn(0).getInt64() : 0;
    });
}

std::vector<std::string> Ledger::subjects(Family family) {
    return guarded(path_, [&] {
        SQLite::Statement query(
            *db_, "SELECT subject FROM entry WHERE family = ? GROUP BY subject ORDER BY min(seq)");
        query.bind(1, name_of(family));
        std::vector<std::string> out;
        while (query.executeStep()) out.push_back(query.getColumn(0).getString());
        return out;
    });
}

std::vector<std::string> Ledger::coupons_of(const std::string &welder) {
    return guarded(path_, [&] {
        // As the index entry_by_welder says it, word for word, so that it is used.
        SQLite::Statement query(*db_, "SELECT subject FROM entry WHERE kind = 'coupon' AND "
                                      "json_extract(body, '$.fields.welder') = ? "
                                      "GROUP BY subject ORDER BY min(seq)");
        query.bind(1, welder);
        std::vector<std::string> out;
        while (query.executeStep()) out.push_back(query.getColumn(0).getString());
        return out;
    });
}

std::optional<Entry> Ledger::last_exam_by(const std::string &examiner, const std::string &method) {
    return guarded(path_, [&]() -> std::optional<Entry> {
        // As the index entry_by_examiner says it, word for word, so that it is used.
        SQLite::Statement query(*db_, std::string("SELECT ") + columns +
                                          " FROM entry AS e WHERE kind = 'exam' AND "
                                          "json_extract(body, '$.examiner') = ? AND "
                                          "json_extract(body, '$.method') = ? AND NOT EXISTS (SELECT 1 FROM "
                                          "entry AS later WHERE later.supersedes = e.seq) "
                                          "ORDER BY seq DESC LIMIT 1");
        query.bind(1, examiner);
        query.bind(2, method);
        if (!query.executeStep()) return std::nullopt;
        return entry_from(query);
    });
}

std::optional<Ledger::Document> Ledger::document(const std::string &hash) {
    return guarded(path_, [&]() -> std::optional<Document> {
        SQLite::Statement query(*db_, "SELECT name, bytes FROM document WHERE hash = ?");
        query.bind(1, hash);
        if (!query.executeStep()) return std::nullopt;
        return Document{query.getColumn(0).getString(), query.getColumn(1).getString()};
    });
}

std::string Ledger::head() {
    return guarded(path_, [&] {
        SQLite::Statement query(*db_, "SELECT hash FROM entry ORDER BY seq DESC LIMIT 1");
        return query.executeStep() ? query.getColumn(0).getString() : no_hash;
    });
}

std::optional<std::string> Ledger::criteria_text(const std::string &hash) {
    return guarded(path_, [&]() -> std::optional<std::string> {
        SQLite::Statement query(*db_, "SELECT text FROM criteria WHERE hash = ?");
        query.bind(1, hash);
        if (!query.executeStep()) return std::nullopt;
        return query.getColumn(0).getString();
    });
}

Verification Ledger::verify() {
    return guarded(path_, [&] {
        Verification out;
        SQLite::Statement integrity(*db_, "PRAGMA integrity_check");
        while (integrity.executeStep())
            if (const auto line = integrity.getColumn(0).getString(); line != "ok")
                out.faults.push_back("file: " + line);
        SQLite::Statement keys(*db_, "PRAGMA foreign_key_check");
        if (keys.executeStep()) out.faults.emplace_back("file: an entry refers to one that is not there");
        out.head = no_hash;
        SQLite::Statement query(*db_, std::string("SELECT ") + columns + " FROM entry ORDER BY seq");
        while (query.executeStep()) {
            const std::int64_t expected = out.entries + 1;
            const Entry e = entry_from(query);
            const std::string name = "entry " + std::to_string(e.seq);
            if (e.seq != expected) {
                out.faults.push_back("entry " + std::to_string(expected) + " is missing");
                break;
            }
            if (e.previous != out.head || hash_of(e) != e.hash) {
                out.faults.push_back(name + " does not hold: it was changed after it was written (" +
                                     e.subject + ", " + e.kind + ", " + e.at + ")");
                break;
            }
            out.head = e.hash;
            out.entries = expected;
        }
        SQLite::Statement criteria(*db_, "SELECT hash, name, text FROM criteria ORDER BY hash");
        while (criteria.executeStep())
            if (sha256(criteria.getColumn(2).getString()) != criteria.getColumn(0).getString())
                out.faults.push_back("criteria " + criteria.getColumn(1).getString() +
                                     " were changed after use");
        SQLite::Statement document(*db_, "SELECT hash, name, bytes FROM document ORDER BY hash");
        while (document.executeStep())
            if (sha256(document.getColumn(2).getString()) != document.getColumn(0).getString())
                out.faults.push_back("document " + document.getColumn(1).getString() + " was changed");
        return out;
    });
}

Verification Ledger::backup(const std::string &to) {
    std::error_code ignored;
    if (std::filesystem::exists(to, ignored))
        throw StoreError(to + ": is there already; a backup never overwrites");
    try {
        return guarded(to, [&] {
            {
                SQLite::Database copy(to, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE, busy_milliseconds);
                SQLite::Backup run(copy, *db_);
                run.executeStep(-1);
            }
            Ledger written(to, Mode::read);
            Verification there = written.verify();
            if (!there.faults.empty())
                throw StoreError(to + ": the copy does not verify: " + there.faults.front());
            return there;
        });
    } catch (...) {
        // What is left of it is no backup, and would be in the way of the next one.
        std::filesystem::remove(to, ignored);
        throw;
    }
}

} // namespace beadbook
