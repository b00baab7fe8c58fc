#pragma once

#include "facts/seal.hpp"
#include "measure/signature.hpp"
#include "operations/office.hpp"

namespace beadbook {

/// Signs the newest entry, and so all before it. Throws DataError: nothing is on record, or it does not hold.
Seal sealed(Office &office, const SigningKey &key, const std::string &who);

/// A seal held against the record.
struct CheckedSeal {
    enum class State {
        holds,
        altered,       ///< the signature is not of what stands in it
        other_signer,  ///< another key signed it than the one that was named
        not_on_record, ///< entries were cut off or written anew since
    };
    Seal seal;
    State state = State::holds;
    bool signer_named = false;      ///< else it proves nothing against one who makes a key of his own
    std::int64_t entries_after = 0; ///< State::holds
};
/// `entries`: how many are on record. `signer`: the public key that is trusted; empty: whoever signed it.
CheckedSeal held_against_record(Office &office, std::int64_t entries, const Seal &seal,
                                const std::string &signer);

} // namespace beadbook
