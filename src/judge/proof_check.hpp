#pragma once

#include "judge/bound_set.hpp"
#include "judge/proof.hpp"

namespace beadbook {

/// How statements on record were held against each other, for all classes alike.
struct Agreement {
    bool holds = true;        ///< none contradicts another
    std::size_t compared = 0; ///< pairs of statements, entries that may be read otherwise, rules over methods
};

/// lack_in, where the set is bound to the coupon and the statements were compared.
std::optional<ProofLack> lack_in(const Proof &proof, const BoundSet &bound, std::size_t class_index,
                                 const std::vector<ExamDone> &exams,
                                 const std::vector<Indication> &indications, const Agreement &agreement);

} // namespace beadbook
