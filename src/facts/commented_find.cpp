#include "facts/commented_find.hpp"

#include "criteria/methods.hpp"
#include "facts/line_gist.hpp"
#include "facts/log_line_hints.hpp"
#include "facts/told_find.hpp"
#include "measure/text.hpp"

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

std::string word_of_find(std::string_view text, const Vocabulary &vocabulary) {
    const auto told = told_in(behind_hash(text), vocabulary);
    return told.empty() ? "" : told.front().word;
}

std::string other_find_in_remark(const IndicationRecord &find, const WeldLine &weld, std::optional<Unit> unit,
                                 const Vocabulary &vocabulary) {
    for (const auto &told : told_in(find.remark, vocabulary)) {
        const bool alike = std::any_of(told.types.begin(), told.types.end(), [&](TypeId type) {
            return vocabulary.is_a(type, find.type) || vocabulary.is_a(find.type, type);
        });
        if (told.measured && (!alike || tells_another_place(told.clause, find, weld, unit)))
            return told.clause;
    }
    return "";
}

std::string find_told_in_comment(std::string_view line, const Vocabulary &vocabulary) {
    const std::string word = word_of_find(line, vocabulary);
    return word.empty() ? ""
                        : "a remark that speaks of '" + shown(word) +
                              "', and what stands behind # is kept nowhere; log it as a find, or keep it on "
                              "the coupon with 'remark'";
}

} // namespace beadbook
