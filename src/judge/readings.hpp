#pragma once

#include "judge/evaluation.hpp"

#include <map>

namespace beadbook {

/// What is on record, read as somebody else might read it.
struct OtherReading {
    std::vector<Indication> indications;
    Shapes shapes = Shapes::by_measures;
    std::map<int, std::vector<int>>
        behind;      ///< entries that are read otherwise, by the number they have in it
    Missing between; ///< what the record would have to say more clearly
    Methods methods = Methods::apart;
};

/// Other readings that an accept must hold under too. Finds of one family (see family.hpp), side and exam
/// that touch or overlap, taken as the one imperfection that they may be, where no merging clause of the set
/// decides (common practice, no source), by either name; the same of those that one rule limits the size of,
/// whatever their family; those that nobody said the place of, end to end (see
/// end_to_end.hpp), by either name; and finds whose name says linear and which were measured as wide as long,
/// where the set's own rule calls them rounded, taken by their name. What methods found apart is taken
/// together by over_methods.hpp.
std::vector<OtherReading> other_readings(const BoundSet &bound, const std::vector<Indication> &indications);

/// A class that nothing speaks against is open where the other reading would not be accepted: each of its
/// reasons is told as a contradiction of the entries that are read otherwise.
void hold_against(const OtherReading &reading, const Evaluation &other, Evaluation &evaluation);

} // namespace beadbook
