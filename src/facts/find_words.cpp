#include "facts/find_words.hpp"

#include "facts/clauses.hpp"
#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {
namespace {

struct WordOfFind {
    std::string_view word, type;
};

/// Nothing but a find is called so.
constexpr WordOfFind sure_words[] = {{"fissure", "crack"},
                                     {"fissures", "crack"},
                                     {"hairline", "crack"},
                                     {"hairlines", "crack"},
                                     {"crk", "crack"},
                                     {"crks", "crack"},
                                     {"unfused", "incomplete fusion"},
                                     {"l.o.f", "incomplete fusion"},
                                     {"u/c", "undercut"}};

/// What may be said of much else, beside is_something.
constexpr std::string_view perhaps_words[] = {
    "lop",         "icf",          "lin",           "linear",        "incl",
    "incls",       "poro",         "porous",        "ucut",          "gash",
    "rip",         "ripped",       "torn",          "suspicious",    "suspect",
    "rejectable",  "imperfection", "imperfections", "discontinuity", "discontinuities",
    "indications", "incompl",      "cracklike",     "crack-like",    "linears",
    "unbonded",    "delamination", "bubbles",       "blisters",      "crevices",
    "notches",     "nicks",        "dents",         "hollows"};

/// What behind a word for something makes it another thing: linear scale, spot check, split shift.
bool is_another_thing(std::string_view word) {
    constexpr std::string_view words[] = {"shift", "check",  "checks", "light",  "lamp",  "meter", "weld",
                                          "welds", "welder", "drive",  "motion", "array", "paint", "lens"};
    return is_a_tool(word) || is_one_of(word, words);
}

/// Names one slip of which is told wherever it stands.
constexpr WordOfFind names_of_a_slip[] = {{"crack", "crack"},
                                          {"cracks", "crack"},
                                          {"cracked", "crack"},
                                          {"cracking", "crack"},
                                          {"porosity", "porosity"},
                                          {"undercut", "undercut"},
                                          {"undercuts", "undercut"},
                                          {"inclusion", "inclusion"},
                                          {"inclusions", "inclusion"},
                                          {"lack of fusion", "incomplete fusion"},
                                          {"incomplete fusion", "incomplete fusion"},
                                          {"lack of penetration", "incomplete penetration"},
                                          {"incomplete penetration", "incomplete penetration"}};

/// Words of people that are one slip from a name, or two from a long one, and no find.
bool is_another_word(std::string_view word) {
    constexpr std::string_view words[] = {
        "racks",     "tracked", "tracking", "cranks",  "cranked", "cracker",  "creak",   "wrack",
        "racked",    "racking", "packed",   "packing", "stack",   "stacks",   "overlay", "overlays",
        "undercoat", "scatter", "slug",     "slog",    "stag",    "snag",     "slap",    "slang",
        "pose",      "poles",   "wore",     "sore",    "tore",    "fore",     "lore",    "pork",
        "cores",     "bores",   "posts",    "pours",   "threat",  "brown",    "grown",   "drown",
        "crowd",     "crows",   "frown",    "onset",   "grater",  "inclusive"};
    return is_of_the_bench(word) || is_one_of(word, words);
}

/// A name as it is written, or more than one of it: no slip.
bool is_a_name(const std::string &said, const Vocabulary &vocabulary) {
    return vocabulary.find(said) || (said.ends_with('s') && vocabulary.find(said.substr(0, said.size() - 1)));
}

std::optional<Meant> meant_by(std::string word, std::string_view type, const Vocabulary &vocabulary) {
    const auto id = vocabulary.find(type);
    return Meant{std::move(word), id ? std::vector<TypeId>{*id} : std::vector<TypeId>{}};
}

bool two_slips(std::string_view a, std::string_view b) {
    if (a.size() > b.size()) std::swap(a, b);
    for (std::size_t i = 0; i < b.size(); ++i) {
        std::string one(b);
        one.erase(i, 1);
        if (one_slip(one, a)) return true;
        if (i >= a.size()) continue;
        one = a;
        one[i] = b[i];
        if (one_slip(one, b)) return true;
    }
    return false;
}

std::size_t words_in(std::string_view text) {
    return 1 + static_cast<std::size_t>(std::count(text.begin(), text.end(), ' '));
}

/// Runs `tells` over each run of words, the longest first.
template <class Tells>
std::optional<Meant> first_run(const std::vector<std::string> &words, const Tells &tells) {
    constexpr std::size_t most = 3;
    for (std::size_t i = 0; i < words.size(); ++i)
        for (std::size_t n = std::min(most, words.size() - i); n > 0; --n) {
            const auto from = words.begin() + static_cast<std::ptrdiff_t>(i);
            const std::string said = lowered(joined({from, from + static_cast<std::ptrdiff_t>(n)}, " "));
            const std::string_view behind = i + n < words.size() ? std::string_view(words[i + n]) : "";
            if (auto found = tells(said, n, behind)) return found;
        }
    return std::nullopt;
}

} // namespace

