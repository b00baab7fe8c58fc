#pragma once

#include "measure/day.hpp"
#include "render/paint.hpp"

#include <functional>
#include <istream>
#include <ostream>

namespace beadbook {

/// The outer world of one run: streams, terminal or not, clock, environment. Tests make their own.
struct Session {
    std::istream &in;
    std::ostream &out;
    std::ostream &err;
    bool in_is_terminal = false;
    bool colour = false;
    std::function<std::string()> now;                            ///< UTC, 2026-11-25T09:30:00Z
    std::function<Day()> today;                                  ///< the calendar day here
    std::function<std::string(const std::string &)> environment; ///< empty if not set
    std::size_t width = 100;                                     ///< of a line of text
    std::function<bool()> pipe_closed = {}; ///< the reader of `out` went away, which is no mistake
    bool stored = false;                    ///< something was entered on record in this run

    /// Waits until a server is to stop; none: until SIGINT or SIGTERM.
    std::function<void(const std::string &link)> until_stopped = {};
    std::function<void(const std::string &link)> open = {}; ///< shows a page in the user's browser

    Paint paint() const { return Paint(colour); }
};

} // namespace beadbook
