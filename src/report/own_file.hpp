#pragma once

#include "criteria/model.hpp"
#include "report/document.hpp"

namespace beadbook {

/// That a set is not one of those shipped, and what a shipped one that it could be taken for has and it
/// lacks: a line each. Nothing of a shipped set.
void add_own_file(Document &doc, const CriteriaSet &set);

/// "looks like the shipped iso-23277, which says more: of crack (PT: 3 rules, 1 here); without its rules
/// crack and overlap". One sentence a set.
std::vector<std::string> lacking_words(const CriteriaSet &set);

/// " (own file 3f2a9c1b)", to stand behind a verdict; empty of a shipped one.
Words own_file_behind(const std::string &mark);

} // namespace beadbook
