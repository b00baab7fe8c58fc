#pragma once

namespace beadbook::bench {

/// Keys and commands of a stack and of a class, typed for real (tests/journeys/typed).
void typing();
/// Until the first output of commands on a record of 20,000 coupons.
void first_output();

} // namespace beadbook::bench
