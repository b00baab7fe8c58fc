#pragma once

#include "operations/examining.hpp"

#include <functional>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace beadbook {

/// Takes the first word off, and the blanks behind it.
std::string_view take_word(std::string_view &rest);

/// The methods of a head of a sheet: `VT MT; by A. Field`. Empty if the line is none; `knows` tells whether a
/// word is the mark of a coupon, with which other lines begin. Throws Refusal: it is meant as a head, and is
/// not written as one.
std::vector<Exam> methods_of_head(std::string_view line,
                                  const std::function<bool(const std::string &)> &knows);

/// `practice VT iso-17637-vt`: the practice of one method of several. Nothing if the part says anything else.
std::optional<std::pair<Exam, std::string>> practice_of_one(std::string_view said);

/// Why, where it says `incomplete: why`; empty: it does not say why. Imperfections begin with the word too:
/// without its colon it is nothing of that kind.
std::optional<std::string> incomplete_because(std::string_view said);

/// One part of a head behind its methods: `by A. Field`, `light=1000 lx`. `keys` are those that the head said
/// before; all but equipment stand once. Throws Refusal.
void take_head_part(std::string_view said, ExamRequest &exam, std::set<std::string_view> &keys);

} // namespace beadbook
