#pragma once

#include <string>

namespace beadbook {

class Visit;

inline const std::string keeper_path = "/keeper";

/// Ways to the lists that a keeper looks after.
std::string keeper_ways(const Visit &visit);

} // namespace beadbook
