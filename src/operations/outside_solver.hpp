#pragma once

#include "qualify/cover_problem.hpp"

namespace beadbook {

/// The program beadbook-cover as a solver: `program` if it is not empty, else the one beside this process's
/// own executable, else the one in ../libexec/beadbook from there. Each question starts it anew and ends it
/// when the time is over, so nothing that it does (crash, hang, chatter) reaches the caller; a failure, a
/// missing program too, is an answer without sets and a sentence why. Throws nothing, leaves no process and
/// no descriptor behind, and may be called from several threads at once.
CoverSolver outside_solver(const std::string &program = "");

} // namespace beadbook
