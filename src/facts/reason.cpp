#include "facts/reason.hpp"

#include "facts/coupon_record.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <cctype>
#include <iterator>

namespace beadbook {
namespace {

/// They agree, or fill a field, and say nothing of why.
bool says_nothing(std::string_view text) {
    constexpr std::string_view words[] = {"ok",     "okay", "yes",  "yep",     "test", "fine", "good",
                                          "reason", "why",  "asdf", "because", "xx",   "xxx",  "misc"};
    const std::string plain = lowered(trimmed(text));
    return std::any_of(std::begin(words), std::end(words),
                       [&](const auto word) { return plain == word || plain == std::string(word) + "."; });
}

} // namespace

bool gives_reason(std::string_view text) {
    if (means_none(text) || says_nothing(text)) return false;
    int letters = 0;
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        const bool goes_on = (byte & 0xC0u) == 0x80u; // of a letter that was counted at its first byte
        if (goes_on) continue;
        letters = byte >= 0xC0u || std::isalpha(byte) != 0 ? letters + 1 : 0;
        if (letters == 2) return true;
    }
    return false;
}

std::string checked_reason(std::string_view text, std::string_view what) {
    std::string out = checked_text(text, what);
    if (!out.empty() && !gives_reason(out))
        throw DataError(std::string(what) + ": '" + shown(out) +
                        "' gives none; write why in a word at least, it is kept on the record");
    return out;
}

} // namespace beadbook
