#pragma once

#include "cli/shop.hpp"
#include "operations/examining.hpp"
#include "technique/practice.hpp"

namespace beadbook {

/// Asks for each condition that the practice wants and that was not given; an empty answer leaves it out, a
/// wrong one is asked again.
void ask_conditions(Shop &shop, ExamRequest &request, std::istream &in, std::ostream &out);

/// One indication a line, with undo and the live verdict of every class.
void log_by_prompt(Shop &shop, const std::string &coupon, int exam, Session &session);

} // namespace beadbook