bool is_of_the_bench(std::string_view word) {
    constexpr std::string_view words[] = {"gauge", "gauges", "gage", "track", "tracks", "rack",
                                          "crank", "more",   "core", "bore",  "port",   "ports",
                                          "post",  "pure",   "pole", "flag",  "slab",   "avoid"};
    return is_one_of(word, words);
}

bool is_a_tool(std::string_view word) {
    constexpr std::string_view words[] = {"gauge",     "gauges",     "gage",     "scale", "detector",
                                          "electrode", "electrodes", "standard", "spray", "tape"};
    return is_one_of(word, words);
}

bool is_something(std::string_view word) {
    constexpr std::string_view words[] = {
        "hole",  "holes",  "spot",    "spots",      "dot",    "dent",    "nick",    "dig",      "ind",
        "inds",  "defect", "defects", "defs",       "flaw",   "flaws",   "fissure", "fissures", "tear",
        "tears", "split",  "pit",     "pits",       "bubble", "blister", "crk",     "crks",     "l.o.f",
        "lof",   "u/c",    "crevice", "indication", "hollow", "notch",   "hairline"};
    return is_one_of(word, words);
}

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

std::optional<Meant> told_by_denial(const std::vector<std::string> &words, const Vocabulary &vocabulary) {
    constexpr std::string_view at_fault[] = {"problem", "problems", "defect", "defects", "issue", "issues",
                                             "line",    "fault",    "faults", "error",   "errors"};
    constexpr std::string_view degree[] = {"fully", "completely", "properly", "well", "quite", "all"};
    for (std::size_t i = 0; i + 1 < words.size(); ++i) {
        const std::string &word = words[i];
        const bool no = same_word(word, "no"), denied = same_word(word, "not") || same_word(word, "isn't") ||
                                                        same_word(word, "wasn't") || same_word(word, "never");
        std::size_t next = i + 1;
        while (next + 1 < words.size() && is_one_of(words[next], degree)) ++next;
        const std::string_view behind =
            next + 1 < words.size() ? std::string_view(words[next + 1]) : std::string_view();
        const std::string said = word + " " + words[next];
        if ((denied && same_word(words[next], "fused")) ||
            (no && same_word(words[next], "fusion") && !is_one_of(behind, at_fault)))
            return meant_by(said, "incomplete fusion", vocabulary);
        if ((denied && same_word(words[next], "penetrated")) ||
            (no && same_word(words[next], "penetration") && !is_one_of(behind, at_fault)))
            return meant_by(said, "incomplete penetration", vocabulary);
    }
    return std::nullopt;
}

std::optional<Meant> surely_told(const std::vector<std::string> &words, const Vocabulary &vocabulary) {
    return first_run(
        words, [&](const std::string &said, std::size_t n, std::string_view behind) -> std::optional<Meant> {
            if (is_another_thing(behind)) return std::nullopt;
            for (const auto &[word, type] : sure_words)
                if (said == word) return meant_by(said, type, vocabulary);
            if (is_another_word(said) || is_a_name(said, vocabulary)) return std::nullopt;
            for (const auto &[name, type] : names_of_a_slip)
                if (words_in(name) == n && one_slip(said, name)) return meant_by(said, type, vocabulary);
            return std::nullopt;
        });
}

std::optional<Meant> some_find(const std::vector<std::string> &words) {
    constexpr std::string_view finds[] = {
        "indication",    "indications",     "ind",       "inds",         "defect",        "defects",  "defs",
        "flaw",          "flaws",           "linear",    "imperfection", "imperfections", "lof",      "lop",
        "discontinuity", "discontinuities", "bleed-out", "bleed out",    "bleedout",      "bleedouts"};
    return first_run(words, [&](const std::string &said, std::size_t, std::string_view behind) {
        return is_one_of(said, finds) && !is_another_thing(behind) ? std::optional(Meant{said, {}})
                                                                   : std::nullopt;
    });
}

std::optional<Meant> perhaps_told(const std::vector<std::string> &words, const Vocabulary &vocabulary) {
    if (auto sure = surely_told(words, vocabulary)) return sure;
    constexpr std::size_t least = 4, long_name = 8;
    const auto names = vocabulary.names();
    return first_run(
        words, [&](const std::string &said, std::size_t n, std::string_view behind) -> std::optional<Meant> {
            if (is_another_thing(behind) || has_a_figure(said)) return std::nullopt;
            if (is_something(said) || is_one_of(said, perhaps_words)) return Meant{said, {}};
            if (said.size() < least || is_another_word(said) || is_a_name(said, vocabulary))
                return std::nullopt;
            for (const auto &name : names) {
                if (name.size() < least || words_in(name) != n) continue;
                const auto type = vocabulary.find(name);
                if (!type || vocabulary[*type].measured) continue;
                if (one_slip(said, name) || (n == 1 && name.size() >= long_name && two_slips(said, name)))
                    return Meant{said, {*type}};
            }
            return std::nullopt;
        });
}

} // namespace beadbook
