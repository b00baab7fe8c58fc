#pragma once

#include "operations/sealing.hpp"
#include "operations/shops.hpp"

#include <optional>
#include <string>
#include <vector>

namespace beadbook {

struct VerifyRequest {
    bool replay = false;           ///< also take every verdict and every range again
    std::string head;              ///< noted earlier; the record must still hold that entry. Empty: not asked
    std::optional<Seal> seal = {}; ///< made earlier; the record must still hold what it seals
    std::string signer = {};       ///< the public key of who makes seals; empty: not known
};

/// A stored verdict or range that does not come out as it was stored, or that cannot be taken again.
struct ReplayFault {
    enum class What {
        unreadable,   ///< an entry of the subject cannot be read; `was` says why
        unknown_form, ///< stored by a newer program
        text_missing, ///< the record does not keep the criteria or rules that it was taken by
        text_broken,  ///< they no longer load
        verdict,      ///< class `part` was `was` and is `now`
        findings,     ///< class `part` has the same verdict for other reasons or by other numbers
        head,         ///< what the verdict says of its own criteria
        range,        ///< the range comes out otherwise
    };
    What what = What::unreadable;
    Family family = Family::coupon; ///< verdicts are a coupon's, ranges a welder's
    std::string subject;            ///< the coupon or the welder's mark
    std::int64_t entry = 0;         ///< of the verdict
    int number = 0;                 ///< of the qualification
    std::string part, was, now;
    bool other_engine = false;     ///< the verdict was taken by another evaluator
    bool other_vocabulary = false; ///< or another list of imperfections
};

struct Replay {
    std::int64_t verdicts = 0, ranges = 0; ///< taken again
    std::vector<ReplayFault> faults;
};

struct Verified {
    Verification chain;
    std::optional<Replay> replay;              ///< if it was asked for and the chain holds
    std::vector<std::string> false_lines = {}; ///< coupons of which lists say what does not follow
    std::string other_head;                    ///< the head that was noted, if no entry has it
    std::optional<std::int64_t> entries_after; ///< the head that was noted: how many came after it
    std::optional<CheckedSeal> seal = {};      ///< if one was given

    bool holds() const {
        return chain.faults.empty() && false_lines.empty() && other_head.empty() &&
               (!replay || replay->faults.empty()) && (!seal || seal->state == CheckedSeal::State::holds);
    }
};

/// Proves that nothing on record was changed. Replay judges each stored verdict again by the criteria text
/// that it was taken by and from the coupon as it stood before it, and works each range out again. Numbers,
/// ids and kinds are compared, never words; of what older programs stored (form 1), the verdict of each
/// class, and the variables and rules of each range.
Verified verify(Office &office, const VerifyRequest &request);

/// The same of each record that a folder joins.
struct VerifiedShop {
    std::string shop;
    Verified verified;
};
struct VerifiedShops {
    std::vector<VerifiedShop> shops;
    bool holds() const;
};
VerifiedShops verify_shops(const Shops &shops, const VerifyRequest &request);

struct BackedUp {
    std::string path;
    Verification copy;
};
/// A consistent, verified copy of the record. Throws StoreError; never overwrites.
BackedUp back_up(Office &office, const std::string &path);

} // namespace beadbook
