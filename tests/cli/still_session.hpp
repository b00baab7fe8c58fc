#pragma once

#include "terminal/session.hpp"

namespace beadbook::test {

/// A session on these streams with a fixed clock.
inline Session still_session(std::istream &in, std::ostream &out, std::ostream &err, bool terminal,
                             std::function<std::string(const std::string &)> environment) {
    return {in,
            out,
            err,
            terminal,
            false,
            [] { return std::string("2026-11-25T10:00:00Z"); },
            [] { return parse_day("2026-11-25"); },
            std::move(environment)};
}

} // namespace beadbook::test
