#pragma once

#include "language/issue.hpp"

#include <optional>
#include <string>

namespace beadbook {

/// A line that begins in a column in which nothing above it is open.
struct WrongIndentation {
    Where where;
    std::string text; ///< what stands there and which line it seems to belong to
};

/// Of the line (from 1) at which a file could be read no further. Nothing if it begins where it may, or
/// stands in braces, in which columns mean nothing.
std::optional<WrongIndentation> wrong_indentation(const std::string &text, int line);

} // namespace beadbook
