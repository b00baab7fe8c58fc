#pragma once

#include "criteria/vocabulary.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace beadbook {

// Several finds that somebody means to tell by one line, which is one find.

/// Whether one of these words says that there are several, or a group: four, x3, both toes, row of.
bool tells_several(std::string_view words);
/// How several finds of a type are logged; `said` is the line's words that tell them.
std::string how_several_are_logged(std::string_view said, TypeId type, const Vocabulary &vocabulary);
/// The part of a find's remark that tells nothing but how many there are, or that they are a group: no rule
/// reads it. Empty if none does.
std::string number_in_remark(std::string_view remark, const Vocabulary &vocabulary = Vocabulary::shipped());
/// The name of one find by the plural of it (pores: pore); empty if the word is no plural of a name.
std::string one_of_plural(std::string_view word, const Vocabulary &vocabulary = Vocabulary::shipped());

} // namespace beadbook
