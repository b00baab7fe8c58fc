#pragma once

#include "operations/bulk.hpp"

namespace beadbook::test {

/// An export as one text.
struct Exported {
    std::string text;
    std::size_t coupons = 0;
};
inline Exported exported(Office &office, std::optional<Sheet> sheet, const Selection &of = {},
                         bool lines = false) {
    Exported out;
    const auto give = [&](std::string_view part) { out.text += part; };
    out.coupons = export_record(office, {sheet, lines, of}, give).coupons;
    return out;
}

} // namespace beadbook::test
