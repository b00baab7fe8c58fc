#pragma once

#include "figures.hpp"

namespace beadbook::bench {

/// One job by the judge (a set bound once, and bound for each coupon), by hand, by SQLite, and by
/// rule engines of npm where BEADBOOK_PEERS names their folder. False if they do not reject the same classes.
bool judge_beside_peers(Figures &figures);
/// Pores and inclusions by several sets.
void judge_by_sets(Figures &figures);
/// One weld with more and more finds: by a shipped set, on a weld that stays and on one that grows with them;
/// and by a rule for the worst window, with merging, in an area, and with all of them at one place.
void judge_growth(Figures &figures);

} // namespace beadbook::bench
