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

} // namespace beadbook
