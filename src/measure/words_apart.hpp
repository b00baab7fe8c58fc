#pragma once

#include <string>
#include <vector>

namespace beadbook {

/// The words of a text in which some letters stand for blanks: commas, say.
std::vector<std::string> words_apart(std::string text, bool (*is_blank)(char));

/// A letter of ASCII that is neither a letter of the alphabet nor a figure.
bool is_ascii_sign(char c);

} // namespace beadbook
