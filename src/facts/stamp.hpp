#pragma once

#include <string>

namespace beadbook {

/// Who acts, and when; given by the shell, never asked from a clock below it.
struct Stamp {
    std::string at; ///< UTC, 2026-11-25T09:30:00Z
    std::string who;
    bool signed_in = false; ///< who it is was proved by a password; else a name that was typed
};

} // namespace beadbook
