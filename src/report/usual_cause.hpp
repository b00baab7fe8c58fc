#pragma once

#include "report/sentence.hpp"

namespace beadbook {

/// Why it usually comes out so, and what the welder changes.
struct UsualCause {
    std::string of; ///< the type, of a dimension that is under its limit with ", too small"
    std::string cause, remedy;
};
/// Of each type that rejects, once, in the order of the reasons; of what nobody knows a cause, none.
std::vector<UsualCause> usual_causes(const Case &c, const ClassJudgement &judged);

} // namespace beadbook
