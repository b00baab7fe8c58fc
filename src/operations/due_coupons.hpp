#pragma once

#include "operations/standing.hpp"

namespace beadbook {

/// Of what is due and asks for coupons: which of the welder's are on record, graded passed by the same rules,
/// and nothing rests on them yet, a sentence each. Whether one is enough is asked when it is given.
std::vector<std::string> coupons_for_due(Office &office, const DueList &due);

} // namespace beadbook
