#pragma once

#include "operations/office.hpp"

namespace beadbook {

/// Whether a text names the mark as a word of its own.
bool names_mark(const std::string &text, const std::string &mark);

/// Throws Refusal (the field): the work names a coupon of the welder that failed, is rejected or was taken
/// back, which shows nothing that keeps or prolongs what is held (common practice, no source).
void check_no_failed_work(Office &office, const std::string &welder, const std::string &work,
                          const std::string &field);

} // namespace beadbook
