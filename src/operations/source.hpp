#pragma once

#include "operations/outside.hpp"

#include <optional>
#include <string>

namespace beadbook {

/// A text that a person brings: a file by its path, or text that came another way (typed, piped, sent) under
/// a name that messages call it by.
struct Source {
    std::string name;
    std::optional<std::string> text = {}; ///< absent: `name` is a path

    /// Throws DataError: the file cannot be read.
    std::string read(const Outside &outside) const { return text ? *text : outside.read(name); }
};

} // namespace beadbook
