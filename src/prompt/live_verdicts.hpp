#pragma once

#include "terminal/call.hpp"

#include <string>

namespace beadbook {

/// The verdict of every class, by the coupon's criteria or another set, and of the one that is sought the
/// first thing that keeps it open, with what to type next where that is asked.
std::string live_verdicts(Call &call, const std::string &coupon, bool what_next, const std::string &set = "");

/// What to type next for an exam that was finished and does not count; empty where nothing is, or nothing
/// would help.
std::string next_for_exam(Call &call, const std::string &coupon, int exam);

} // namespace beadbook
