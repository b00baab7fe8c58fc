#pragma once

#include "operations/office.hpp"

namespace beadbook {

struct HeldTest;
struct HeldQualification;

/// Of what is held by a file of one's own whose text somebody changed under the same edition since: that it
/// was, and what it went by. Of the file that it was granted by, where that can be read; or by the rules at
/// hand, which bear the same name.
void tell_changed_rules(Office &office, HeldQualification &held);
void tell_changed_rules(const RangeRules &now, HeldTest &held);

} // namespace beadbook
