#pragma once

#include <cstddef>

namespace beadbook {

/// So many of so many, with the exact 95 % interval of the share behind it (Clopper-Pearson, two-sided: each
/// end is left out with 2.5 %). Of nothing nothing is known: 0 to 1. A number for reading, no limit:
/// floating.
struct Share {
    std::size_t count = 0, of = 0;
    double low = 0, high = 1;

    /// Of none there is none.
    double value() const { return of == 0 ? 0 : static_cast<double>(count) / static_cast<double>(of); }
};

/// C. J. Clopper and E. S. Pearson, Biometrika 26 (1934) 404, from memory: quantiles of the beta
/// distribution. `count` is at most `of`.
Share share_of(std::size_t count, std::size_t of);

} // namespace beadbook
