#pragma once

#include "language/missing.hpp"
#include "measure/exact.hpp"

#include <boost/container/flat_map.hpp>
#include <boost/container/small_vector.hpp>
#include <optional>
#include <vector>

namespace beadbook {

/// A sum of quantities, each with its factor, and a constant; in base units.
struct Linear {
    boost::container::small_flat_map<Slot, Exact, 2> factors; ///< none is 0
    Exact constant;

    static Linear of(Slot slot) { return {{{slot, Exact(1)}}, Exact(0)}; }
    bool is_constant() const { return factors.empty(); }
    Linear times(const Exact &factor) const;
    friend Linear operator+(const Linear &a, const Linear &b);
    friend Linear operator-(const Linear &a, const Linear &b) { return a + b.times(Exact(-1)); }
    friend bool operator==(const Linear &, const Linear &) = default;
};

/// That a sum is over 0, or at least 0.
struct Inequality {
    Linear sum;
    bool strict = false;
};
Inequality over_zero(Linear sum);
Inequality at_least_zero(Linear sum);

/// Whether real numbers satisfy them all. Exact, by elimination of one quantity after another; nothing where
/// the numbers grow too large, or the inequalities too many.
std::optional<bool> can_hold(const std::vector<Inequality> &all);

} // namespace beadbook
