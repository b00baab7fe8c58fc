#pragma once

#include "terminal/session.hpp"

namespace beadbook {

/// The session of this process: its standard streams, its terminal, the clock, the environment.
Session real_session();

} // namespace beadbook
