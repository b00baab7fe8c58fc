#include "records/ledger.hpp"

#include "measure/sha256.hpp"
#include "measure/text.hpp"
#include "records/ledger_checks.hpp"
#include "records/ledger_rows.hpp"
#include "records/ledger_statements.hpp"
#include "records/record_file.hpp"
#include "records/schema.hpp"
#include "records/unfinished_file.hpp"

#include <SQLiteCpp/Backup.h>
#include <SQLiteCpp/SQLiteCpp.h>
#include <filesystem>
#include <sqlite3.h>

namespace beadbook {

using namespace ledger_rows;

namespace {

constexpr int oldest_readable = 2; ///< later versions only add indexes, kinds and tables

int pragma(SQLite::Database &db, const std::string &name) { return db.execAndGet("PRAGMA " + name).getInt(); }

bool is_fresh(SQLite::Database &db) {
    return pragma(db, "application_id") == 0 && pragma(db, "user_version") == 0 &&
           db.execAndGet("SELECT count(*) FROM sqlite_schema").getInt() == 0;
}

/// Lets SQLite play back what a write that was broken off left half done, where this may be written to.
/// Whoever only reads cannot do it; whoever may not write here is told so when reading fails.
void recover(const std::string &path) {
    try {
        SQLite::Database db(path, SQLite::OPEN_READWRITE, busy_milliseconds);
        db.execAndGet("SELECT count(*) FROM sqlite_schema");
    } catch (const SQLite::Exception &) {
        return;
    }
}

/// A new record, there whole or not at all: a file that is still empty would be no record to whoever reads at
/// that moment. False where another program was quicker.
bool make_record(const std::string &path) {
    UnfinishedFile file(path, Readers::as_usual);
    {
        SQLite::Database db(file.path(), SQLite::OPEN_READWRITE);
        db.exec("PRAGMA journal_mode = OFF"); // nobody knows it yet, and finish() brings it to the disk
        db.exec("PRAGMA synchronous = OFF");
        schema::migrate(db);
    }
    return file.finish();
}

/// A copy in memory, carried to the newest version there: the file stays as it is.
std::unique_ptr<SQLite::Database> carried_in_memory(SQLite::Database &db) {
    auto out = std::make_unique<SQLite::Database>(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    SQLite::Backup run(*out, db);
    run.executeStep(-1);
    out->exec("PRAGMA foreign_keys = ON");
    schema::migrate(*out);
    return out;
}

} // namespace

StoreError store_error(const std::string &path, const SQLite::Exception &e) {
    if (e.getExtendedErrorCode() == SQLITE_READONLY_ROLLBACK ||
        e.getExtendedErrorCode() == SQLITE_READONLY_RECOVERY)
        return StoreError(path +
                          ": a write to the record was broken off midway, and it cannot be cleaned up from "
                          "here, where it is read-only. Any command of somebody who may write to the folder "
                          "mends it; or copy the file and its -journal together to a folder of your own");
    switch (e.getErrorCode()) {
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
        return StoreError(path + ": another program is writing to the record; nothing was stored, try again");
    case SQLITE_READONLY:
    case SQLITE_PERM:
        return StoreError(path + ": the record cannot be written to (read-only); nothing was stored");
    case SQLITE_FULL: return StoreError(path + ": the disk is full; nothing was stored");
    case SQLITE_CANTOPEN:
        return StoreError(path +
                          (record_file::in_wal(path)
                               ? ": another program set it to WAL, which cannot be read in a folder that is "
                                 "read-only; copy it to a folder of your own"
                               : ": cannot be opened; is it a file in a folder that you may write to?"));
    case SQLITE_CORRUPT:
    case SQLITE_NOTADB:
        return StoreError(path + ": the record is damaged or is no record of ours (" + e.what() +
                          "); do not write to it, take the last backup");
    default: return StoreError(path + ": " + e.what());
    }
}

Ledger::Ledger(const std::string &path, Mode mode) : path_(path) {
    const bool exists = record_file::there(path);
    if (!exists && mode != Mode::create)
        throw Refusal(Refusal::Kind::record, path + ": there is no record yet")
            .mend({"register", {"COUPON"}, {}});
    const bool writes = mode == Mode::write || mode == Mode::create;
    if (exists) record_file::refuse_foreign_journal(path);
    guarded(path_, [&] {
        if (!exists) {
            std::error_code error;
            if (const auto folder = std::filesystem::path(path).parent_path();
                !folder.empty() && !std::filesystem::is_directory(folder, error))
                throw StoreError(path + ": there is no folder " + folder.string());
            record_file::refuse_leftovers(path);
            began_ = make_record(path);
        }
        if (!writes && record_file::has_journal(path)) recover(path);
        const int flags = writes ? SQLite::OPEN_READWRITE : SQLite::OPEN_READONLY;
        // One thread at a time has it: who shares a ledger waits for the others outside of it.
        db_ = std::make_unique<SQLite::Database>(path, flags | SQLite::OPEN_NOMUTEX, busy_milliseconds);
        db_->exec("PRAGMA foreign_keys = ON");
        const bool fresh = is_fresh(*db_);
        const int of = pragma(*db_, "application_id");
        if (!fresh && of != schema::application_id && of != schema::reading_copy_id)
            throw StoreError(path + ": this database belongs to another program");
        if (writes && of == schema::reading_copy_id)
            throw StoreError(path +
                             ": this is a copy of a shop's record, made to be read beside others; nothing "
                             "is entered in it. Enter it in the shop's own record, and join anew");
        const int version = pragma(*db_, "user_version");
        if (version > schema::newest_version())
            throw StoreError(path + ": the record was made by a newer beadbook; use that one");
        if (fresh && !writes) throw StoreError(path + ": the file is empty, no record of ours");
        if (!fresh && version < 1) throw StoreError(path + ": the record is damaged: it has no version");
        if (!fresh && (mode != Mode::inspect || version < oldest_readable)) check_schema(*db_, path);
        if (!fresh && mode != Mode::inspect) check_whole(*db_, path);
        if (writes) {
            // A file that another program set to WAL: see ledger.hpp.
            if (record_file::in_wal(path)) db_->exec("PRAGMA journal_mode = DELETE");
            db_->exec("PRAGMA synchronous = EXTRA");
            // A long write stays in memory until it is committed, so that others can read meanwhile.
            db_->exec("PRAGMA cache_spill = OFF");
            migrate(version);
            check_end(*db_, path);
        } else if (version < oldest_readable) {
            db_ = carried_in_memory(*db_);
        }
        began_ = began_ || fresh;
    });
}

void Ledger::make_reading_copy() {
    guarded(path_, [&] { db_->exec("PRAGMA application_id = " + std::to_string(schema::reading_copy_id)); });
}

void Ledger::migrate(int version) {
    if (version == schema::newest_version()) return;
    SQLite::Transaction transaction(*db_, SQLite::TransactionBehavior::IMMEDIATE);
    schema::migrate(*db_); // another program may have been quicker
    transaction.commit();
}

void Ledger::keep_criteria(const std::string &hash, const std::string &name, const std::string &text) {
    if (texts_kept_.contains(hash)) return; // by it many coupons may be judged
    guarded(path_, [&] {
        auto add = statement("INSERT OR IGNORE INTO criteria (hash, name, text) VALUES (?, ?, ?)");
        add->bind(1, hash);
        add->bind(2, name);
        add->bind(3, text);
        add->exec();
    });
    if (criteria_text(hash) != text)
        throw StoreError(path_ + ": the text of " + shown(name) +
                         " was changed after it was kept; nothing was stored");
    if (in_transaction_) texts_kept_.insert(hash);
}

std::string Ledger::keep_document(const std::string &name, const std::string &bytes) {
    const std::string hash = sha256(bytes);
    guarded(path_, [&] {
        auto add = statement("INSERT OR IGNORE INTO document (hash, name, bytes) VALUES (?, ?, ?)");
        add->bind(1, hash);
        add->bind(2, name);
        add->bind(3, bytes.data(), static_cast<int>(bytes.size()));
        add->exec();
    });
    if (const auto kept = document(hash); !kept || kept->bytes != bytes)
        throw StoreError(path_ + ": document " + shown(name) +
                         " was changed after it was kept; nothing was stored");
    return hash;
}

InUse Ledger::statement(std::string_view sql) {
    if (!prepared_) prepared_ = std::make_unique<Prepared>();
    auto &all = prepared_->by_text;
    auto known = all.find(sql);
    if (known == all.end()) {
        std::string text(sql);
        known = all.try_emplace(text, *db_, text).first;
    }
    return InUse(known->second);
}

int Ledger::version() {
    auto query = statement("PRAGMA user_version");
    query->executeStep();
    return query->getColumn(0).getInt();
}

bool Ledger::knows(Family family, const std::string &subject) {
    return guarded(path_, [&] {
        auto query = statement("SELECT 1 FROM entry WHERE family = ? AND subject = ? LIMIT 1");
        query->bind(1, name_of(family));
        query->bind(2, subject);
        return query->executeStep();
    });
}

std::vector<Entry> Ledger::entries_of(Family family, const std::string &subject) {
    return guarded(path_, [&] {
        auto query = statement(std::string("SELECT ") + columns +
                               " FROM entry WHERE family = ? AND subject = ? ORDER BY seq");
        query->bind(1, name_of(family));
        query->bind(2, subject);
        std::vector<Entry> out;
        while (query->executeStep()) out.push_back(sound_entry_from(*query));
        return out;
    });
}

std::int64_t Ledger::last_entry_of(Family family, const std::string &subject) {
    return guarded(path_, [&] {
        auto query = statement("SELECT max(seq) FROM entry WHERE family = ? AND subject = ?");
        query->bind(1, name_of(family));
        query->bind(2, subject);
        return query->executeStep() && !query->getColumn(0).isNull() ? query->getColumn(0).getInt64() : 0;
    });
}

std::int64_t Ledger::last_entry_of(Family family) {
    return guarded(path_, [&] {
        auto query = statement("SELECT coalesce(max(seq), 0) FROM entry WHERE family = ?");
        query->bind(1, name_of(family));
        query->executeStep();
        return query->getColumn(0).getInt64();
    });
}

std::vector<std::string> Ledger::subjects(Family family) {
    if (family == Family::coupon) check_no_line_lacks();
    return guarded(path_, [&] {
        if (family == Family::coupon && keeps_lines())
            return texts("SELECT coupon FROM coupon_line ORDER BY first");
        std::vector<std::string> out;
        auto query =
            statement("SELECT subject FROM entry WHERE family = ? GROUP BY subject ORDER BY min(seq)");
        query->bind(1, name_of(family));
        while (query->executeStep()) out.push_back(query->getColumn(0).getString());
        return out;
    });
}

std::vector<std::string> Ledger::coupons_of(const std::string &welder) {
    return guarded(path_, [&] {
        // As the index entry_by_welder says it, word for word, so that it is used.
        auto query = statement("SELECT subject FROM entry WHERE kind = 'coupon' AND "
                               "json_extract(body, '$.fields.welder') = ? "
                               "GROUP BY subject ORDER BY min(seq)");
        query->bind(1, welder);
        std::vector<std::string> out;
        while (query->executeStep()) out.push_back(query->getColumn(0).getString());
        return out;
    });
}

std::optional<Entry> Ledger::last_exam_by(const std::string &examiner, const std::string &method) {
    return guarded(path_, [&]() -> std::optional<Entry> {
        // As the index entry_by_examiner says it, word for word, so that it is used.
        auto query = statement(std::string("SELECT ") + columns +
                               " FROM entry AS e WHERE kind = 'exam' AND "
                               "json_extract(body, '$.examiner') = ? AND "
                               "json_extract(body, '$.method') = ? AND NOT EXISTS (SELECT 1 FROM "
                               "entry AS later WHERE later.supersedes = e.seq) "
                               "ORDER BY seq DESC LIMIT 1");
        query->bind(1, examiner);
        query->bind(2, method);
        if (!query->executeStep()) return std::nullopt;
        return sound_entry_from(*query);
    });
}

std::optional<Ledger::Document> Ledger::document(const std::string &hash) {
    return guarded(path_, [&]() -> std::optional<Document> {
        auto query = statement("SELECT name, bytes FROM document WHERE hash = ?");
        query->bind(1, hash);
        if (!query->executeStep()) return std::nullopt;
        Document out{query->getColumn(0).getString(), query->getColumn(1).getString()};
        if (sha256(out.bytes) != hash)
            throw StoreError(path_ + ": document " + shown(out.name) + " was changed after it was kept");
        return out;
    });
}

std::optional<std::string> Ledger::criteria_text(const std::string &hash) {
    return guarded(path_, [&]() -> std::optional<std::string> {
        auto query = statement("SELECT text FROM criteria WHERE hash = ?");
        query->bind(1, hash);
        if (!query->executeStep()) return std::nullopt;
        std::string text = query->getColumn(0).getString();
        if (sha256(text) != hash)
            throw StoreError(path_ + ": a text that verdicts rest on was changed after it was kept");
        return text;
    });
}

} // namespace beadbook
