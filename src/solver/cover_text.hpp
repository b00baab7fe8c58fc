#pragma once

#include <istream>
#include <optional>
#include <ostream>
#include <vector>

namespace beadbook {

/// What beadbook-cover is asked, in words of its own: it shares no code with beadbook.
///
///     cover 1                 the format
///     milliseconds 4500
///     sets 4
///     elements 2
///     0 3                     a line an element: the sets that hold it, ascending
///     1 2 3
///     end
struct CoverQuestion {
    double seconds = 0;
    int sets = 0;
    std::vector<std::vector<int>> elements;
};

/// Nothing if the text is anything but that, or larger than solver/limits.hpp allows.
std::optional<CoverQuestion> read_question(std::istream &in);

/// What it answers. `proven`: no fewer sets do; then `at_least` is their number.
///
///     cover 1
///     proven                  or: best
///     at least 2
///     chosen 2
///     0 1
///     end
struct CoverReply {
    bool proven = false;
    int at_least = 0;
    std::vector<int> chosen; ///< empty: none was found
};
void write_reply(const CoverReply &reply, std::ostream &out);

} // namespace beadbook
