#pragma once

#include <string>

namespace beadbook {

inline const std::string keeper_path = "/keeper";

/// Ways to the lists that a keeper looks after.
std::string keeper_ways();

} // namespace beadbook
