#include "facts/told_spot.hpp"

#include "facts/clauses.hpp"
#include "facts/find_words.hpp"
#include "facts/several_told.hpp"
#include "facts/told_find.hpp"
#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {
namespace {

using SpotWords = std::vector<std::string>;

bool is_digit_at(std::string_view word, std::size_t i) { return i < word.size() && is_digit(word[i]); }

bool is_figures(std::string_view word) {
    return !word.empty() && word.find_first_not_of("0123456789") == word.npos;
}

bool begins_a_number(std::string_view word) {
    return is_digit_at(word, 0) || (word.starts_with('.') && is_digit_at(word, 1));
}

/// An hour of the clock on a tube: 1:00 to 12:59.
bool is_clock_place(std::string_view word) {
    if (word.starts_with('@')) word.remove_prefix(1);
    const std::size_t colon = word.find_first_of(":;");
    if (colon == word.npos || colon == 0 || colon > 2 || !is_digit_at(word, colon + 1)) return false;
    int hour = 0;
    for (std::size_t i = 0; i < colon; ++i) {
        if (!is_digit_at(word, i)) return false;
        hour = hour * 10 + (word[i] - '0');
    }
    constexpr int last_hour = 12;
    const std::string rest = lowered(word.substr(colon + 1));
    return hour >= 1 && hour <= last_hour && !rest.ends_with("am") && !rest.ends_with("pm");
}

/// What stands in front of a place or a time that is none of a find.
bool leads_elsewhere(std::string_view word) {
    constexpr std::string_view words[] = {
        "scale",   "scales",   "tape",    "datum",  "zero",     "start",    "starts", "started", "stamp",
        "stamped", "mark",     "marked",  "viewed", "examined", "checked",  "looked", "done",    "begun",
        "began",   "finished", "cleaned", "logged", "welded",   "measured", "light"};
    return is_one_of(word, words);
}

/// What a number before it is, when it is no place.
bool is_of_another_kind(std::string_view word) {
    constexpr std::string_view words[] = {"lx",  "lux", "fc", "c",    "f",     "k",      "v",    "a",
                                          "am",  "pm",  "h",  "hr",   "hours", "degc",   "degf", "%",
                                          "psi", "hz",  "x",  "amps", "volts", "percent"};
    return is_one_of(word, words);
}

/// Where in a clause a place begins; its size if nowhere, or if nothing is said to be there.
std::size_t place_in(const SpotWords &words) {
    constexpr std::string_view denying_it[] = {"no", "without", "nothing", "none"};
    if (std::any_of(words.begin(), words.end(),
                    [&](const auto &word) { return is_one_of(word, denying_it); }))
        return words.size();
    constexpr std::string_view light[] = {"lx", "lux", "fc"}; // so far from the lamp
    const bool lit =
        std::any_of(words.begin(), words.end(), [&](const auto &word) { return is_one_of(word, light); });
    for (std::size_t i = 0; i < words.size(); ++i) {
        const bool at = same_word(words[i], "at") || words[i] == "@";
        const std::size_t number = at ? i + 1 : i;
        if (number >= words.size()) break;
        const std::string_view next = number + 1 < words.size() ? words[number + 1] : std::string_view();
        const bool clock =
            is_clock_place(words[number]) ||
            (begins_a_number(words[number]) && (same_word(next, "o'clock") || same_word(next, "oclock"))) ||
            lowered(words[number]).find("o'clock") != std::string::npos;
        const bool glued = words[number].starts_with('@') && words[number].size() > 1;
        if (!clock && !glued && !(at && !lit && begins_a_number(words[number]))) continue;
        if ((i > 0 && leads_elsewhere(words[i - 1])) || is_of_another_kind(next)) {
            i = number;
            continue;
        }
        return i;
    }
    return words.size();
}

template <class Tells>
std::string first_clause(std::string_view text, const Tells &tells) {
    for (const auto &words : clauses_of(text))
        if (tells(words)) return joined(words, " ");
    return "";
}

bool is_a_size(std::string_view word) {
    return begins_a_number(word) && word.find_first_of(":;") == word.npos;
}

} // namespace

std::string place_told(std::string_view text) {
    return first_clause(text, [](const SpotWords &words) { return place_in(words) < words.size(); });
}

std::string size_told(std::string_view text) {
    constexpr std::string_view how[] = {"long", "deep", "wide", "high", "dia", "diameter"};
    constexpr std::string_view units[] = {"mm", "in", "inch", "thou", "\""};
    constexpr std::string_view whole[] = {"plate", "tube", "pipe",  "coupon",
                                          "piece", "film", "scale", "tape"};
    return first_clause(text, [&](const SpotWords &words) {
        for (std::size_t i = 0; i < words.size(); ++i) {
            if (!is_a_size(words[i])) continue;
            std::size_t next = i + 1;
            if (next < words.size() && is_one_of(words[next], units)) ++next;
            const bool of_whole = std::any_of(words.begin(), words.begin() + static_cast<std::ptrdiff_t>(i),
                                              [&](const auto &word) { return is_one_of(word, whole); });
            if (next < words.size() && is_one_of(words[next], how) && !of_whole) return true;
            if (std::any_of(words.begin(), words.end(), is_something)) return true;
            const bool fraction = words[i].find_first_of("./") != std::string::npos;
            if (fraction && words.size() == 1) return true;
        }
        return false;
    });
}

