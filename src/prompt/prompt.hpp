#pragma once

#include "operations/examining.hpp"
#include "terminal/call.hpp"

namespace beadbook {

/// Asks for each condition that the practice wants and that was not given; an empty answer leaves it out, a
/// wrong one is asked again. The questions stay out of the JSON.
void ask_conditions(Call &call, ExamRequest &request);

/// One indication a line, with undo and the live verdict of every class.
void log_by_prompt(Call &call, const std::string &coupon, int exam);

} // namespace beadbook
