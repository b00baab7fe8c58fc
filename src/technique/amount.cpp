#include "technique/amount.hpp"

namespace beadbook {

std::optional<Amount> scan_amount(std::string_view text, std::size_t &at) {
    std::size_t i = at;
    const bool below_zero = i < text.size() && text[i] == '-';
    if (below_zero) ++i;
    auto number = scan_number(text, i);
    if (!number) return std::nullopt;
    if (below_zero) number = *number * Exact(-1);
    at = i;
    if (const auto unit = scan_unit(text, at))
        return Amount{unit->dimension, *number * unit->scale + unit->offset};
    return Amount{Dimension::number, *number};
}

} // namespace beadbook
