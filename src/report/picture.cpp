#include "report/picture.hpp"

#include <algorithm>

namespace beadbook {

double text_width(const std::string &text, double size) {
    const auto characters = std::count_if(text.begin(), text.end(), [](char c) {
        return (static_cast<unsigned char>(c) & 0xC0) != 0x80; // bytes that begin one
    });
    return static_cast<double>(characters) * size * 0.63;
}

} // namespace beadbook
