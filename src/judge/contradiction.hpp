#pragma once

#include "judge/bound_set.hpp"

#include <vector>

namespace beadbook {

/// Two statements on record that cannot both be true.
struct Contradiction {
    std::vector<int> indications; ///< the entry that contradicts itself; none: the coupon or an exam
    std::optional<Exam> method;   ///< an exam with fewer finds than are on record under it
    Missing between;              ///< the quantities that contradict each other
};

struct Contradictions {
    std::vector<Contradiction> found;
    std::size_t compared = 0; ///< pairs of statements that were held against each other
};

/// Compares what can be compared: the sizes of each entry with each other and with its place, its type with
/// its side, places with the length of the weld, the two thicknesses, a fillet's size with its longest leg,
/// whether the metal is magnetic with what it is, and each exam's number of finds with its entries.
Contradictions contradictions_in(const BoundSet &bound, const std::vector<ExamDone> &exams,
                                 const std::vector<Indication> &indications);

} // namespace beadbook
