// The only user of libqrencode.
#include "report/qr_code.hpp"

#include "measure/refusal.hpp"

#include <memory>
#include <qrencode.h>

namespace beadbook {

std::vector<std::vector<bool>> qr_code(const std::string &text) {
    const std::unique_ptr<QRcode, void (*)(QRcode *)> code(
        QRcode_encodeString8bit(text.c_str(), 0, QR_ECLEVEL_M), QRcode_free);
    if (!code)
        throw refused("a text of " + std::to_string(text.size()) + " characters is too long for a code");
    const auto width = static_cast<std::size_t>(code->width);
    std::vector<std::vector<bool>> out(width, std::vector<bool>(width));
    for (std::size_t y = 0; y < width; ++y)
        for (std::size_t x = 0; x < width; ++x) out[y][x] = (code->data[y * width + x] & 1) != 0;
    return out;
}

} // namespace beadbook
