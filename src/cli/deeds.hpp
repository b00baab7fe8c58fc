#pragma once

#include "terminal/run.hpp"

namespace beadbook {

// What the commands do, a family in the file that is named after it. Their words stand in
// terminal/commands.
Deeds coupon_deeds();
Deeds examining_deeds();
Deeds photo_deeds();
Deeds judging_deeds();
Deeds listing_deeds();
Deeds technique_deeds();
Deeds planning_deeds();
Deeds welder_deeds();
Deeds qualifying_deeds();
Deeds standing_deeds();
Deeds printing_deeds();
Deeds people_deeds();
Deeds catalogue_deeds();
Deeds owners_copy_deeds();
Deeds exchange_deeds();
Deeds keeping_deeds();
Deeds account_deeds();
Deeds program_deeds();

/// All of them, with what `bench` does: the pages are on the floor above (pages/bench.hpp).
Deeds deeds(ExitCode (*bench)(Call &));

/// The coupon that a call means: the one on record that it names, or one that its options describe.
CouponRecord coupon_meant(Call &call);

} // namespace beadbook
