#include "cli/deeds.hpp"

namespace beadbook {

Deeds deeds(ExitCode (*bench)(Call &)) {
    Deeds out{{"bench", bench}};
    for (const auto &family :
         {coupon_deeds, examining_deeds, photo_deeds, judging_deeds, listing_deeds, technique_deeds,
          planning_deeds, welder_deeds, qualifying_deeds, standing_deeds, printing_deeds, people_deeds,
          account_deeds, catalogue_deeds, owners_copy_deeds, exchange_deeds, keeping_deeds, program_deeds})
        out.merge(family());
    return out;
}

} // namespace beadbook
