#pragma once

#include "measure/day.hpp"
#include "qualify/cover_problem.hpp"

#include <functional>
#include <string>

namespace beadbook {

/// Everything that an operation may ask of the world outside the record: the clock, files and the solver
/// program. Shells bring the real one, tests and servers their own.
struct Outside {
    std::function<std::string()> now;                             ///< UTC, 2026-11-25T09:30:00Z
    std::function<Day()> today;                                   ///< the calendar day here
    std::function<std::string(const std::string &path)> read;     ///< a file's text; throws DataError
    std::function<std::string(const std::string &path)> absolute; ///< the same file from any folder
    CoverSolver solver = {}; ///< for plans too hard to settle in the process; none: the best found is taken
};

/// A name that means a file of the user's own and not a shipped one: it has a slash or ends in .yaml.
bool means_file(const std::string &name);

} // namespace beadbook
