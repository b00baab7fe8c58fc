#pragma once

#include "criteria/model.hpp"
#include "criteria/set_below.hpp"
#include "language/issue.hpp"

namespace beadbook {

/// Whether a part of the set that decides speaks of a quantity; what is declared alone is none.
bool speaks_of(const CriteriaSet &set, Quantity quantity);

/// Doubtful things in a set that loads: a stricter class with a looser limit (an error if the set says its
/// classes are ordered), table bands that overlap (error) or leave holes (warning), rules that no class uses,
/// merging that could hide a spacing rule, and what criteria/doubts.hpp names. Gives those that the file does
/// not answer.
std::vector<Doubted> lint(const CriteriaSet &set, const SetBelow &below, const Vocabulary &vocabulary,
                          Issues &issues);

/// Types of imperfection for which no rule speaks, by exam: what would always be "cannot say".
struct Uncovered {
    Exam exam;
    std::vector<std::string> types;
};
std::vector<Uncovered> uncovered_types(const CriteriaSet &set, const Vocabulary &vocabulary);

} // namespace beadbook