std::string number_told(std::string_view text) {
    constexpr std::string_view some[] = {"one", "two", "three", "some", "several"};
    const auto counts = [&](const std::string &word) {
        return is_one_of(word, some) || (is_figures(word) && word.find_first_not_of('0') != word.npos);
    };
    return first_clause(text, [&](const SpotWords &words) {
        for (std::size_t i = 0; i < words.size(); ++i)
            if (same_word(words[i], "found") && ((i + 1 < words.size() && counts(words[i + 1])) ||
                                                 (i > 0 && i + 1 == words.size() && counts(words[i - 1]))))
                return true;
        return false;
    });
}

std::string taken_back(std::string_view text) {
    constexpr std::string_view turns[] = {
        "but",        "except",  "excepting", "only",     "half",       "save",    "partly",  "partial",
        "unfinished", "halfway", "fogged",    "failed",   "fails",      "failing", "reject",  "rejected",
        "stopped",    "aborted", "covered",   "obscured", "unreadable", "spoilt",  "repeated"};
    constexpr std::string_view not_yet[] = {"seen",     "done",    "all",     "examined",   "finished",
                                            "complete", "reached", "visible", "accessible", "looked",
                                            "see",      "reach",   "examine", "inspect",    "developed"};
    for (const auto &words : clauses_of(text)) {
        for (std::size_t i = 0; i < words.size(); ++i) {
            if (is_one_of(words[i], turns)) return words[i];
            const bool denied = same_word(words[i], "not") && i + 1 < words.size();
            if (!denied || !is_one_of(words[i + 1], not_yet)) continue;
            // Cracks that were not seen are none.
            const std::string before =
                joined({words.begin(), words.begin() + static_cast<std::ptrdiff_t>(i)}, " ");
            if (told_in(before).empty()) return words[i] + " " + words[i + 1];
        }
    }
    return "";
}

std::string another_size_told(std::string_view text, const std::function<bool(std::string_view)> &known) {
    constexpr std::string_view units[] = {"mm", "in", "inch", "thou", "mil"},
                               off_by[] = {"\u00b1", "+-", "+/-"};
    const auto is_no_size_behind = [&](std::string_view word) {
        return is_a_tool(word) || is_one_of(word, off_by);
    };
    const auto is_fraction = [](std::string_view word) {
        const std::size_t point = word.find_first_of("./");
        return begins_a_number(word) && point != word.npos && is_digit_at(word, point + 1) &&
               word.find_first_of("./:;", point + 1) == word.npos;
    };
    return first_clause(text, [&](const SpotWords &words) {
        for (std::size_t i = 0; i < words.size(); ++i) {
            const std::string_view next = i + 1 < words.size() ? words[i + 1] : std::string_view();
            if (!is_fraction(words[i]) || is_of_another_kind(next) ||
                (i > 0 && is_no_size_behind(words[i - 1])))
                continue;
            if (!known(is_one_of(next, units) ? words[i] + " " + std::string(next) : words[i])) return true;
        }
        return false;
    });
}

std::string worse_told(std::string_view text) {
    constexpr std::string_view denying[] = {"no", "not", "without", "nothing", "none", "free", "never"};
    constexpr std::string_view worse[] = {"undersize", "undersized", "bleeds", "bled",
                                          "bleeding",  "hole",       "holes",  "notch",
                                          "notches",   "sharp",      "gash",   "through-wall"};
    constexpr std::string_view fine[] = {"tight", "faint", "thin", "fine", "dark", "straight"};
    const auto follow = [](const SpotWords &words, std::size_t i, std::string_view one,
                           std::string_view other) {
        return i + 1 < words.size() && same_word(words[i], one) && same_word(words[i + 1], other);
    };
    return first_clause(text, [&](const SpotWords &words) {
        for (std::size_t i = 0; i < words.size(); ++i) {
            if (follow(words, i, "not", "smooth") || follow(words, i, "through", "wall") ||
                follow(words, i, "thru", "wall") || follow(words, i, "too", "small") ||
                follow(words, i, "too", "deep"))
                return true;
            if (is_one_of(words[i], denying)) return false;
            const bool line =
                i + 1 < words.size() && is_one_of(words[i], fine) && same_word(words[i + 1], "line");
            if (line || is_one_of(words[i], worse)) return true;
        }
        return false;
    });
}

std::string another_told(std::string_view text) {
    constexpr std::string_view more[] = {
        "another", "also", "second", "third", "more",  "other", "others",     "too",       "again",
        "2nd",     "3rd",  "two",    "same",  "ditto", "row",   "continuous", "continues", "continued"};
    bool told = false; // "also at 200, 250": what follows is told with it
    for (const auto &words : clauses_of(text)) {
        told = told || std::any_of(words.begin(), words.end(),
                                   [&](const auto &word) { return is_one_of(word, more); });
        if (told && place_in(words) < words.size()) return joined(words, " ");
    }
    return "";
}

std::string more_told(std::string_view text) {
    constexpr std::string_view more[] = {"more", "other", "others"};
    const auto is_count = [](const std::string &word) {
        return tells_several(word) || (word != "0" && is_figures(word));
    };
    for (const auto &words : clauses_of(text))
        for (std::size_t i = 0; i < words.size(); ++i) {
            const bool behind_of = i > 0 && same_word(words[i - 1], "of"),
                       of_a = i > 1 && same_word(words[i - 1], "a") && same_word(words[i - 2], "of");
            const bool counted = i > 0 && is_one_of(words[i], more) && is_count(words[i - 1]);
            const bool more_of =
                i + 1 < words.size() && same_word(words[i], "more") && same_word(words[i + 1], "of");
            if (counted || more_of || ((behind_of || of_a) && tells_several(words[i])))
                return joined(words, " ");
        }
    return "";
}

} // namespace beadbook
