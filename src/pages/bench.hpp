#pragma once

#include "terminal/run.hpp"

namespace beadbook {

/// What `bench` does: serves the pages until it is told to stop.
ExitCode run_bench(Call &call);

} // namespace beadbook
