#pragma once

#include "criteria/model.hpp"

namespace beadbook {

/// Whether these conditions can hold together, and of no coupon that the set covers; of what never holds at
/// all, no.
bool hold_outside_scope_only(const CriteriaSet &set, const std::vector<Condition> &own);

} // namespace beadbook
