#pragma once

#include "operations/office.hpp"

namespace beadbook {

/// What stands of a coupon as that welder said it himself, or somebody whose name may be his: by whom, and
/// what ("who welded it, entered what stands of #1 (entry 7)"). Nobody says what was found on his own weld
/// (common practice, no source), and who the welder is may be told afterwards. Of exams it tells names that
/// may be his alone: those that are do not count anyway. The record of people tells them apart.
struct SaidByWelder {
    std::string who, what;
};
std::vector<SaidByWelder> said_by_welder(Office &office, const CouponState &coupon,
                                         const std::string &welder);
/// Of fellow welders, of whom the record knows nothing else, what they said of a coupon: lists keep what
/// hangs on who examined alone, as nothing else tells which coupons an enrolment bears on.
enum class Fellows : std::uint8_t { who_examined, all };
/// The same of its own welder and of his fellows: exams that count, who finished them, and what mechanical
/// tests came to (common practice, no source).
std::vector<SaidByWelder> said_by_welders(Office &office, const CouponState &coupon, Fellows fellows);

} // namespace beadbook
