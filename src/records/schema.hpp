#pragma once

#include <string>
#include <vector>

namespace SQLite {
class Database;
}

/// The tables, indexes, triggers and views of a record, and whether they are still as this program makes
/// them. They decide what a query sees and what a write leaves behind, so a record is no better than they
/// are.
namespace beadbook::schema {

/// `PRAGMA application_id` of a record: "BEAD".
inline constexpr int application_id = 0x42454144;
/// The same of a copy that is only read (records/shop_copies.hpp): "BEAC". Older programs leave it alone.
inline constexpr int reading_copy_id = 0x42454143;

/// The number of the last migration.
int newest_version();

/// Applies what is missing, within a transaction of the caller's. `db` is empty or a record of version 1 or
/// later.
void migrate(SQLite::Database &db);

/// SHA-256 of all of them.
std::string fingerprint(SQLite::Database &db);

/// What is not as the migrations up to `version` make it: a trigger that is gone, a table written otherwise,
/// a view of somebody else's. Held against a database that this program makes in memory, so that no list of
/// what must be there can grow old. Empty: all is as it should be.
std::vector<std::string> faults(SQLite::Database &db, int version);

} // namespace beadbook::schema
