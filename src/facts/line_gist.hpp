#pragma once

#include "facts/indication_record.hpp"

#include <string_view>
#include <vector>

namespace beadbook {

// What a line of a log that was not taken speaks of, as far as that can be told.

/// The types that a line may mean, whatever else is wrong with it: the one that it names, else those that its
/// word is short for or nearest to. Empty if nothing tells.
std::vector<TypeId> types_spoken_of(std::string_view line,
                                    const Vocabulary &vocabulary = Vocabulary::shipped());

/// Whether the line tells that find: a type that it may be, its place, and no word that it contradicts (sharp
/// and smooth). A place that is not understood is the same one if it is typed so but for letters that look
/// like figures, and for its unit.
bool may_tell(std::string_view line, const IndicationRecord &find, const WeldLine &weld,
              std::optional<Unit> unit, const Vocabulary &vocabulary = Vocabulary::shipped());

/// Whether a place is written in the line other than that one.
bool tells_another_place(std::string_view line, const IndicationRecord &find, const WeldLine &weld,
                         std::optional<Unit> unit);

} // namespace beadbook
