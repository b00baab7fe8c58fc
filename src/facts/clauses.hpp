#pragma once

#include "measure/text.hpp"

#include <algorithm>
#include <iterator>
#include <string>
#include <string_view>
#include <vector>

namespace beadbook {

// Free words, taken apart.

/// Whether a word is one of these, whatever its letters' case.
template <std::size_t n>
bool is_one_of(std::string_view word, const std::string_view (&words)[n]) {
    return std::any_of(std::begin(words), std::end(words),
                       [&](std::string_view one) { return same_word(one, word); });
}
bool has_a_figure(std::string_view word);
/// The parts of a text that say one thing each, as words without signs at their ends: what one of them denies
/// another may say. A method begins one, and so does a word that turns: but, except.
std::vector<std::vector<std::string>> clauses_of(std::string_view text);
/// Whether a text's word means nought of what stands before it: `cracks: none`, `arc strikes: 0`.
bool means_nought(std::string_view word);

} // namespace beadbook
