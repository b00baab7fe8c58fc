#pragma once

#include <string>

namespace beadbook {

/// In few words, to stand behind the name of a practice that an exam was held against: "own file 3f2a9c1b".
/// Empty for a shipped one, and where no text was kept.
std::string own_practice_mark(const std::string &name, const std::string &hash);

} // namespace beadbook
