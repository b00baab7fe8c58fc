#pragma once

#include "criteria/model.hpp"

namespace beadbook {

/// How sure clauses are: how many of each standing.
struct StandingCount {
    std::size_t read = 0, second_hand = 0, memory = 0, house = 0, common_practice = 0;
    std::size_t own_copy = 0; ///< confirmed or filled by the shop from its copy
    std::size_t blank = 0;    ///< not filled; behind an accept only where it bears on no entry

    void add(const Standing &standing);
    std::size_t all() const {
        return read + second_hand + memory + house + common_practice + own_copy + blank;
    }
};

} // namespace beadbook
