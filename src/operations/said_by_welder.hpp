#pragma once

#include "operations/office.hpp"

namespace beadbook {

/// What stands of a coupon, beside who finished its exams, as that welder said it himself: by whom, and what
/// ("entered what stands of #1 (entry 7)", "said what its mechanical tests came to"). Nobody says what was
/// found on his own weld (common practice, no source); who the welder is may be told afterwards.
struct SaidByWelder {
    std::string who, what;
};
std::vector<SaidByWelder> said_by_welder(Office &office, const CouponState &coupon,
                                         const std::string &welder);

} // namespace beadbook
