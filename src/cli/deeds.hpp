#pragma once

#include "terminal/run.hpp"

namespace beadbook {

// What the commands do, a family in the file that is named after it. Their words stand in
// terminal/commands.yaml.
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
Deeds bench_deeds();
Deeds program_deeds();

/// All of them.
const Deeds &deeds();

/// Runs the program on its words (without its own name). Never throws.
int run_program(const std::vector<std::string> &words, Session &session);

/// The coupon that a call means: the one on record that it names, or one that its options describe.
CouponRecord coupon_meant(Call &call);

} // namespace beadbook
