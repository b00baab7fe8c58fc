#pragma once

#include "qualify/range.hpp"

#include <string>

namespace beadbook::test {

/// `joint groove, form tube, diameter 2 in, metal group P1`; lengths need their unit.
Weld weld(const std::string &text);

/// "yes", "no" or "cannot say": does the test qualify the work by the shipped rules?
std::string qualifies(const std::string &rules, const std::string &test, const std::string &work);

/// The same, of one trait alone, whatever the others say.
std::string qualifies(const std::string &rules, const std::string &test, const std::string &work,
                      const std::string &trait);

/// What is wrong with rules for welders in YAML, a message a line.
std::string errors_of(const std::string &rules);

} // namespace beadbook::test
