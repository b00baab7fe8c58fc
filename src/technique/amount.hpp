#pragma once

#include "measure/parse.hpp"
#include "measure/print.hpp"

namespace beadbook {

struct Amount {
    Dimension kind = Dimension::number;
    Exact value; ///< in the base unit of the kind
};

/// A number with its unit somewhere in a text: advances `at` past it. Nothing if no number stands there.
std::optional<Amount> scan_amount(std::string_view text, std::size_t &at);

} // namespace beadbook
