#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace beadbook::codec {

/// JSON as a tree that knows where each value stood, for files that people and other programs write: mistakes
/// are named with their place, and a key that stands twice is seen. Entries of the ledger are read without
/// this.
struct Located {
    enum class Kind : std::uint8_t { null, truth, number, text, list, object };
    Kind kind = Kind::null;
    bool yes = false;             ///< Kind::truth
    bool is_whole = false;        ///< Kind::number, and `whole` holds it
    std::int64_t whole = 0;       ///< Kind::number
    std::size_t at = 0;           ///< byte where the value begins
    std::string text;             ///< of a text; of a number as it was written
    std::vector<Located> items;   ///< of a list or an object, in the file's order
    std::string key;              ///< of an object's item
    std::size_t key_at = 0;       ///< byte where the key begins
    bool key_given_twice = false; ///< an item before it has the same key

    /// The first item of an object with the key; null if there is none.
    const Located *find(const std::string &key) const;
    /// What it is, for a message: the text "x", the number 3, a list, an object, true, null.
    std::string said() const;
};

/// Of a file as large as is read, as the export writes it, there are fewer; each takes some 150 bytes.
inline constexpr std::size_t most_values_read = 4'000'000;
/// Throws DataError with line and column: not JSON, lists and objects nested deeper than any exchange file
/// is, or more values than that.
Located read_located(const std::string &text, std::size_t most_values = most_values_read);

/// "3:14", line and column (in characters) of a byte, from 1.
std::string place_in(const std::string &text, std::size_t byte);

} // namespace beadbook::codec
