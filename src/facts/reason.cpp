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

std::string denying_word(std::string_view text) {
    constexpr std::string_view words[] = {"not",     "never",    "no",        "nothing",
                                          "nobody",  "none",     "cancelled", "canceled",
                                          "planned", "rejected", "sick",      "watched"};
    const std::string small = lowered(text);
    for (const auto word : letters_in(small)) {
        if (std::find(std::begin(words), std::end(words), word) == std::end(words)) continue;
        const auto behind = small.find_first_not_of(
            " .:#", static_cast<std::size_t>(word.data() + word.size() - small.data()));
        const bool number = word == "no" && behind != std::string::npos && is_digit(small[behind]);
        if (!number) return std::string(word);
    }
    return "";
}

std::string checked_reason(std::string_view text, std::string_view what) {
    std::string out = checked_text(text, what);
    if (!out.empty() && !gives_reason(out))
        throw DataError(std::string(what) + ": '" + shown(out) +
                        "' gives none; write why in a word at least, it is kept on the record");
    return out;
}

namespace {

constexpr std::string_view finished_with = "finished with ", found_behind = " found";

} // namespace

std::string finished_reason(int found, const std::string &why) {
    return std::string(finished_with) + std::to_string(found) + std::string(found_behind) +
           (why.empty() ? "" : ": " + why);
}

std::string said_in_reason(std::string_view reason) {
    for (const auto own :
         {undone_at_once, undone_at_prompt, corrected_at_prompt, read_at_bench, by_a_sheet, told_first})
        if (reason == own) return "";
    if (!reason.starts_with(finished_with)) return std::string(reason);
    std::string_view rest = reason.substr(finished_with.size());
    const std::size_t figures = rest.find_first_not_of("0123456789");
    if (figures == 0 || figures == rest.npos || !rest.substr(figures).starts_with(found_behind))
        return std::string(reason);
    rest.remove_prefix(figures + found_behind.size());
    if (rest.empty()) return "";
    return std::string(rest.starts_with(": ") ? rest.substr(2) : reason);
}

} // namespace beadbook
