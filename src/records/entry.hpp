#pragma once

#include "facts/stamp.hpp"

#include <cstdint>
#include <optional>
#include <span>
#include <string>

namespace beadbook {

/// What an entry is about. A coupon and a welder may have the same mark, and so may all others.
enum class Family : std::uint8_t { coupon, welder, person, equipment, criteria };

Family family_of(const std::string &kind);
/// coupon, welder, person, equipment, criteria.
const char *name_of(Family family);

/// One line of the ledger.
struct Entry {
    std::int64_t seq = 0; ///< 0 until it is written
    std::string at, who, kind;
    std::string
        subject; ///< the coupon, the welder's mark, the person's name, the serial number, the criteria set
    std::optional<int> exam, number;
    std::optional<std::int64_t> supersedes;
    std::string reason; ///< why it supersedes
    std::string body;   ///< canonical JSON text, hashed and stored byte for byte
    std::string previous, hash;
};

/// The hash of an entry: SHA-256 over its fields and the hash before it, as one JSON array.
std::string hash_of(const Entry &entry);

/// The body of an entry that takes something back, and whether one is such.
std::string withdrawal(std::optional<int> number);
/// Of a find that was moved to another coupon: what it is there.
struct MovedTo {
    std::string coupon;
    int exam = 0, number = 0;
};
std::string withdrawal_by_move(int number, const MovedTo &to);
std::optional<MovedTo> moved_to(const Entry &entry);
bool is_withdrawal(const Entry &entry);

/// The entry that another one supersedes; null if it supersedes none of them.
const Entry *superseded_by(const Entry &entry, std::span<const Entry> history);

/// Leaves those that stood before an entry; all, if none is given.
void leave_out_since(std::vector<Entry> &history, std::optional<std::int64_t> before);

/// The body of an entry that somebody made who had signed in, and the same without that word.
std::string signed_in(const std::string &body);
std::string without_sign_in(const std::string &body);
/// Who made it and when, and whether he had signed in.
Stamp stamp_of(const Entry &entry);

} // namespace beadbook
