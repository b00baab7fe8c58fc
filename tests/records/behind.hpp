#pragma once

#include <SQLiteCpp/SQLiteCpp.h>
#include <string>
#include <utility>
#include <vector>

namespace beadbook::test {

/// Changes a record's file behind the program's back, and leaves its tables as they were: the triggers are
/// taken away and put back, so that only what was changed can be found.
inline void behind(const std::string &path, const std::string &sql) {
    SQLite::Database db(path, SQLite::OPEN_READWRITE);
    std::vector<std::pair<std::string, std::string>> triggers;
    {
        SQLite::Statement query(db, "SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'");
        while (query.executeStep())
            triggers.emplace_back(query.getColumn(0).getString(), query.getColumn(1).getString());
    }
    db.exec("PRAGMA foreign_keys = OFF");
    for (const auto &[name, text] : triggers) db.exec("DROP TRIGGER " + name);
    db.exec(sql);
    for (const auto &[name, text] : triggers) db.exec(text);
}

} // namespace beadbook::test
