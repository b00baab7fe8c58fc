#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace beadbook {

/// 0 to 9, whatever the locale.
constexpr bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// Without blanks at both ends.
std::string_view trimmed(std::string_view text);

/// Words between runs of blanks.
std::vector<std::string_view> words_of(std::string_view text);

/// Runs of letters (of ASCII), whatever stands between them.
std::vector<std::string_view> letters_in(std::string_view text);

/// In small letters (of ASCII).
std::string lowered(std::string_view text);
/// Without blanks, points, dashes and other signs of ASCII: letters and figures, and what is not ASCII.
std::string without_signs(std::string text);

/// Whether a text says that there is nothing to tell: "none", "n/a", "not used", or signs alone. Not an
/// empty one.
bool means_none(std::string_view text);

/// With blanks up to a width in bytes, and one in any case: a column of a listing.
std::string padded(std::string_view text, std::size_t width);

/// The text in lines of at most `width` characters, cut at blanks, each behind so many blanks. A word that is
/// longer has a line of its own.
std::string wrapped(std::string_view text, std::size_t width, std::size_t indent);

/// Input quoted in a message: cut at 60 characters, control bytes and broken UTF-8 replaced by '?'.
std::string shown(std::string_view text);

bool valid_utf8(std::string_view text);

/// For a screen or a printout: what would act on it or is not seen stands as its number, U+202E as
/// "<U+202E>". These are control characters (but line ends and tabs), marks that turn the direction of
/// writing, invisible separators and blanks without width, and bytes that are no UTF-8.
std::string visible(std::string_view text);
/// The same characters of a JSON text, escaped as JSON does it, so that they are read back.
std::string escaped_for_json(std::string_view json);

/// "1 row", "3 rows".
std::string counted(std::size_t number, const std::string &one);
std::string counted(std::size_t number, const std::string &one, const std::string &many);

/// Whether two words are the same but for capitals (of ASCII).
bool same_word(std::string_view a, std::string_view b);
/// The word of a list as it is written there, capitals aside; empty if it is none of them.
std::string word_among(std::string_view word, const std::vector<std::string> &list);

/// "a", "a and b", "a, b and c".
std::string listed(const std::vector<std::string> &items, std::string_view last = "and");

/// With the same between any two.
std::string joined(const std::vector<std::string> &items, std::string_view between);

/// The candidate nearest in spelling, if it is near enough to be what was meant, and says not the opposite
/// (with, without); else empty.
std::string nearest_word(std::string_view word, const std::vector<std::string> &candidates);

/// ", did you mean 'x'?" or nothing.
std::string did_you_mean(std::string_view word, const std::vector<std::string> &candidates);

} // namespace beadbook
