#pragma once

#include "facts/indication_record.hpp"
#include "facts/told_find.hpp"

#include <span>
#include <string>
#include <string_view>

namespace beadbook {

/// A comment without the # it begins with; all of it if there is none.
std::string_view behind_hash(std::string_view line);
/// Whether words read as what a find says: a type, and a number behind it or nothing more.
bool reads_as_find(std::string_view words, const Vocabulary &vocabulary = Vocabulary::shipped());
/// The find in a comment such as `# 4 crack 0.2` or `# MT crack 0.2`, written as it would be taken
/// (`#4 crack 0.2`); empty if the comment reads as none.
std::string find_in_comment(std::string_view line, const Vocabulary &vocabulary = Vocabulary::shipped());

/// The word by which a text, a # before it or not, tells a find (facts/told_find); empty if it tells none.
std::string word_of_find(std::string_view text, const Vocabulary &vocabulary = Vocabulary::shipped(),
                         Heard heard = Heard::sure);
/// The part of a find's remark that tells another find: by its size or place, or a crack, want of fusion or
/// of penetration by its name alone. Empty if none does.
std::string other_find_in_remark(const IndicationRecord &find, const WeldLine &weld, std::optional<Unit> unit,
                                 const Vocabulary &vocabulary = Vocabulary::shipped());
/// Why a comment is none in which a word names an imperfection, however it ends ("cracked") or is misspelt,
/// may tell one ("indication"), or tells a place: it would be kept nowhere. Empty if there is none.
std::string find_told_in_comment(std::string_view line, const Vocabulary &vocabulary = Vocabulary::shipped());
/// The same, and why a comment is none that reads like a find, written as it would be taken.
std::string why_no_comment(std::string_view line, const Vocabulary &vocabulary = Vocabulary::shipped());
/// Why a remark, a # before it or not, may not stand behind the word none: it tells a find, or takes that
/// word back. Empty if it may.
std::string not_behind_none(std::string_view remark, const Vocabulary &vocabulary = Vocabulary::shipped());
/// The word, place, size or number by which a text tells a find; empty if it tells none.
std::string told_beside_none(std::string_view text, const Vocabulary &vocabulary = Vocabulary::shipped());
/// Whether a text that is meant to say something else, a procedure or the note of a coupon, reads like a
/// find: one that a line of a log would be, or with its size or place.
bool reads_like_a_find(std::string_view text, const Vocabulary &vocabulary = Vocabulary::shipped());
/// Whether the note of an exam that found none tells a find, or takes that back.
bool note_tells_find(std::string_view note, const Vocabulary &vocabulary = Vocabulary::shipped());
/// The same, whether or not it takes that back.
bool tells_find_of_itself(std::string_view note, const Vocabulary &vocabulary = Vocabulary::shipped());
/// The part of a text that tells a find beside those that are logged, as none of them is of its type: by its
/// size or place, or a crack, want of fusion or of penetration by its name alone. Where none is logged
/// whatever tells_find_of_itself says. Empty if there is none.
std::string find_told_beside(std::string_view text, std::span<const IndicationRecord> logged,
                             const Vocabulary &vocabulary = Vocabulary::shipped());

} // namespace beadbook
