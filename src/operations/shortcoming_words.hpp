#pragma once

#include "facts/shortcoming.hpp"

#include <string_view>

namespace beadbook {

/// "coupon T-3 failed on 2026-10-05, training on 2026-10-08".
std::string words_of(const AfterFailure &after);
/// "renewal of 2026-11-20, set aside: ...; because: ...".
std::string words_of(const Aside &aside, const RangeRules *rules);

/// "RT and mechanical tests (bend, fracture or section)", of methods and "mechanical".
std::string named_exams(std::vector<std::string> exams, std::string_view last);

/// "aws-d17.1, class A [clause, read]".
std::string accepted_by_words(const RangeRules &rules);

/// What is lacking, in a sentence with its clause. `rules` are those that ask it; null where their text is
/// not at hand.
std::string words_of(const Shortcoming &one, const RangeRules *rules);
std::vector<std::string> words_of(const std::vector<Shortcoming> &all, const RangeRules *rules);

} // namespace beadbook
