#pragma once

#include "language/yaml.hpp"

#include <optional>
#include <string_view>

namespace beadbook {

/// A tree as text that is read far faster than YAML: files that are built in were read when the program was
/// built (src/embed).
std::string packed(const Yaml &tree);
/// Throws std::logic_error: not such a text.
Yaml unpacked(std::string_view text);

/// The packed tree of a file that is built in, by its whole text; nothing of any other text.
std::optional<std::string_view> packed_tree_of(std::string_view text);

} // namespace beadbook
