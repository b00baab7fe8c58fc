#include "facts/told_find.hpp"

#include "criteria/methods.hpp"
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

template <std::size_t n>
bool is_one_of(std::string_view word, const std::string_view (&words)[n]) {
    return std::any_of(std::begin(words), std::end(words),
                       [&](std::string_view one) { return same_word(one, word); });
}

bool has_a_figure(std::string_view word) { return word.find_first_of(figures_of_a_text) != word.npos; }

std::string_view without_ends(std::string_view word) {
    constexpr std::string_view ends = ",;:!?()[]'";
    while (!word.empty() && ends.find(word.front()) != ends.npos) word.remove_prefix(1);
    while (!word.empty() && (ends.find(word.back()) != ends.npos || word.back() == '.'))
        word.remove_suffix(1);
    return word;
}

/// The parts of a text that say one thing each, as words: what one of them denies another may say.
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

/// What the clause says is not there: nothing behind a `no`, nothing before a `none`.
std::vector<std::string> without_denied(const std::vector<std::string> &words) {
    constexpr std::string_view all[] = {"no",     "not",   "without", "looked",
                                        "sought", "never", "isn't",   "wasn't"};
    if (std::any_of(words.begin(), words.end(), [&](const auto &word) { return is_one_of(word, all); }))
        return {};
    const auto none =
        std::find_if(words.rbegin(), words.rend(), [](const auto &word) { return same_word(word, "none"); });
    return {none.base(), words.end()};
}

/// Whether people call more than one type so: cold lap.
bool is_unclear(const std::string &word, const Vocabulary &vocabulary) {
    for (std::size_t id = 0; id < vocabulary.size(); ++id)
        if (!word_among(word, vocabulary[static_cast<TypeId>(id)].unclear).empty()) return true;
    return false;
}

/// The imperfection that words of a clause name, in any of their forms ("cracked", "lack-of-fusion").
std::optional<ToldFind> named_in(const std::string &clause, const Vocabulary &vocabulary) {
    constexpr std::size_t most_words = 4;
    const auto words = words_apart(lowered(clause), [](char c) {
        return is_ascii_sign(c) || figures_of_a_text.find(c) != figures_of_a_text.npos;
    });
    for (std::size_t i = 0; i < words.size(); ++i)
        for (std::size_t n = std::min(most_words, words.size() - i); n > 0; --n) {
            const auto from = words.begin() + static_cast<std::ptrdiff_t>(i);
            const std::string said = joined({from, from + static_cast<std::ptrdiff_t>(n)}, " ");
            for (const std::string_view ending : {"", "s", "ed", "es", "ing", "d"}) {
                if (!said.ends_with(ending) || said.size() - ending.size() < least_named) continue;
                const std::string stem = said.substr(0, said.size() - ending.size());
                if (const auto type = vocabulary.find(stem); type && !vocabulary[*type].measured)
                    return ToldFind{said, {*type}, clause};
                if (n > 1 && is_unclear(stem, vocabulary))
                    return ToldFind{said, vocabulary.perhaps(stem), clause};
            }
        }
    return std::nullopt;
}

/// A size or a place by its look: .2, 3/16, 3:00, 0.2in; `behind` is the word before it.
bool is_measured(std::string_view word, std::string_view before) {
    if (!has_a_figure(word)) return false;
    constexpr std::string_view keys[] = {"at", "@", "from", "l", "w", "d", "h", "s", "mid", "long", "deep"};
    if (is_one_of(before, keys) || word.starts_with('@')) return true;
    const bool number = figures_of_a_text.find(word.front()) != figures_of_a_text.npos || word.front() == '.';
    return number && word.find_first_of("./:\"") != word.npos;
}

/// A word that may stand behind the type of a line: a number, a unit, a key, a side.
bool is_of_a_line(std::string_view word) {
    constexpr std::string_view others[] = {"to",   "in",   "mm",   "o'clock", "oclock", "long",
                                           "deep", "wide", "high", "side",    "x"};
    return has_a_figure(word) || is_one_of(word, others) || !word_among(word, keys_of_a_line()).empty() ||
           std::any_of(measure_keys().begin(), measure_keys().end(),
                       [&](const MeasureKey &key) { return same_word(key.quick, word); });
}

/// Whether one slip of the fingers makes the one word of the other: a letter more, less or another, or two
/// the other way round.
bool one_slip(std::string_view a, std::string_view b) {
    if (a.size() > b.size()) std::swap(a, b);
    if (b.size() - a.size() > 1) return false;
    std::size_t front = 0;
    while (front < a.size() && a[front] == b[front]) ++front;
    const std::string_view rest_a = a.substr(front), rest_b = b.substr(front);
    if (a.size() < b.size()) return rest_a == rest_b.substr(1);
    if (rest_a.size() < 2) return true;
    return rest_a.substr(1) == rest_b.substr(1) ||
           (rest_a[0] == rest_b[1] && rest_a[1] == rest_b[0] && rest_a.substr(2) == rest_b.substr(2));
}

/// What a word at the head of a line would be taken for, corrected to, or asked about.
std::vector<TypeId> types_meant(const std::string &first, const std::string &two,
                                const Vocabulary &vocabulary) {
    constexpr std::size_t least = 3;
    if (const auto named = type_named(two, vocabulary); named && !joins_words(first)) return {named->type};
    if (first.size() < least) return {};
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
    if (!letters) return std::nullopt;
    const std::string two =
        at + 1 < words.size() && !is_of_a_line(words[at + 1]) ? first + " " + words[at + 1] : first;
    const auto types = types_meant(first, two, vocabulary);
    if (types.empty()) return std::nullopt;
    const bool both =
        two != first && type_named(two, vocabulary) && type_named(two, vocabulary)->length == two.size();
    const auto behind = words.begin() + static_cast<std::ptrdiff_t>(at + (both ? 2 : 1));
    const bool line = std::all_of(behind, words.end(), [](const auto &word) { return is_of_a_line(word); });
    for (auto word = behind; word != words.end(); ++word)
        measured = measured || is_measured(*word, *std::prev(word)) || (line && has_a_figure(*word));
    // Words of four letters that begin a name are other words as well: cold, root, weld.
    const bool other_word = first.size() <= least_named && !vocabulary.sharing(lowered(first)).empty();
    const bool alone = behind == words.end() && !is_short && !other_word;
    if (measured ? is_short && !line : !alone) return std::nullopt;
    return ToldFind{first, types, clause, measured};
}

} // namespace

std::vector<ToldFind> told_in(std::string_view text, const Vocabulary &vocabulary) {
    std::vector<ToldFind> out;
    for (const auto &said : clauses_of(text)) {
        const auto words = without_denied(said);
        if (words.empty()) continue;
        const std::string clause = joined(words, " ");
        auto told = named_in(clause, vocabulary);
        const auto line = like_a_line(words, clause, vocabulary);
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
