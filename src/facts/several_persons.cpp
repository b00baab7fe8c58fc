#include "facts/name_likeness.hpp"
#include "facts/person_name.hpp"
#include "facts/plausibility.hpp"
#include "measure/refusal.hpp"
#include "measure/text.hpp"
#include "measure/words_apart.hpp"

#include <algorithm>
#include <cctype>

namespace beadbook {
namespace {

bool is_of_name(char c) {
    return !is_digit(c) && (static_cast<unsigned char>(c) >= 0x80 || std::isalpha(c) != 0);
}

/// The words of a name without the points and commas about them.
std::vector<std::string> bare_words(std::string_view name) {
    return words_apart(std::string(name), [](char c) { return c == '.' || c == ','; });
}

/// L2, AB-12: a letter or two with a number, as marks are; "No11" counts somebody, "2nd" follows a name.
bool is_mark(const std::string &word) {
    std::size_t letters = 0;
    while (letters < word.size() && is_of_name(word[letters])) ++letters;
    const std::size_t digits = letters + (letters < word.size() && word[letters] == '-' ? 1 : 0);
    return letters > 0 && letters < 3 && digits < word.size() && lowered(word.substr(0, letters)) != "no" &&
           std::all_of(word.begin() + static_cast<std::ptrdiff_t>(digits), word.end(), is_digit);
}

/// Behind these a joining word goes on with one name: "Karl von und zu Stein".
bool leads_on(std::string_view word) {
    constexpr std::string_view all[] = {"von", "vom", "zu", "zum", "zur", "van", "de"};
    return std::find(std::begin(all), std::end(all), word) != std::end(all);
}

/// A name is read in small letters, with blanks about its signs, and what joins two as one sign.
std::string with_joints(std::string_view text) {
    std::string low;
    for (const char c : folded_name(text))
        if (std::string_view("/;+&|\\").find(c) != std::string_view::npos)
            low += " / ";
        else if (std::string_view("()[]").find(c) != std::string_view::npos)
            low += std::string(" ") + c + " ";
        else
            low += c;
    std::string out;
    std::string_view before;
    for (const auto word : words_of(low)) {
        const bool joins =
            (word == "and" || word == "or" || word == "with" || word == "und") && !leads_on(before);
        out += (out.empty() ? "" : " ") + (joins ? std::string("/") : std::string(word));
        before = word;
    }
    return out;
}

/// What stands in brackets is taken off, and given back by itself.
std::vector<std::string> bracketed(std::string &text) {
    std::vector<std::string> out;
    for (std::size_t open; (open = text.find_first_of("([")) != std::string::npos;) {
        const std::size_t close = std::min(text.find_first_of(")]", open), text.size());
        out.push_back(text.substr(open + 1, close - open - 1));
        text.replace(open, close - open + (close < text.size() ? 1 : 0), " ");
    }
    return out;
}

/// The parts that name somebody.
std::vector<std::string> naming(const std::string &text, char between) {
    std::vector<std::string> out;
    for (std::size_t at = 0; at <= text.size();) {
        const std::size_t end = std::min(text.find(between, at), text.size());
        const std::string part(trimmed(std::string_view(text).substr(at, end - at)));
        const auto words = bare_words(part);
        const bool title = words.size() == 1 && is_title(words.front());
        if (names_somebody(part) && !title) out.push_back(part);
        at = end + 1;
    }
    return out;
}

/// "reef | j. r.": a name that is whole without initials, and only initials behind it.
bool turned_round(const std::string &name, const std::string &behind) {
    const auto first = bare_words(name), second = bare_words(behind);
    return std::none_of(first.begin(), first.end(),
                        [](const auto &w) { return w.size() == 1 || is_mark(w); }) &&
           std::all_of(second.begin(), second.end(), [](const auto &w) {
               return w.size() < 3 && std::all_of(w.begin(), w.end(), is_of_name);
           });
}

/// "smith | john", each with no mark among them.
bool may_be_turned_round(const std::vector<std::string> &parts) {
    if (parts.size() != 2) return false;
    const auto first = bare_words(parts[0]), second = bare_words(parts[1]);
    return second.size() < 3 && std::none_of(second.begin(), second.end(), is_mark) &&
           std::none_of(first.begin(), first.end(),
                        [](const auto &w) { return w.size() == 1 || is_mark(w); });
}

/// What stands beside a mark, in words; empty if there is none, or nothing. Of "north.L1" the point parts
/// nothing: so a mark of another shop is told.
std::string beside_mark(const std::string &name) {
    std::size_t marks = 0;
    std::string rest;
    for (auto word : words_of(name)) {
        while (word.ends_with('.') || word.ends_with(',')) word.remove_suffix(1);
        if (word.empty() || word == "/") continue;
        if (is_mark(std::string(word)))
            ++marks;
        else if (std::count_if(word.begin(), word.end(), is_of_name) > 1)
            rest += (rest.empty() ? "" : " ") + std::string(word);
    }
    if (marks == 0 || (marks == 1 && rest.empty())) return "";
    return marks > 1 ? "another mark" : names_somebody(rest) ? "a name" : "other words";
}

} // namespace

std::string several_persons(std::string_view text, bool on_record) {
    const std::string begin = "'" + shown(std::string(text)) + "'";
    if (const auto name = trimmed(text); name.ends_with(',') || name.ends_with(';'))
        return begin + " ends with a sign behind which nothing stands; write the name alone, \"" +
               std::string(trimmed(name.substr(0, name.find_last_not_of(",; ") + 1))) + "\"";
    const std::string one = "; one person is named here: the name alone, or with the mark in brackets";
    std::string plain = with_joints(text);
    const auto asides = bracketed(plain);
    for (const auto &aside : asides)
        if (bare_words(aside).size() > 1 && names_somebody(aside))
            return begin + " names somebody beside a name" + one;
    if (naming(plain, '/').size() > 1) return begin + " names more than one" + one;
    const auto parts = naming(plain, ',');
    if (parts.size() > 1 && !(parts.size() == 2 && turned_round(parts[0], parts[1]))) {
        if (!may_be_turned_round(parts)) return begin + " names more than one" + one;
        if (on_record) return "";
        const std::size_t comma = text.find(',');
        return begin + " may be one person or two; if it is one, write \"" +
               std::string(trimmed(text.substr(comma + 1))) + " " +
               std::string(trimmed(text.substr(0, comma))) + "\"";
    }
    const std::string beside = beside_mark(plain);
    if (beside.empty()) return "";
    if (beside == "a name") return begin + " has a mark beside a name" + one;
    return begin + " has " + beside + " beside a mark; one person is named here: the mark or the name alone";
}

void check_one_person(const std::string &text, const std::string &field, bool on_record) {
    if (const std::string why = several_persons(text, on_record); !why.empty()) throw refused(why).at(field);
}

void check_new_name(const std::string &text, const std::string &field, bool sure) {
    const std::string why = several_persons(text);
    if (why.empty()) return;
    check_one_person(text, field, true);
    if (!sure) throw Unsure("is that meant? " + why);
}

} // namespace beadbook
