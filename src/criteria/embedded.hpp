#pragma once

#include <span>
#include <string_view>

namespace beadbook {

/// A file of criteria/, records/ or src that the build put into the program.
struct EmbeddedFile {
    std::string_view name; ///< below criteria/ ("welder/asme-ix.yaml") or records/; below src/web or src
    std::string_view text;
    std::string_view tree; ///< of YAML, as language/packed_yaml has it
};

/// All of them.
std::span<const EmbeddedFile> embedded_files();

} // namespace beadbook
