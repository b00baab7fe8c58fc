#pragma once

#include "criteria/own_measure.hpp"
#include "facts/indication_record.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace beadbook {

// What a line of a log may mean that is not understood.

struct NamedType {
    TypeId type = 0;
    std::size_t length = 0; ///< of the words that name it
};
/// The type that a text begins with: the longest run of words that names one.
std::optional<NamedType> type_named(std::string_view text, const Vocabulary &vocabulary);

/// Short names of types that join other words of a line: lack of fusion, hole in weld.
bool joins_words(std::string_view word);

/// UT, but no word of a find.
bool like_a_method(std::string_view word);

/// Whether a text begins with an angle or a bare number, and the type is one of which an angle is measured
/// (weld toe, angular misalignment; ISO 6520-1: 505, 508).
bool angle_at(std::string_view text, const ImperfectionType &type);

/// Whether words say that nothing was found: none, nothing found, no indications; a point behind them or not.
bool says_none(std::string_view words);

/// Whether words may have been meant so, and do not say it: ok, nil, clean, acc.
bool reads_as_none(std::string_view words);

/// Whether words say that an exam is over, and name no find: done, finished.
bool says_over(std::string_view words);

/// Throws InputError at a sign of a word processor, which looks like one that a line may hold.
void check_typed_signs(std::string_view said);

/// The names of the types, or of the first ones, which are enough to see what is asked.
std::string few_of(const std::vector<TypeId> &types, const Vocabulary &vocabulary);

/// A line around the words that should name a type.
struct LineAround {
    std::string_view before; ///< the words: a number, a method
    std::string_view from;   ///< the words on, without the remark
    std::string_view remark;
};
/// What to write for words with a type behind another word, "toe crack"; empty if there is none. `words` are
/// the beginning of `line.from`.
std::string type_behind(std::string_view words, const LineAround &line, const Vocabulary &vocabulary);

/// The length of a type's name without the key at its end, where a number stands behind that: `cap height
/// 0.03` tells the height of a cap.
std::size_t before_its_key(std::string_view text, std::size_t length);

/// Two numbers with an x between them, the longer one first, of a type that is measured by its depth or
/// height: people write that one as well as the width behind the length; or of a dimension, which is one
/// number. Throws InputError there.
void check_two(std::string_view longer, std::string_view other, const ImperfectionType &type, OwnMeasure own,
               std::size_t column);

/// Throws InputError where `left` or `right` stands behind the number of `across 0.1`, which ends at `end`.
void check_side_behind(std::string_view across, std::size_t end, std::size_t column);

/// No unit but glued to the number that ends there, as in 0.5mmm or 1,5: the message shows it whole. An x
/// stands between two numbers and a comma may end the part.
bool stuck_at(std::string_view text, std::size_t end);

/// What a text calls the number before it: `long ...`, `deep ...`; null if it does not.
const MeasureKey *key_behind(std::string_view text);

/// Words that begin a measure or a place, and those that stand by themselves.
std::vector<std::string> keys_of_a_line();

/// `l 3/8` for `l=3/8 ...` and `l: 3/8 ...`; empty if the text begins with no key and its sign.
std::string without_sign(std::string_view text);

/// Why the word that a text begins with says nothing of a find of that type; `parted`: a blank stands before
/// it.
std::string why_not_understood(std::string_view text, std::string_view word, bool parted, TypeId type,
                               const Vocabulary &vocabulary);

} // namespace beadbook
