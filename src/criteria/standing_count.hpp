#pragma once

#include "criteria/model.hpp"

namespace beadbook {

/// How sure clauses are: how many of each standing.
struct StandingCount {
    std::size_t read = 0, second_hand = 0, memory = 0, house = 0, common_practice = 0;

    void add(const Standing &standing);
    std::size_t all() const { return read + second_hand + memory + house + common_practice; }
};

} // namespace beadbook
