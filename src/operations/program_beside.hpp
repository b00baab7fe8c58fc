#pragma once

#include <string>

namespace beadbook {

/// The path of a program of ours that lies beside this process's own executable, or in ../libexec/beadbook
/// from there; empty if it is in neither.
std::string program_beside(const std::string &name);

} // namespace beadbook
