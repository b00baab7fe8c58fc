#pragma once

#include "operations/office.hpp"

#include <map>

namespace beadbook {

/// One IMMEDIATE transaction with the person who acts: the only way to write. All that operations do with it
/// is stored by commit(), or nothing. Coupons are folded once and kept, so that n lines cost O(n).
class Writing {
public:
    /// Throws Refusal if nobody is named, StoreError if the record is busy.
    Writing(Office &office, const std::string &who);
    void commit() { transaction_.commit(); }

    Office &office() { return office_; }
    Book &book() { return office_.book(); }
    Ledger &ledger() { return office_.ledger(); }
    Catalogue &catalogue() { return office_.catalogue(); }
    const Outside &outside() const { return office_.outside(); }
    const Stamp &stamp() const { return stamp_; }

    /// As it stands within this transaction. The reference holds until the coupon is written to. Throws
    /// DataError.
    const CouponState &coupon(const std::string &id);
    /// Appends an entry (kind, subject, body and what it supersedes are the caller's) and folds it in.
    Entry add(Entry entry);

private:
    Office &office_;
    Stamp stamp_;
    Ledger::Transaction transaction_;
    std::map<std::string, CouponState> coupons_;
};

/// That nothing is done with a coupon that is withdrawn, but its restoring.
Refusal is_withdrawn(const CouponRecord &coupon);

/// The reason that a correction needs. Throws Refusal (field "why") if there is none.
std::string needed_reason(const std::string &reason);

} // namespace beadbook
