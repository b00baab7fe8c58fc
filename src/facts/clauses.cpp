#include "facts/clauses.hpp"

#include "criteria/methods.hpp"

namespace beadbook {
namespace {

std::string_view without_ends(std::string_view word) {
    constexpr std::string_view ends = ",;:!?()[]'=";
    while (!word.empty() && ends.find(word.front()) != ends.npos) word.remove_prefix(1);
    while (!word.empty() && (ends.find(word.back()) != ends.npos || word.back() == '.'))
        word.remove_suffix(1);
    return word;
}

} // namespace

bool has_a_figure(std::string_view word) { return word.find_first_of("0123456789") != word.npos; }

std::vector<std::vector<std::string>> clauses_of(std::string_view text) {
    constexpr std::string_view turns[] = {"but",      "except",  "however", "though",
                                          "although", "besides", "only"};
    std::vector<std::vector<std::string>> out(1);
    for (const std::string_view word : words_of(text)) {
        const std::string_view bare = without_ends(word);
        if (is_one_of(bare, turns) || exam_named(bare)) out.emplace_back();
        if (!bare.empty()) out.back().emplace_back(bare);
        const char last = word.back();
        if (last == ',' || last == ';' || last == '.' || last == '!') out.emplace_back();
    }
    std::erase_if(out, [](const auto &words) { return words.empty(); });
    return out;
}

bool means_nought(std::string_view word) {
    constexpr std::string_view words[] = {"none", "nil", "zero", "0"};
    return is_one_of(word, words);
}

} // namespace beadbook
