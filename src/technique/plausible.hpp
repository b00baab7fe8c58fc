#pragma once

#include "criteria/vocabulary.hpp"

#include <string>

namespace beadbook {

/// Why a find can hardly come from the welding process, so that it is likely a slip of the pen; empty if it
/// can. `process` as the coupon says it, several joined by '+'.
std::string implausible(const Vocabulary &vocabulary, TypeId type, const std::string &process);

} // namespace beadbook
