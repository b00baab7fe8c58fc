#include "language/condition.hpp"

#include <algorithm>

namespace beadbook {

bool Condition::fits(std::string_view word) const {
    return (std::find(words.begin(), words.end(), word) != words.end()) != denied;
}

Truth Condition::day(Day recorded, Day asked_on) const {
    const bool holds =
        kind == Kind::not_past ? recorded >= asked_on : recorded <= asked_on && asked_on <= recorded + period;
    return holds ? Truth::yes : Truth::no;
}

} // namespace beadbook
