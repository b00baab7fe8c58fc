#pragma once

#include "measure/day.hpp"
#include "render/paint.hpp"

#include <algorithm>
#include <functional>
#include <istream>
#include <limits>
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

    std::size_t height = 0; ///< lines of the terminal that `out` is; 0: it is none
    std::function<bool(const std::string &text)> page = {}; ///< shows a long text; false: it could not

    static constexpr std::size_t no_number = std::numeric_limits<std::size_t>::max();
    /// So many coupons make a wait that is told before a command goes through all of them.
    std::size_t many = no_number;

    Paint paint() const { return Paint(colour); }
    /// A whole text, through the pager where the terminal is too short for it.
    void print(const std::string &text) const {
        const auto lines = static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n'));
        out.flush();
        if (height == 0 || lines < height || !page || !page(text)) out << text;
    }
};

} // namespace beadbook
