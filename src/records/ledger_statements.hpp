#pragma once

#include "records/ledger_rows.hpp"

#include <map>

namespace beadbook {

/// Statements by their text, each prepared once: to prepare one often costs more than to run it.
struct Ledger::Prepared {
    std::map<std::string, SQLite::Statement, std::less<>> by_text;
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
