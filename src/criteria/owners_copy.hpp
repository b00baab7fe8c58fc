#pragma once

#include "criteria/model.hpp"

#include <memory>

namespace beadbook {

/// A limit that a shop held against its own printed copy.
struct ConfirmedLimit {
    std::string part; ///< id of a rule, or of a part of the scope, a relevance or merging clause or an exam
    std::string class_id; ///< of a rule; empty for the others, which have one standing
    std::string words;    ///< "confirmed by A. Field (page 12, edition ...)"
    friend bool operator==(const ConfirmedLimit &, const ConfirmedLimit &) = default;
};

/// What a record says of one set beside its text.
struct OwnersCopy {
    std::vector<Filling> fillings; ///< by blank and class
    std::vector<ConfirmedLimit> confirmed;
    std::vector<FallenFilling> fallen = {};
    bool empty() const { return fillings.empty() && confirmed.empty() && fallen.empty(); }
    friend bool operator==(const OwnersCopy &, const OwnersCopy &) = default;
};

/// The set with its blanks filled and its standings confirmed; text and hash stay those of the file. What
/// speaks of no blank, rule or class of the set changes nothing. Without anything to add it is the same set.
std::shared_ptr<const CriteriaSet> with_owners_copy(std::shared_ptr<const CriteriaSet> set,
                                                    const OwnersCopy &copy);

} // namespace beadbook
