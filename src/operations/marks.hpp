#pragma once

#include <string>
#include <vector>

namespace beadbook {

/// The marks that a word means, in order: "T-1", "T-1..T-15" or "T-1..15" (as many digits as the first, where
/// it has leading noughts), and several of these with commas. Throws Refusal: ends that are not alike,
/// backwards, one twice, or more than `most_marks`.
std::vector<std::string> marks_in(const std::string &word);
/// The mark that a series of one means; the word itself if it means several, or is none.
std::string one_mark(const std::string &word);
inline constexpr int most_marks = 1000;

/// What marks have in common that differ only in capitals and leading zeros.
std::string plain_mark(const std::string &mark);
/// What marks have in common that a reader takes for one another: G-2, G2, g-02, "G 2" and G-2., G-01 and
/// G-O1, G-1 and G-I, and letters of other alphabets that look so. The one notion of it, for coupons, welders
/// and serials.
std::string seen_mark(const std::string &mark);
/// Whether two marks have that in common.
bool seen_alike(const std::string &a, const std::string &b);
/// Why a mark looks as if another was meant: it ends with a sign, or names two of a series (P-7-P-9). Empty:
/// it does not.
std::string odd_mark(const std::string &mark);

/// The next mark of a series after those that are taken: T-15 gives T-16; empty if the mark ends with no
/// number.
std::string next_mark(const std::string &mark);

/// "T-1 to T-15" where they are a series, else listed.
std::string marks_text(const std::vector<std::string> &marks);

} // namespace beadbook
