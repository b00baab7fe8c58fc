#include "facts/commented_find.hpp"

#include "criteria/methods.hpp"
#include "facts/log_line_hints.hpp"
#include "measure/text.hpp"
#include "measure/words_apart.hpp"

#include <algorithm>

namespace beadbook {
namespace {

constexpr std::string_view blanks = " \t", digits = "0123456789";

/// Behind the method that a line may begin with.
std::string_view behind_method(std::string_view words) {
    const std::size_t end = std::min(words.find_first_of(blanks), words.size());
    const std::string_view word = words.substr(0, end);
    const bool method = exam_named(word.substr(0, word.size() - (word.ends_with(':') ? 1 : 0))).has_value();
    return method ? trimmed(words.substr(end)) : words;
}

} // namespace

std::string_view behind_hash(std::string_view line) {
    const std::string_view bare = trimmed(line);
    return bare.substr(std::min(bare.find_first_not_of("# \t"), bare.size()));
}

bool reads_as_find(std::string_view words, const Vocabulary &vocabulary) {
    const std::string_view find = behind_method(trimmed(words));
    const auto named = type_named(find, vocabulary);
    if (!named) return false;
    const std::string_view rest = find.substr(named->length);
    return trimmed(rest).empty() || rest.substr(0, rest.find('#')).find_first_of(digits) != rest.npos;
}

std::string find_in_comment(std::string_view line, const Vocabulary &vocabulary) {
    const std::string_view bare = trimmed(line);
    if (!bare.starts_with('#')) return "";
    const std::string_view words = behind_hash(bare);
    const std::size_t end = std::min(words.find_first_not_of(digits), words.size());
    const std::string_view find = trimmed(words.substr(end));
    if (end == 0) return reads_as_find(words, vocabulary) ? std::string(words) : "";
    if (find.size() == words.size() - end || !type_named(behind_method(find), vocabulary)) return "";
    return "#" + std::string(words.substr(0, end)) + " " + std::string(find);
}

std::string find_told_in_comment(std::string_view line, const Vocabulary &vocabulary) {
    constexpr std::size_t least = 4; // shorter ones are short forms, and other words as well
    constexpr std::string_view none_of_it[] = {"no", "not", "none", "without", "looked", "sought"};
    const auto words = words_apart(lowered(behind_hash(line)),
                                   [](char c) { return is_ascii_sign(c) || digits.find(c) != digits.npos; });
    for (const auto &word : words)
        if (std::find(std::begin(none_of_it), std::end(none_of_it), word) != std::end(none_of_it)) return "";
    for (const auto &word : words)
        for (const std::string_view ending : {"", "s", "ed", "es", "ing", "d"}) {
            if (!word.ends_with(ending)) continue;
            const std::string_view stem = std::string_view(word).substr(0, word.size() - ending.size());
            const auto named = stem.size() < least ? std::nullopt : type_named(stem, vocabulary);
            if (named && named->length == stem.size() && !vocabulary[named->type].measured)
                return "a remark that speaks of '" + word +
                       "', and what stands behind # is kept nowhere; log it as a find, or keep it on the "
                       "coupon with 'remark'";
        }
    return "";
}

} // namespace beadbook
