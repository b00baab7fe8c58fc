#include "records/account_file.hpp"

#include "measure/refusal.hpp"
#include "records/unfinished_file.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <cerrno>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

namespace beadbook {
namespace {

constexpr int patience_ms = 5000;

template <class Work>
auto in_account_file(const std::string &path, Work work) {
    try {
        return work();
    } catch (const SQLite::Exception &e) {
        throw StoreError(path + ": the accounts cannot be used: " + e.what());
    }
}

} // namespace

AccountFile::AccountFile(const std::string &record) : path_(record + ".accounts") {}
AccountFile::~AccountFile() = default;

SQLite::Database *AccountFile::open(bool makes) {
    if (db_) return db_.get();
    struct stat about {};
    const auto looked = [&] { return stat(path_.c_str(), &about) == 0; };
    // Looked at, never opened by hand: see record_bytes in record_file.cpp. Made by hand, because SQLite
    // would make it readable for others; its journals take the same mode.
    if (!looked() && errno == ENOENT) {
        if (!makes) return nullptr;
        UnfinishedFile(path_, Readers::owner).finish(); // or another program was quicker
        looked();
    }
    if ((about.st_mode & S_IFMT) != S_IFREG) throw StoreError(path_ + ": the accounts cannot be opened");
    if ((about.st_mode & 077) != 0)
        throw StoreError(path_ + ": others may read the accounts; 'chmod 600' closes them");
    db_ = std::make_unique<SQLite::Database>(path_, SQLite::OPEN_READWRITE, patience_ms);
    db_->exec("PRAGMA synchronous = FULL");
    db_->exec(
        "CREATE TABLE IF NOT EXISTS account (person TEXT PRIMARY KEY, hash TEXT NOT NULL, locked INTEGER "
        "NOT NULL, changed INTEGER NOT NULL)");
    return db_.get();
}

std::optional<Account> AccountFile::find(const std::string &person) {
    return in_account_file(path_, [&]() -> std::optional<Account> {
        SQLite::Database *db = open(false);
        if (!db) return std::nullopt;
        SQLite::Statement row(*db, "SELECT hash, locked, changed FROM account WHERE person = ?");
        row.bind(1, person);
        if (!row.executeStep()) return std::nullopt;
        return Account{person, row.getColumn(0).getString(), row.getColumn(1).getInt() != 0,
                       row.getColumn(2).getInt64()};
    });
}

void AccountFile::keep(const Account &account, const std::string &told) {
    in_account_file(path_, [&] {
        SQLite::Database &db = *open(true);
        SQLite::Transaction both(db, SQLite::TransactionBehavior::IMMEDIATE);
        SQLite::Statement row(
            db, "INSERT INTO account VALUES (?, ?, ?, 1) ON CONFLICT (person) DO UPDATE SET hash = "
                "excluded.hash, locked = excluded.locked, changed = changed + 1");
        row.bind(1, account.person);
        row.bind(2, account.hash);
        row.bind(3, account.locked ? 1 : 0);
        row.exec();
        add_to_log(told);
        both.commit();
    });
}

void AccountFile::add_to_log(const std::string &told) {
    const std::string path = path_ + ".log", line = told + "\n";
    const int log = ::open(path.c_str(), O_WRONLY | O_APPEND | O_CREAT | O_CLOEXEC | O_NOFOLLOW, 0600);
    // In one write, so that lines of two programs do not mix.
    bool whole = log >= 0 && ::write(log, line.data(), line.size()) == static_cast<ssize_t>(line.size()) &&
                 ::fsync(log) == 0;
    if (log >= 0) whole = ::close(log) == 0 && whole;
    if (!whole) throw StoreError(path + ": cannot be written; nothing was changed");
}

} // namespace beadbook
