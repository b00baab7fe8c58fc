#include "records/schema.hpp"

#include "criteria/shipped.hpp"
#include "measure/sha256.hpp"
#include "measure/text.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <map>
#include <mutex>

namespace beadbook::schema {
namespace {

/// Numbered migrations; version n is reached by the n-th.
const std::vector<std::string> migrations{
    "0001_ledger.sql",           "0002_welders.sql", "0003_coupons_of_welder.sql",
    "0004_people_equipment.sql", "0005_sent.sql",    "0006_owners_copy.sql",
    "0007_coupon_lines.sql",     "0008_photos.sql",  "0009_at_scale.sql"};

/// Of what the migrations make, held by a test.
constexpr std::string_view newest_fingerprint =
    "053c226130c0ae69fd82ccc643c3ba32d048e7ea7972dbd3ec0517ba46631fa8";

/// "trigger entry_never_goes" and the statement that made it; an index that SQLite makes by itself has none.
using Parts = std::map<std::string, std::string>;

Parts parts_of(SQLite::Database &db) {
    Parts out;
    // What ANALYZE leaves behind steers only which index is taken.
    SQLite::Statement query(db, "SELECT type, name, tbl_name, sql FROM sqlite_schema "
                                "WHERE name NOT LIKE 'sqlite\\_stat%' ESCAPE '\\'");
    while (query.executeStep())
        out[query.getColumn(0).getString() + " " + query.getColumn(1).getString()] +=
            query.getColumn(2).getString() + "\n" +
            (query.getColumn(3).isNull() ? "" : query.getColumn(3).getString());
    return out;
}

void step(SQLite::Database &db, int version) {
    db.exec(shipped_file(migrations[static_cast<std::size_t>(version)]));
    db.exec("PRAGMA user_version = " + std::to_string(version + 1));
    db.exec("PRAGMA application_id = " + std::to_string(application_id));
}

/// Made once for each version that is met.
const Parts &parts_of_version(int version) {
    static std::mutex mutex;
    static std::map<int, Parts> made;
    const std::lock_guard lock(mutex);
    const auto found = made.find(version);
    if (found != made.end()) return found->second;
    SQLite::Database db(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    db.exec("PRAGMA foreign_keys = ON"); // as a record has it while it is migrated
    for (int v = 0; v < version; ++v) step(db, v);
    return made.emplace(version, parts_of(db)).first->second;
}

} // namespace

int newest_version() { return static_cast<int>(migrations.size()); }

void migrate(SQLite::Database &db) {
    for (int v = db.execAndGet("PRAGMA user_version").getInt(); v < newest_version(); ++v) step(db, v);
}

std::string fingerprint(SQLite::Database &db) {
    std::string all;
    for (const auto &[name, text] : parts_of(db)) all += name + "\n" + text + "\n\n";
    return sha256(all);
}

std::vector<std::string> faults(SQLite::Database &db, int version) {
    // To make them all is most of a short command's time, so the newest are known by their hash.
    if (version == newest_version() && fingerprint(db) == newest_fingerprint) return {};
    const Parts &made = parts_of_version(version);
    const Parts found = parts_of(db);
    std::vector<std::string> out;
    for (const auto &[name, text] : made)
        if (const auto here = found.find(name); here == found.end())
            out.push_back(shown(name) + " is gone");
        else if (here->second != text)
            out.push_back(shown(name) + " is not as this program makes it");
    for (const auto &[name, text] : found)
        if (!made.contains(name)) out.push_back(shown(name) + " is none of ours");
    return out;
}

} // namespace beadbook::schema
