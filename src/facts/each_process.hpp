#pragma once

#include "facts/coupon_record.hpp"

#include <vector>

namespace beadbook {

/// The processes of a coupon as they were written, without what each deposited: "141", "SMAW".
std::vector<std::string> processes_of(const CouponRecord &coupon);

/// What a field says of process `p` of `count`: its own part where there are as many; what is said in one
/// word where `shared` says that such a word is of each of them; else empty.
std::string said_of_process(const CouponRecord &coupon, const std::string &field, std::size_t p,
                            std::size_t count, bool shared);

/// Whether a word cannot be true of a weld by that process.
using ProcessClash = bool (*)(const std::string &process, const std::string &word);

/// What a field says that is true of none of the processes that it may be said of, with them: "transfer
/// spray, process SMAW". Of as many words as processes each has its own; else one process that it goes with
/// is enough. Empty: it goes with them, or nobody can say.
std::string clashes_with_process(const CouponRecord &coupon, const std::string &field, ProcessClash clash);

} // namespace beadbook
