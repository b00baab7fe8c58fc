#pragma once

#include "operations/judging.hpp"

#include <string>
#include <vector>

namespace beadbook {

/// What can be offered to somebody who logs finds of one exam by tapping; each part is a piece of a log line.
struct LogPad {
    std::vector<TypeId> first, more; ///< types: what the method finds well and what is usual, then the rest
    std::vector<std::string> sizes;  ///< in the coupon's unit, small to large: 1/16, 0.05
    std::vector<std::string> places; ///< hours round a closed weld: 1:00; empty of a straight one
    std::vector<std::string> sides;  ///< that such a weld has: a fillet has no root to look at
    std::vector<std::string> toes;   ///< how the edge of a find runs into the metal
    std::string unit;                ///< in or mm, written out where the coupon fixes none
    bool unit_is_fixed = false;
};
LogPad log_pad(const CouponRecord &coupon, Exam method);
/// What its set wants measured by the method, for the class that the coupon is told by, and nobody did yet.
std::vector<TypeId> still_to_measure(const Judged &judged, Exam method);

} // namespace beadbook
