#include "measure/hex.hpp"

namespace beadbook {
namespace {
constexpr std::string_view digits_in_order = "0123456789abcdef";
}

std::string hex(std::string_view bytes) {
    std::string out(2 * bytes.size(), '0');
    auto to = out.begin();
    for (const char c : bytes) {
        const auto byte = static_cast<unsigned char>(c);
        *to++ = digits_in_order[byte >> 4];
        *to++ = digits_in_order[byte & 15];
    }
    return out;
}

std::optional<std::string> from_hex(std::string_view digits) {
    if (digits.size() % 2 != 0) return std::nullopt;
    std::string out;
    for (std::size_t i = 0; i < digits.size(); i += 2) {
        const auto high = digits_in_order.find(digits[i]), low = digits_in_order.find(digits[i + 1]);
        if (high == std::string_view::npos || low == std::string_view::npos) return std::nullopt;
        out += static_cast<char>(high * 16 + low);
    }
    return out;
}

} // namespace beadbook
