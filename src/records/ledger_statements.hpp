#pragma once

#include "records/ledger_rows.hpp"

namespace beadbook {

/// Statements that a long write runs again and again.
struct Ledger::Statements {
    explicit Statements(SQLite::Database &db)
        : last(db, "SELECT seq, hash FROM entry ORDER BY seq DESC LIMIT 1"),
          add(db, std::string("INSERT INTO entry (") + ledger_rows::columns +
                      ") VALUES (?,?,?,?,?,?,?,?,?,?,?,?)") {}
    SQLite::Statement last, add;
};

/// What is read again and again for each coupon of a list: to prepare it costs more than to run it.
struct Ledger::Asked {
    explicit Asked(SQLite::Database &db)
        : head(db, "SELECT hash FROM entry ORDER BY seq DESC LIMIT 1"),
          knows(db, "SELECT 1 FROM entry WHERE family = ? AND subject = ? LIMIT 1"),
          newest(db, "SELECT max(seq) FROM entry WHERE family = ? AND subject = ?"),
          entries(db, std::string("SELECT ") + ledger_rows::columns +
                          " FROM entry WHERE family = ? AND subject = ? ORDER BY seq"),
          subjects(db, "SELECT subject FROM entry WHERE family = ? GROUP BY subject ORDER BY min(seq)") {}
    SQLite::Statement head, knows, newest, entries, subjects;
};

/// One of them while it is used: one that is not reset would keep others from writing.
class InUse {
public:
    explicit InUse(SQLite::Statement &statement) : statement_(statement) {}
    ~InUse() {
        statement_.tryReset();
        statement_.clearBindings();
    }
    InUse(const InUse &) = delete;

    SQLite::Statement *operator->() { return &statement_; }
    SQLite::Statement &operator*() { return statement_; }

private:
    SQLite::Statement &statement_;
};

} // namespace beadbook
