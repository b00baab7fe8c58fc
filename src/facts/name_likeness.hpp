#pragma once

#include <string>
#include <string_view>

namespace beadbook {

/// A name in the small letters of ASCII that it is read as: marks over letters are taken off, letters of
/// other alphabets that look like a Latin one are that, what is not seen is nothing. Other letters stay.
std::string folded_name(std::string_view name);

/// Whether two texts may name one person, as far as anybody can see: look-alike letters, other order, names
/// cut down to initials or left out ("A. Field", "Field, Arthur", "Field"). Of several names in a text one is
/// enough. Common practice, no source.
bool may_be_same_person(std::string_view a, std::string_view b);

/// Whether one of two texts may be the other with a slip of the hand: one letter of a word of four or more is
/// another, too many, missing, or changed places with its neighbour ("A Feild"). Common practice, no source.
bool may_be_misspelt(std::string_view a, std::string_view b);

/// Either of both: whether somebody may take one for the other. A single letter stands for anybody, so it is
/// taken for nobody, and a letter with a figure is a mark.
bool may_be_taken_for(std::string_view a, std::string_view b);

} // namespace beadbook
