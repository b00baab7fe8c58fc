#pragma once

#include "records/ledger.hpp"

#include <map>
#include <utility>

namespace beadbook {

/// What was read or worked out of a record, good for as long as nothing is written there that it hangs on:
/// what a welder holds asks for the same coupons and people again and again. So many at most, then it begins
/// anew.
template <class Key, class Value, std::size_t most = 200, Ledger::About hangs_on = Ledger::About::anything>
class Remembered {
public:
    /// The value of a key; `work` makes it where it is not known.
    template <class Work>
    const Value &of(Ledger &ledger, const Key &key, Work work) {
        if (const std::uint64_t now = ledger.state(hangs_on); now != state_) {
            known_.clear();
            state_ = now;
        }
        const auto found = known_.find(key);
        if (found != known_.end()) return found->second;
        Value value = work();
        if (known_.size() >= most) known_.clear();
        return known_.emplace(key, std::move(value)).first->second;
    }

private:
    std::uint64_t state_ = 0; ///< of the record then
    std::map<Key, Value> known_;
};

} // namespace beadbook
