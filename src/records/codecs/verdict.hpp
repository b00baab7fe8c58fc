#pragma once

#include "facts/coupon_state.hpp"
#include "records/entry.hpp"

#include <optional>

/// Verdicts in entries. Form 2 holds numbers, ids and kinds with the hashes of set and vocabulary and the
/// number of the engine, so that it can be taken again and compared whatever the words are by then. Form 1
/// held sentences.
namespace beadbook::codec {

/// `own`: by the file that the coupon names as its criteria.
std::string verdict_body(const CriteriaSet &set, const Judgement &judgement, std::optional<bool> own = {},
                         const Vocabulary &vocabulary = Vocabulary::shipped());
StoredVerdict verdict_from(const Entry &entry);

/// A class that comes out otherwise: by another verdict, or by the same one for other reasons.
struct VerdictDifference {
    std::string class_id; ///< empty: what the verdict says of itself, its criteria or form
    std::string was, now; ///< verdicts; empty where the class is not judged
};
/// What differs between two verdicts of form 2. The number of the engine, the hash of the vocabulary and
/// whose criteria they were are not compared.
std::vector<VerdictDifference> differences(const std::string &stored, const std::string &again);

} // namespace beadbook::codec
