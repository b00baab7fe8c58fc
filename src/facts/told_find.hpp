#pragma once

#include "criteria/vocabulary.hpp"

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace beadbook {

/// A find that free words speak of: "MT has a crack", "arc strikes", "3/16 line at 3:00".
struct ToldFind {
    std::string word;          ///< that says it
    std::vector<TypeId> types; ///< any of which may be meant
    std::string clause;        ///< the part of the text that says it
    bool measured = false;     ///< with a size or a place
};
/// Those that a text tells and does not deny. An imperfection is named by a word in any of its forms; what a
/// line of a log would take, correct or ask about (cra, crak, line) counts where it stands as in such a line:
/// first, with a size or place behind it, or with nothing.
/// In what is kept only what is sure counts beside (facts/find_words); beside the word none whatever is
/// called a find, and in what is lost any word that may tell one.
enum class Heard : std::uint8_t { sure, beside_none, all };
std::vector<ToldFind> told_in(std::string_view text, const Vocabulary &vocabulary = Vocabulary::shipped(),
                              Heard heard = Heard::sure);
/// Whether a line that begins with a type's name is none of a find, by what stands behind it: `undercut gauge
/// G-3`, `slag removed`, `arc strikes: 0`, `leg 1/4 as asked`.
bool tells_no_find(std::string_view name, TypeId type, std::string_view behind,
                   const Vocabulary &vocabulary = Vocabulary::shipped());
/// Whether it may be a crack, or want of fusion or penetration.
bool is_planar_find(const ToldFind &told, const Vocabulary &vocabulary = Vocabulary::shipped());

} // namespace beadbook
