#pragma once

#include "language/condition.hpp"
#include "measure/exact.hpp"

#include <algorithm>
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
    /// To what a condition leaves that compares_plainly.
    void narrow(const Condition &c) {
        for (const auto &edge : c.edges) narrow(edge.compare, edge.right.constant_value());
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

/// Whether a condition compares one quantity alone with plain numbers.
inline bool compares_plainly(const Condition &c) {
    return c.kind == Condition::Kind::comparison && c.left.lone_quantity() &&
           std::all_of(c.edges.begin(), c.edges.end(), [](const auto &e) { return e.right.is_constant(); });
}

} // namespace beadbook
