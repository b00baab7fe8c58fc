#pragma once

#include "facts/log_line_hints.hpp"

namespace beadbook {

/// The type that a line can mean where none is named: by its first letters. `around.from` begins where
/// the type should stand, `found` is all of it before a number. Throws InputError, with the column `begin`:
/// several are meant, or none.
NamedType guessed_type(const LineAround &around, std::string_view found, std::size_t begin,
                       const Vocabulary &vocabulary);

} // namespace beadbook
