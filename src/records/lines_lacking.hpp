#pragma once

#include <cstdint>
#include <string>

namespace SQLite {
class Database;
} // namespace SQLite

namespace beadbook {

/// How many coupons the entries of the record at this path have more than its table for lists (less than 0:
/// fewer). In one moment of the record. Counts only what came since this program last looked, or since it was
/// noted beside the record; `may_note` where nothing is being written to it here.
std::int64_t lines_lacking(SQLite::Database &db, const std::string &path, bool may_note);

} // namespace beadbook
