#pragma once

#include "language/condition.hpp"
#include "measure/exact.hpp"

#include <optional>

namespace beadbook {

/// From `low` to `high`; an absent end is open. `in` says whether the end itself belongs to it.
struct Band {
    std::optional<Exact> low, high;
    bool low_in = false, high_in = false;

    void narrow(Compare compare, const Exact &value) {
        const bool in = compare == Compare::at_least || compare == Compare::at_most;
        if (is_maximum(compare)) {
            if (high && (*high < value || (*high == value && !high_in))) return;
            high = value, high_in = in;
        } else {
            if (low && (*low > value || (*low == value && !low_in))) return;
            low = value, low_in = in;
        }
    }
    bool empty() const { return low && high && (*low > *high || (*low == *high && !(low_in && high_in))); }
    Band within(const Band &other) const {
        Band out = *this;
        if (other.low) out.narrow(other.low_in ? Compare::at_least : Compare::over, *other.low);
        if (other.high) out.narrow(other.high_in ? Compare::at_most : Compare::under, *other.high);
        return out;
    }
    friend bool operator==(const Band &, const Band &) = default;
};

} // namespace beadbook
