#pragma once

#include "facts/coupon_state.hpp"
#include "records/entry.hpp"

/// Verdicts in entries. Form 2 holds numbers, ids and kinds with the hashes of set and vocabulary and the
/// number of the engine, so that it can be taken again and compared whatever the words are by then. Form 1
/// held sentences.
namespace beadbook::codec {

std::string verdict_body(const CriteriaSet &set, const Judgement &judgement,
                         const Vocabulary &vocabulary = Vocabulary::shipped());
StoredVerdict verdict_from(const Entry &entry);

} // namespace beadbook::codec
