#pragma once

#include <cstdint>
#include <optional>
#include <string>

namespace SQLite {
class Database;
} // namespace SQLite

namespace beadbook {

// What a record is held to when it is opened. They throw StoreError, which begins with the path.

/// That its tables, triggers and views are those that the migrations make.
void check_schema(SQLite::Database &db, const std::string &path);
/// That no entry was taken out from among the others: they are numbered without a gap. Counting reads an
/// index from end to end; of a large record it is noted how many were there, so that only what came since is
/// counted. Of what was cut off at the end only a head that was noted tells.
void check_whole(SQLite::Database &db, const std::string &path);
/// That nobody changed the end of the ledger, to which the next entry is bound.
void check_end(SQLite::Database &db, const std::string &path);

/// An entry up to which all were held to the chain.
struct Walked {
    std::int64_t seq = 0;
    std::string hash;
};
/// That all entries are there up to the one of this number and hash, and how many coupons begin among them.
struct Counted {
    std::int64_t entries = 0;
    std::string hash;
    std::int64_t coupons = -1; ///< as many as lists show; -1: nobody counted
};
/// What was looked at from end to end, as it is noted beside a record (records/walked_note.hpp).
struct Noted {
    std::optional<Walked> walked;
    std::optional<Counted> counted;
    bool any() const { return walked || counted; }
};
/// From so many entries on it is noted that they were counted: of fewer it takes no time.
inline constexpr std::int64_t worth_noting = 20'000;

/// That every entry stands as it was written and follows the one before it; those up to `walked` were held
/// before. What was moved to another subject is read by nobody who asks for the one that it was about, so
/// that only the whole chain tells of it. Returns how far it went.
Walked held_to_chain(SQLite::Database &db, const std::string &path, Walked walked);

} // namespace beadbook
