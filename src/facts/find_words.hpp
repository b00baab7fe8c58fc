#pragma once

#include "criteria/vocabulary.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace beadbook {

// Words by which people tell a find that no name of a type is, and names with a slip in them.

/// Words of the bench that are one letter from a type's name.
bool is_of_the_bench(std::string_view word);
/// What a type's name in front of it is no find of: an undercut gauge, a tungsten electrode.
bool is_a_tool(std::string_view word);
/// Any word for something in a weld that is no name of an imperfection.
bool is_something(std::string_view word);
/// Whether one slip of the fingers makes the one word of the other: a letter more, less or another, or two
/// the other way round.
bool one_slip(std::string_view a, std::string_view b);

/// What words are taken for.
struct Meant {
    std::string word;
    std::vector<TypeId> types; ///< any of which may be meant; empty: nobody can say
};
/// Words of a clause that tell a find by what they deny: not fused, no fusion at the root.
std::optional<Meant> told_by_denial(const std::vector<std::string> &words, const Vocabulary &vocabulary);
/// Words that tell nothing but a find (fissure, hairline), and names with a slip in them that no other word
/// is (crak, undercutt). `words` is what the clause does not deny.
std::optional<Meant> surely_told(const std::vector<std::string> &words, const Vocabulary &vocabulary);
/// Any word for a find of whatever kind, for what stands beside the word none: indication, defect, LOF.
std::optional<Meant> some_find(const std::vector<std::string> &words);
/// Any word that may tell one, for what is kept nowhere: also short forms, words for something in a weld
/// (indication, linear), and any name with a slip in it.
std::optional<Meant> perhaps_told(const std::vector<std::string> &words, const Vocabulary &vocabulary);

} // namespace beadbook
