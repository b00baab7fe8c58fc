#include "measure/natural_order.hpp"

#include <cstddef>

namespace beadbook {
namespace {

bool digit_in_mark(char c) { return c >= '0' && c <= '9'; }
char in_small(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

/// The run of digits at `at`, without zeros in front; advances past it.
std::string_view mark_number_at(std::string_view text, std::size_t &at) {
    const std::size_t begin = at;
    while (at < text.size() && digit_in_mark(text[at])) ++at;
    std::string_view out = text.substr(begin, at - begin);
    while (out.size() > 1 && out.front() == '0') out.remove_prefix(1);
    return out;
}

} // namespace

bool NaturalOrder::operator()(std::string_view a, std::string_view b) const {
    std::size_t i = 0, j = 0;
    while (i < a.size() && j < b.size()) {
        if (digit_in_mark(a[i]) && digit_in_mark(b[j])) {
            const std::string_view x = mark_number_at(a, i), y = mark_number_at(b, j);
            if (x.size() != y.size()) return x.size() < y.size(); // any number of digits
            if (x != y) return x < y;
        } else {
            const auto x = static_cast<unsigned char>(in_small(a[i++]));
            const auto y = static_cast<unsigned char>(in_small(b[j++]));
            if (x != y) return x < y;
        }
    }
    if ((i < a.size()) != (j < b.size())) return j < b.size();
    return a < b;
}

} // namespace beadbook
