#pragma once

#include <functional>
#include <string>
#include <string_view>

namespace beadbook {

// What free words tell of a find that they do not name.

/// The part of a text that tells a place on a weld: `3:00 cr`, `0.2 at 3:30`, `has one at 4:00`. Empty if
/// none does; no place is where a scale begins, how far off somebody looked, nor a time of the day that says
/// so.
std::string place_told(std::string_view text);
/// The same of a size that stands as one: `0.3 long`, `hole 0.2`; and of how many were found.
std::string size_told(std::string_view text);
std::string number_told(std::string_view text);
/// The word by which a text takes back the word none before it, in part: except, only, half, not seen,
/// fogged.
std::string taken_back(std::string_view text);
/// The part of a text that tells another find than the one before it: `second one at 60`, `2 more at 7:00`.
std::string another_told(std::string_view text);
/// The part of a find's remark that tells a size which is none of those that are `known` of it: `max .012`,
/// `1/8 in deep`. A size is given as it stands, with its unit if it has one.
std::string another_size_told(std::string_view text, const std::function<bool(std::string_view)> &known);
/// The part that tells what weighs more than the find does: `sharp notch at the end`, `through wall`, `tight
/// line`. Common practice, no source.
std::string worse_told(std::string_view text);
/// The part that tells more finds beside it, wherever they are: `3 more like it`, `one of several`.
std::string more_told(std::string_view text);

} // namespace beadbook
