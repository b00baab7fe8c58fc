#include "facts/several_told.hpp"

#include "facts/clauses.hpp"
#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {
namespace {

constexpr std::string_view figures_of_a_number = "0123456789";

struct WordOfGroup {
    std::string_view word, group; ///< of pores
};
constexpr std::string_view in_line = "linear porosity", in_a_heap = "clustered porosity",
                           all_over = "scattered porosity";
constexpr WordOfGroup words_of_a_group[] = {
    {"aligned", in_line},       {"row", in_line},        {"rows", in_line},      {"chain", in_line},
    {"chains", in_line},        {"string", in_line},     {"strings", in_line},   {"stringer", in_line},
    {"series", in_line},        {"group", in_a_heap},    {"groups", in_a_heap},  {"grouped", in_a_heap},
    {"cluster", in_a_heap},     {"clusters", in_a_heap}, {"nest", in_a_heap},    {"nests", in_a_heap},
    {"clustered", in_a_heap},   {"bunch", in_a_heap},    {"colony", in_a_heap},  {"scattered", all_over},
    {"distributed", all_over},  {"dispersed", all_over}, {"sporadic", all_over}, {"random", all_over},
    {"intermittent", all_over}, {"uniformly", all_over}, {"spread", all_over},   {"scatter", all_over}};

/// 3x, x3
bool is_times(std::string_view word) {
    const bool before = word.starts_with('x') || word.starts_with('X'),
               behind = word.ends_with('x') || word.ends_with('X');
    if (word.size() < 2 || before == behind) return false;
    return word.substr(before ? 1 : 0, word.size() - 1).find_first_not_of(figures_of_a_number) == word.npos;
}

bool is_number_word(std::string_view word) {
    constexpr std::string_view words[] = {
        "two",    "three",  "four",    "five",    "six",    "seven",    "eight",     "nine",
        "ten",    "eleven", "twelve",  "twenty",  "thirty", "hundred",  "hundreds",  "dozen",
        "dozens", "many",   "several", "few",     "some",   "multiple", "numerous",  "various",
        "couple", "both",   "double",  "twin",    "twins",  "triple",   "treble",    "pair",
        "pairs",  "lots",   "plenty",  "every",   "each",   "repeated", "repeating", "doubled",
        "ditto",  "typ",    "typ.",    "typical", "repeat", "repeats"};
    constexpr std::string_view tens[] = {"twenty", "thirty", "forty", "fifty"};
    return is_one_of(word, words) || is_times(word) ||
           is_one_of(word.substr(0, word.find('-')), tens); // twenty-five
}

const WordOfGroup *group_word(std::string_view word) {
    for (const auto &one : words_of_a_group)
        if (same_word(one.word, word)) return &one;
    return nullptr;
}

/// A number as of a count: no size, no year.
bool is_small_count(std::string_view word) {
    return word.size() <= 2 && !word.empty() && word.find_first_not_of(figures_of_a_number) == word.npos &&
           word.find_first_not_of('0') != word.npos && word != "1";
}

/// `same on the far side`
bool is_other_side(std::string_view word) {
    constexpr std::string_view words[] = {"far", "other", "opposite", "back", "reverse"};
    return is_one_of(word, words);
}
bool tells_the_same(std::string_view word) {
    constexpr std::string_view words[] = {"same", "also", "another", "similar", "alike"};
    return is_one_of(word, words);
}

/// What stands beside a number and tells nothing more.
bool says_nothing_more(const std::string &word, const Vocabulary &vocabulary) {
    constexpr std::string_view words[] = {
        "of",     "a",     "an",     "the",     "in",          "on",    "and",    "with",   "total", "all",
        "each",   "them",  "these",  "those",   "there",       "are",   "is",     "was",    "were",  "side",
        "sides",  "toe",   "toes",   "edge",    "edges",       "place", "places", "spots",  "finds", "find",
        "pcs",    "piece", "pieces", "off",     "ea",          "times", "small",  "fine",   "tiny",  "large",
        "like",   "alike", "same",   "similar", "size",        "sized", "about",  "approx", "line",  "more",
        "plcs",   "plc",   "pl",     "round",   "around",      "along", "length", "whole",  "hour",  "inch",
        "evenly", "weld",  "found",  "counted", "indications", "x",     "at",     "also"};
    return is_other_side(word) || is_one_of(word, words) || vocabulary.find(word) ||
           !one_of_plural(word, vocabulary).empty();
}

} // namespace

bool tells_several(std::string_view words) {
    const auto said = words_of(words);
    return std::any_of(said.begin(), said.end(), [](std::string_view word) {
        return is_number_word(word) || group_word(word) != nullptr;
    });
}

std::string how_several_are_logged(std::string_view said, TypeId type, const Vocabulary &vocabulary) {
    std::string name = vocabulary[type].name;
    if (const auto words = words_of(said); !words.empty())
        if (const std::string one = one_of_plural(words.back(), vocabulary); !one.empty())
            // Pores are porosity, and each of them a pore.
            if (const TypeId each = *vocabulary.find(one); each != type && vocabulary.is_a(each, type))
                name = one;
    if (vocabulary[type].is_group())
        return "'" + shown(said) + "': " + name +
               " is several already, and its size that of them all; leave the word out";
    std::string out = "'" + shown(said) +
                      "': a line is one find, and no rule reads how many there are; write '" + name +
                      " ...' for each of them, with its own size and place";
    const auto porosity = vocabulary.find("porosity");
    if (!porosity || !vocabulary.is_a(type, *porosity)) return out;
    for (const std::string_view word : words_of(said)) {
        const bool line = same_word(word, "linear");
        const auto *group = group_word(word);
        if (line || group)
            return out + ", or '" + std::string(line ? in_line : group->group) +
                   " ...' with the size of them all if that is what it is";
    }
    return out + ", or if they are a group 'scattered', 'clustered' or 'linear porosity ...' with the size "
                 "of them all";
}

std::string number_in_remark(std::string_view remark, const Vocabulary &vocabulary) {
    for (const auto &words : clauses_of(remark)) {
        bool several = std::any_of(words.begin(), words.end(), tells_the_same) &&
                       std::any_of(words.begin(), words.end(), is_other_side);
        for (std::size_t i = 0; i < words.size(); ++i) {
            const bool inches = i + 1 < words.size() && same_word(words[i + 1], "in");
            several = several || tells_several(words[i]) || (is_small_count(words[i]) && !inches);
        }
        if (several && std::all_of(words.begin(), words.end(), [&](const auto &word) {
                return tells_several(word) || is_small_count(word) || says_nothing_more(word, vocabulary);
            }))
            return joined(words, " ");
    }
    return "";
}

std::string one_of_plural(std::string_view word, const Vocabulary &vocabulary) {
    constexpr std::size_t least = 4;
    const std::string said = lowered(word);
    if (said.size() < least || !said.ends_with('s')) return "";
    const std::string_view stem = std::string_view(said).substr(0, said.size() - 1);
    if (vocabulary.find(stem)) return std::string(stem);
    if (!stem.ends_with("ie")) return "";
    const std::string one = std::string(stem.substr(0, stem.size() - 2)) + "y";
    return vocabulary.find(one) ? one : "";
}

} // namespace beadbook
