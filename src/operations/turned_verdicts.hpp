#pragma once

#include "operations/judging.hpp"

#include <optional>
#include <string>
#include <vector>

namespace beadbook {

/// What the coupon's own criteria say of each of its classes; nothing if it names none that is there.
std::optional<Judged> as_it_stands(Writing &writing, const std::string &coupon);

/// Adds a note for what an entry ("the move") made of the verdicts of one set.
void note_turned_verdicts(const std::string &what, const std::optional<Judged> &before,
                          const std::optional<Judged> &now, std::vector<std::string> &notes);

} // namespace beadbook
