#pragma once

#include "operations/logging.hpp"

namespace beadbook {

/// log_lines, and each exam that a line went to is finished with what is logged by then, in one transaction;
/// `finished` counts the finds of all. Throws Refusal as both do; where no line is given it names the way to
/// finish what is on record.
Done<Logged> log_and_finish(Writing &writing, const LogRequest &request);

} // namespace beadbook
