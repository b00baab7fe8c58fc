#pragma once

#include "operations/office.hpp"

#include <functional>
#include <map>
#include <set>
#include <vector>

namespace beadbook {

/// One IMMEDIATE transaction with the person who acts: the only way to write. All that operations do with it
/// is stored by commit(), or nothing. Coupons are folded once and kept, so that n lines cost O(n).
class Writing {
public:
    /// How it is known who acts: every entry says so.
    enum class Known : std::uint8_t { by_typed_name, by_sign_in };
    /// Throws Refusal if nobody is named, StoreError if the record is busy.
    Writing(Office &office, const std::string &who, Known known = Known::by_typed_name);
    /// Shells commit by operations/coupon_lines.hpp, which keeps lists quick.
    void commit() { transaction_->commit(); }
    /// What is stored though the request is refused, after the refusal, and alone: a refusal may rest on what
    /// nobody could tell of tomorrow.
    void keep_if_refused(std::function<void(Writing &)> what) { if_refused_.push_back(std::move(what)); }
    /// Takes back all that was done, and does what is kept all the same. Whether there is anything to commit.
    bool refuse();

    Office &office() { return office_; }
    Book &book() { return office_.book(); }
    Ledger &ledger() { return office_.ledger(); }
    Catalogue &catalogue() { return office_.catalogue(); }
    const Outside &outside() const { return office_.outside(); }
    const Stamp &stamp() const { return stamp_; }

    /// As it stands within this transaction. The reference holds until the coupon is written to. Throws
    /// DataError.
    const CouponState &coupon(const std::string &id);
    /// Forgets a coupon that nothing more is asked about, so that going through very many takes little
    /// memory.
    void let_go(const std::string &coupon) { coupons_.erase(coupon); }
    /// Coupons that were written about.
    const std::set<std::string> &touched() const { return touched_; }
    /// Of a coupon whose verdict may come out otherwise, though nothing was written about it.
    void touch(const std::string &coupon) { touched_.insert(coupon); }
    /// Appends an entry (kind, subject, body and what it supersedes are the caller's) and folds it in.
    Entry add(Entry entry);

private:
    void begin();

    Office &office_;
    Stamp stamp_;
    std::optional<Ledger::Transaction> transaction_;
    std::vector<std::function<void(Writing &)>> if_refused_;
    std::map<std::string, CouponState> coupons_;
    std::set<std::string> touched_;
};

/// That nothing is done with a coupon that is withdrawn, but its restoring.
Refusal is_withdrawn(const CouponRecord &coupon);

/// The reason that a correction needs. Throws Refusal (field "why") if there is none.
std::string needed_reason(const std::string &reason);
/// The entry that takes another one of its subject back; which exam or number it is of is the caller's to
/// say. Throws Refusal (field "why"): no reason.
Entry withdrawal_of(std::int64_t entry, const std::string &kind, const std::string &subject,
                    std::optional<int> number, const std::string &why);

} // namespace beadbook
