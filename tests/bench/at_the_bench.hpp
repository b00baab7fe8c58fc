#pragma once

#include "figures.hpp"

namespace beadbook::bench {

/// Keys and commands of a stack and of a class, typed for real (tests/journeys/typed).
void typing(Figures &figures);
/// Until the first output of commands on a record of 20,000 coupons.
void first_output(Figures &figures);

} // namespace beadbook::bench
