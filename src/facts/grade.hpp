#pragma once

#include "facts/stamp.hpp"

#include <cstdint>

namespace beadbook {

/// An instructor's decision on a coupon.
struct Grade {
    bool passed = false;
    std::string class_id;
    std::string remark;
    bool against_verdict = false;    ///< the decision differs from the tool's verdict
    bool against_mechanical = false; ///< passed, though the mechanical tests had failed
    Stamp stamp;
    std::int64_t seq = 0; ///< its entry

    std::string decision() const { return passed ? "passed" : "failed"; }
};

/// A free remark on a coupon.
struct Remark {
    std::string text;
    Stamp stamp;
};

} // namespace beadbook
