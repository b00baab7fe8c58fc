#pragma once

#include <cstdint>
#include <string>

namespace SQLite {
class Database;
} // namespace SQLite

namespace beadbook {

/// How many coupons the entries of the record at this path have more than its table for lists (less than 0:
/// fewer). In one moment of the record. A program that lives long, a bench, counts only what came since it
/// last looked.
std::int64_t lines_lacking(SQLite::Database &db, const std::string &path);

} // namespace beadbook
