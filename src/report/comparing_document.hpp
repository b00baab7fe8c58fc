#pragma once

#include "operations/comparing.hpp"
#include "report/document.hpp"

namespace beadbook {

/// Two sets side by side: a table a method of what differs, and what is the same.
Document document_of(const ComparedSets &all);

/// Types by their widest names: "porosity, crack but not microcrack".
std::string types_in_words(const TypeSet &types);
/// What is measured, in which stretch: "sum of length in any 12 in".
std::string thing_in_words(const ComparedSets &all, const ComparedClasses &classes,
                           const ComparedThing &thing);
/// "to 3 mm", "over 3 mm to 10 mm", "any thickness".
std::string stretch_in_words(const ThicknessStretch &stretch, Unit unit);
/// What one side says: its limit as written, with the numbers at the ends of the stretch.
std::string said_in_words(const ComparedSets &all, const CriteriaSet &set, std::size_t class_index,
                          const SaidOfThing &said);

} // namespace beadbook
