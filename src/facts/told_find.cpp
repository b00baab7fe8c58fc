#include "facts/told_find.hpp"

#include "criteria/methods.hpp"
#include "criteria/planar.hpp"
#include "facts/clauses.hpp"
#include "facts/find_words.hpp"
#include "facts/log_line_hints.hpp"
#include "measure/text.hpp"
#include "measure/unit.hpp"
#include "measure/words_apart.hpp"

#include <algorithm>
#include <cctype>

namespace beadbook {
namespace {

constexpr std::string_view figures_of_a_text = "0123456789";
constexpr std::size_t least_named = 4; // shorter ones are short forms, and other words as well

/// A size that every weld has, by words that name its excess as well: the height of a cap.
bool is_of_every_weld(std::string_view name) {
    constexpr std::string_view names[] = {"cap height", "crown height", "toe angle", "weld toe angle"};
    return is_one_of(name, names);
}

constexpr std::string_view denying[] = {"no",     "not",   "without", "looked",
                                        "sought", "never", "isn't",   "wasn't"};

/// What the clause says is not there: nothing behind a `no` or `free of`, nothing before a `none`. Of what is
/// not free of something, all is there.
std::vector<std::string> without_denied(std::vector<std::string> words) {
    constexpr std::string_view free = "free", behind_a_name = "-free";
    const auto is_free = [&](const std::string &word) {
        return same_word(word, free) || same_word(word, "clear") || lowered(word).ends_with(behind_a_name);
    };
    const auto denies = [](const std::string &word) { return is_one_of(word, denying); };
    const auto at = std::find_if(words.begin(), words.end(), is_free);
    if (at != words.end() && std::any_of(words.begin(), at, denies)) {
        for (auto &word : words)
            if (lowered(word).ends_with(behind_a_name)) word.resize(word.size() - behind_a_name.size());
        std::erase_if(words, [&](const auto &word) { return is_free(word) || denies(word); });
        return words;
    }
    if (std::any_of(words.begin(), words.end(), denies) || means_nought(words.front())) return {};
    const auto of = at != words.end() ? std::next(at) : at;
    if (of != words.end() && (same_word(*of, "of") || same_word(*of, "from"))) words.erase(at, words.end());
    std::erase_if(words, [&](const auto &word) { return lowered(word).ends_with(behind_a_name); });
    constexpr std::string_view before_a_number[] = {"at", "@", "from", "to", "mid", "l", "w", "d", "h"};
    for (std::size_t i = words.size(); i-- > 1;)
        if (means_nought(words[i]) && !is_one_of(words[i - 1], before_a_number))
            return {words.begin() + static_cast<std::ptrdiff_t>(i) + 1, words.end()};
    return words;
}

/// Whether people call more than one type so: cold lap.
bool is_unclear(const std::string &word, const Vocabulary &vocabulary) {
    for (std::size_t id = 0; id < vocabulary.size(); ++id)
        if (!word_among(word, vocabulary[static_cast<TypeId>(id)].unclear).empty()) return true;
    return false;
}

/// A size or a place by its look: .2, 3/16, 3:00, 0.2in; `behind` is the word before it.
bool is_measured(std::string_view word, std::string_view before) {
    if (!has_a_figure(word)) return false;
    constexpr std::string_view keys[] = {"at", "@", "from", "l", "w", "d", "h", "s", "mid", "long", "deep"};
    if (is_one_of(before, keys) || word.starts_with('@')) return true;
    const bool number = figures_of_a_text.find(word.front()) != figures_of_a_text.npos || word.front() == '.';
    return number && word.find_first_of("./:\"") != word.npos;
}

/// A place by the word before it or by its look.
bool is_placed(const std::vector<std::string> &words) {
    for (std::size_t i = 0; i < words.size(); ++i)
        if (same_word(words[i], "at") || words[i].starts_with('@') ||
            (has_a_figure(words[i]) && words[i].find(':') != words[i].npos))
            return true;
    return false;
}

/// Whether the words behind a type's name make it none: a tool for it, that it was taken off, that it was
/// looked at.
bool is_set_apart(std::string_view name, TypeId type, const std::vector<std::string> &behind,
                  const Vocabulary &vocabulary) {
    constexpr std::string_view joining[] = {"was", "were", "is", "are", "all", "been", "has", "have"};
    constexpr std::string_view taken_off[] = {"removed", "brushed", "wiped", "cleaned", "chipped"};
    constexpr std::string_view looked_at[] = {"checked", "ok"};
    if (is_of_every_weld(name) && !is_placed(behind)) return true;
    if (behind.empty()) return false;
    if (is_a_tool(behind.front()) || same_word(behind.front(), "free")) return true;
    const auto next = std::find_if(behind.begin(), behind.end(),
                                   [&](const auto &word) { return !is_one_of(word, joining); });
    if (next == behind.end() || is_planar(type, vocabulary)) return false;
    return is_one_of(*next, taken_off) ||
           (is_one_of(*next, looked_at) && std::none_of(behind.begin(), behind.end(), has_a_figure));
}

/// Words without what is added to the last or the first of them: cracked, undercutting, burned through; and
/// written as one: pin hole.
std::vector<std::string> stems_of(const std::vector<std::string> &words) {
    std::vector<std::string> out;
    const auto take = [&](const std::string &before, const std::string &word, const std::string &behind) {
        for (const std::string_view ending : {"", "s", "ed", "es", "ing", "d"}) {
            if (!word.ends_with(ending)) continue;
            const std::string stem = word.substr(0, word.size() - ending.size());
            out.push_back(before + stem + behind);
            const std::size_t n = stem.size();
            if (!ending.empty() && n > 2 && stem[n - 1] == stem[n - 2])
                out.push_back(before + stem.substr(0, n - 1) + behind);
        }
    };
    const std::string before = joined({words.begin(), std::prev(words.end())}, " ");
    take(before.empty() ? "" : before + " ", words.back(), "");
    if (words.size() == 1) return out;
    take("", words.front(), " " + joined({std::next(words.begin()), words.end()}, " "));
    if (words.size() == 2) take(words.front(), words.back(), "");
    return out;
}

/// LOF, LOP: a short form that people have for a type, not one of ours, which are other words as well.
bool is_abbreviation(std::string_view word, const Vocabulary &vocabulary) {
    const auto type = vocabulary.find(word);
    if (!type || !is_planar(*type, vocabulary)) return false;
    const auto &also = vocabulary[*type].also;
    return std::any_of(also.begin(), also.end(), [&](const auto &name) { return same_word(name, word); });
}

/// The imperfection that words of a clause name, in any of their forms ("cracked", "lack-of-fusion").
std::optional<ToldFind> named_in(const std::string &clause, const Vocabulary &vocabulary) {
    constexpr std::size_t most_words = 4;
    const auto words = words_apart(lowered(clause), [](char c) {
        return is_ascii_sign(c) || figures_of_a_text.find(c) != figures_of_a_text.npos;
    });
    for (std::size_t i = 0; i < words.size(); ++i) {
        std::size_t passed = 0; // words of a name that is no find
        for (std::size_t n = std::min(most_words, words.size() - i); n > 0 && passed == 0; --n) {
            const auto from = words.begin() + static_cast<std::ptrdiff_t>(i);
            const std::string said = joined({from, from + static_cast<std::ptrdiff_t>(n)}, " ");
            const std::vector<std::string> behind(from + static_cast<std::ptrdiff_t>(n), words.end());
            for (const std::string &stem : stems_of({from, from + static_cast<std::ptrdiff_t>(n)})) {
                if (stem.size() < least_named && !is_abbreviation(stem, vocabulary)) continue;
                if (const auto type = vocabulary.find(stem); type && !vocabulary[*type].measured) {
                    if (!is_set_apart(stem, *type, behind, vocabulary))
                        return ToldFind{said, {*type}, clause};
                    passed = n;
                    break;
                }
                if (n > 1 && is_unclear(stem, vocabulary))
                    return ToldFind{said, vocabulary.perhaps(stem), clause};
            }
        }
        if (passed > 0) i += passed - 1;
    }
    return std::nullopt;
}

/// A word that may stand behind the type of a line: a number, a unit, a key, a side.
bool is_of_a_line(std::string_view word) {
    constexpr std::string_view others[] = {"to",   "in",   "mm",   "o'clock", "oclock", "long",
                                           "deep", "wide", "high", "side",    "x"};
    return has_a_figure(word) || is_one_of(word, others) || !word_among(word, keys_of_a_line()).empty() ||
           std::any_of(measure_keys().begin(), measure_keys().end(),
                       [&](const MeasureKey &key) { return same_word(key.quick, word); });
}

/// What a word at the head of a line would be taken for, corrected to, or asked about.
std::vector<TypeId> types_meant(const std::string &first, const std::string &two,
                                const Vocabulary &vocabulary) {
    constexpr std::size_t least = 3;
    if (const auto named = type_named(two, vocabulary); named && !joins_words(first)) return {named->type};
    if (first.size() < least || is_of_the_bench(first)) return {};
    for (const auto &word : {two, first})
        if (auto could = vocabulary.perhaps(word); !could.empty()) return could;
    if (auto could = vocabulary.sharing(lowered(first)); !could.empty()) return could;
    if (first.size() >= least_named)
        for (const auto &name : vocabulary.names())
            if (name.size() >= least_named && one_slip(lowered(first), lowered(name)))
                return {*vocabulary.find(name)};
    return {};
}

/// A clause that reads like a line of a log, whatever stands before the type.
std::optional<ToldFind> like_a_line(const std::vector<std::string> &words, const std::string &clause,
                                    const Vocabulary &vocabulary) {
    constexpr std::string_view before_it[] = {
        "a",     "an",     "the",    "one",      "two",   "small",  "tiny",    "short", "fine",
        "faint", "minor",  "slight", "large",    "big",   "long",   "another", "and",   "also",
        "but",   "except", "only",   "has",      "have",  "had",    "is",      "was",   "with",
        "see",   "saw",    "found",  "possible", "maybe", "perhaps"};
    std::size_t at = 0;
    bool measured = false;
    for (; at < words.size(); ++at) {
        if (!has_a_figure(words[at]) && !exam_named(words[at]) && !is_one_of(words[at], before_it)) break;
        measured = measured || is_measured(words[at], "");
    }
    if (at == words.size() || is_of_a_line(words[at])) return std::nullopt;
    const std::string &first = words[at];
    const bool is_short = first.size() < least_named; // 9:30 am
    measured = measured && !is_short;
    const bool letters = std::all_of(first.begin(), first.end(), [](char c) {
        return std::isalpha(static_cast<unsigned char>(c)) != 0 || c == '-';
    });
    if (!letters || (at + 1 < words.size() && is_a_tool(words[at + 1]))) return std::nullopt;
    const std::string two =
        at + 1 < words.size() && !is_of_a_line(words[at + 1]) ? first + " " + words[at + 1] : first;
    const auto types = types_meant(first, two, vocabulary);
    if (types.empty()) return std::nullopt;
    const bool both =
        two != first && type_named(two, vocabulary) && type_named(two, vocabulary)->length == two.size();
    const auto behind = words.begin() + static_cast<std::ptrdiff_t>(at + (both ? 2 : 1));
    if (at + 1 < words.size() && is_of_every_weld(first + " " + words[at + 1]) && !is_placed(words))
        return std::nullopt;
    const bool line = std::all_of(behind, words.end(), [](const auto &word) { return is_of_a_line(word); });
    for (auto word = behind; word != words.end(); ++word)
        measured = measured || is_measured(*word, *std::prev(word)) || (line && has_a_figure(*word));
    // Words of four letters that begin a name are other words as well: cold, root, weld.
    const bool other_word = first.size() <= least_named && !vocabulary.sharing(lowered(first)).empty();
    const bool alone = behind == words.end() && !is_short && !other_word;
    if (measured ? is_short && !line : !alone) return std::nullopt;
    return ToldFind{first, types, clause, measured};
}

/// What words that name no type tell.
std::optional<Meant> heard_in(const std::vector<std::string> &words, Heard heard,
                              const Vocabulary &vocabulary) {
    if (heard == Heard::all) return perhaps_told(words, vocabulary);
    auto sure = surely_told(words, vocabulary);
    return sure || heard == Heard::sure ? sure : some_find(words);
}

} // namespace

bool tells_no_find(std::string_view name, TypeId type, std::string_view behind,
                   const Vocabulary &vocabulary) {
    std::vector<std::string> words;
    for (const auto &clause : clauses_of(behind)) words.insert(words.end(), clause.begin(), clause.end());
    if (words.size() == 1 && means_nought(words.front())) return true;
    if (!vocabulary[type].measured) return is_set_apart(name, type, words, vocabulary);
    constexpr std::string_view as_wanted[] = {"asked", "drawn", "specified", "required", "ordered"};
    return std::any_of(words.begin(), words.end(),
                       [&](const auto &word) { return is_one_of(word, as_wanted); });
}

bool is_planar_find(const ToldFind &told, const Vocabulary &vocabulary) {
    return std::any_of(told.types.begin(), told.types.end(),
                       [&](TypeId type) { return is_planar(type, vocabulary); });
}

std::vector<ToldFind> told_in(std::string_view text, const Vocabulary &vocabulary, Heard heard) {
    std::vector<ToldFind> out;
    for (const auto &said : clauses_of(text)) {
        const auto denial = told_by_denial(said, vocabulary);
        const auto words = denial ? said : without_denied(said);
        if (words.empty()) continue;
        const std::string clause = joined(words, " ");
        auto told = denial ? ToldFind{denial->word, denial->types, clause} : named_in(clause, vocabulary);
        const auto line = like_a_line(words, clause, vocabulary);
        if (!told && !line)
            if (auto meant = heard_in(words, heard, vocabulary))
                told = ToldFind{std::move(meant->word), std::move(meant->types), clause};
        if (told)
            for (std::size_t i = 0; i < words.size(); ++i)
                told->measured = told->measured || is_measured(words[i], i > 0 ? words[i - 1] : "") ||
                                 (line && line->measured);
        else
            told = line;
        if (told) out.push_back(std::move(*told));
    }
    return out;
}

} // namespace beadbook
