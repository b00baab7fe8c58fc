#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>

namespace SQLite {
class Database;
}

namespace beadbook {

/// How a person of the record signs in at the bench.
struct Account {
    std::string person;
    std::string hash; ///< of the password, by Argon2id with its salt and cost
    bool locked = false;
    std::int64_t changed = 0; ///< counts up whenever any of it changes: sessions of before then end
};

/// The accounts, in a file of their own beside the record, which its owner alone may read. Not in the record:
/// that is copied, backed up and handed on with all it ever held, and a hash in it could be tried out for
/// ever.
class AccountFile {
public:
    /// The file that belongs to a record. It is made when the first account is kept.
    explicit AccountFile(const std::string &record);
    ~AccountFile();
    AccountFile(const AccountFile &) = delete;

    /// Throws StoreError.
    std::optional<Account> find(const std::string &person);
    /// Takes the place of what was kept, and adds a line to the log beside it, which only grows: `told` says
    /// what was changed, of whom, by whom. Neither without the other. Throws StoreError.
    void keep(const Account &account, const std::string &told);

private:
    SQLite::Database *open(bool makes);
    void add_to_log(const std::string &told);

    std::string path_;
    std::unique_ptr<SQLite::Database> db_;
};

} // namespace beadbook
