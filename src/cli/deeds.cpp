#include "cli/deeds.hpp"

namespace beadbook {

const Deeds &deeds() {
    static const Deeds all = [] {
        Deeds out;
        for (const auto &family :
             {coupon_deeds, examining_deeds, photo_deeds, judging_deeds, listing_deeds, technique_deeds,
              planning_deeds, welder_deeds, qualifying_deeds, standing_deeds, printing_deeds, people_deeds,
              catalogue_deeds, owners_copy_deeds, exchange_deeds, keeping_deeds, bench_deeds, program_deeds})
            out.merge(family());
        return out;
    }();
    return all;
}

int run_program(const std::vector<std::string> &words, Session &session) {
    return run_words(deeds(), words, session);
}

} // namespace beadbook
