#include "operations/sealing.hpp"

#include "operations/coupon_lines.hpp"
#include "records/codecs/seal.hpp"

namespace beadbook {

Seal sealed(Office &office, const SigningKey &key, const std::string &who) {
    const Verification chain = office.ledger().verify();
    if (!chain.faults.empty())
        throw DataError("the record does not hold, so nothing was sealed: " + chain.faults.front());
    if (const auto wrong = false_lines(office); !wrong.empty())
        throw DataError("nothing was sealed: " + line_does_not_follow(wrong.front()));
    if (chain.entries == 0) throw DataError("nothing is on record yet that could be sealed");
    Seal out{chain.entries, chain.head, {office.outside().now(), who}, key.public_key(), {}};
    out.signature = key.sign(codec::signed_text(out));
    return out;
}

CheckedSeal held_against_record(Office &office, std::int64_t entries, const Seal &seal,
                                const std::string &signer) {
    using State = CheckedSeal::State;
    CheckedSeal out{seal, State::holds, !signer.empty()};
    if (!signed_by(seal.public_key, codec::signed_text(seal), seal.signature))
        out.state = State::altered;
    else if (!signer.empty() && signer != seal.public_key)
        out.state = State::other_signer;
    else if (office.ledger().entry_with_hash(seal.head) != seal.entries)
        out.state = State::not_on_record;
    else
        out.entries_after = entries - seal.entries;
    return out;
}

} // namespace beadbook
