#pragma once

#include "terminal/call.hpp"

#include <map>
#include <string>
#include <vector>

namespace beadbook {

/// What the commands do, by their names.
using Deeds = std::map<std::string, ExitCode (*)(Call &)>;

/// Runs the program on its words (without its own name). Never throws.
int run_words(const Deeds &deeds, const std::vector<std::string> &words, Session &session);

} // namespace beadbook
