#pragma once

#include "facts/stamp.hpp"
#include "records/book.hpp"

#include <string>
#include <vector>

namespace beadbook {

/// What was said of a welder and is said no more: on paper it would stand there, struck out.
struct StruckOut {
    enum class Kind : std::uint8_t { name, employer, entry };
    Kind kind = Kind::name;
    std::string was;       ///< entry: its kind, and the qualification that it was about, "revocation #1"
    std::string now;       ///< entry: always empty
    std::string day, text; ///< entry: of what happened
    std::string why;
    Stamp stamp;
    std::int64_t entry = 0; ///< that struck it out
};
std::string_view name_of(StruckOut::Kind kind);
/// In the order in which it was done.
std::vector<StruckOut> struck_out(Book &book, const std::string &mark);

/// What a welder was called, or for whom he worked (Kind::name, Kind::employer), once that entry was made;
/// empty: not told.
std::string said_at(Book &book, const std::string &mark, StruckOut::Kind kind, std::int64_t entry);

/// Whether nothing in two names speaks for one person: no word in common, none of them cut down or misspelt.
/// A name that is not told is nobody's. Common practice, no source.
bool of_two_persons(const std::string &name, const std::string &other);

} // namespace beadbook
