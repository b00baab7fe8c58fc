#pragma once

#include "terminal/run.hpp"

namespace beadbook {

/// Runs a process of ours, from the words that it was started with to its exit code. Never throws.
int run_process(const Deeds &deeds, int argc, char **argv);

} // namespace beadbook
