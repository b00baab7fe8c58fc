#include "facts/name_likeness.hpp"

#include "facts/person_name.hpp"
#include "measure/text.hpp"
#include "measure/words_apart.hpp"

#include <algorithm>
#include <cctype>
#include <cstdint>
#include <vector>

namespace beadbook {
namespace {

/// Latin letters with marks, U+00C0 to U+017F, as the letter that carries them.
constexpr std::string_view marked_letters =
    "aaaaaaaceeeeiiiidnoooooxouuuuypsaaaaaaaceeeeiiiidnooooo ouuuuypyaaaaaaccccccccddddeeeeeeeeeegggggggghhhh"
    "iiiiiiiiiiiijjkkkllllllllllnnnnnnnnnoooooooorrrrrrssssssssttttttuuuuuuuuuuuuwwyyyzzzzzzs";

struct LooksLike {
    char32_t letter;
    char as;
};

/// Of other alphabets, those that nobody tells from a Latin letter by its shape.
constexpr LooksLike look_alikes[] = {
    {0x0391, 'a'}, {0x0392, 'b'}, {0x0395, 'e'}, {0x0396, 'z'}, {0x0397, 'h'}, {0x0399, 'i'}, {0x039A, 'k'},
    {0x039C, 'm'}, {0x039D, 'n'}, {0x039F, 'o'}, {0x03A1, 'p'}, {0x03A4, 't'}, {0x03A5, 'y'}, {0x03A7, 'x'},
    {0x03B1, 'a'}, {0x03B9, 'i'}, {0x03BA, 'k'}, {0x03BD, 'v'}, {0x03BF, 'o'}, {0x03C1, 'p'}, {0x03C4, 't'},
    {0x03C5, 'u'}, {0x03C7, 'x'}, {0x0405, 's'}, {0x0406, 'i'}, {0x0408, 'j'}, {0x0410, 'a'}, {0x0412, 'b'},
    {0x0415, 'e'}, {0x041A, 'k'}, {0x041C, 'm'}, {0x041D, 'h'}, {0x041E, 'o'}, {0x0420, 'p'}, {0x0421, 'c'},
    {0x0422, 't'}, {0x0423, 'y'}, {0x0425, 'x'}, {0x0430, 'a'}, {0x0435, 'e'}, {0x043A, 'k'}, {0x043E, 'o'},
    {0x0440, 'p'}, {0x0441, 'c'}, {0x0443, 'y'}, {0x0445, 'x'}, {0x0455, 's'}, {0x0456, 'i'}, {0x0458, 'j'},
    {0x04BB, 'h'}, {0x0501, 'd'}, {0x051B, 'q'}, {0x051D, 'w'}, {0x0251, 'a'}, {0x0261, 'g'}, {0x0269, 'i'},
};

/// The letter that a text begins with, which is taken off. A byte that begins none stands for itself.
char32_t taken_letter(std::string_view &text) {
    const auto first = static_cast<unsigned char>(text.front());
    const std::size_t size = first < 0xC0 ? 1 : first < 0xE0 ? 2 : first < 0xF0 ? 3 : 4;
    char32_t out = size == 1 ? first : first & (0xFFu >> (size + 1));
    for (std::size_t i = 1; i < std::min(size, text.size()); ++i)
        out = (out << 6) | (static_cast<unsigned char>(text[i]) & 0x3Fu);
    text.remove_prefix(std::min(size, text.size()));
    return out;
}

bool between(char32_t letter, char32_t first, char32_t last) { return first <= letter && letter <= last; }

/// Marks that stand on the letter before them, and what is not seen at all.
bool is_nothing(char32_t letter) {
    return between(letter, 0x0300, 0x036F) || between(letter, 0x200B, 0x200F) ||
           between(letter, 0x2060, 0x2064) || letter == 0x00AD || letter == 0xFEFF;
}

/// 0: none of ASCII is like it.
char ascii_of(char32_t letter) {
    if (letter < 0x80) return static_cast<char>(std::tolower(static_cast<int>(letter)));
    if (between(letter, 0x00C0, 0x017F)) return marked_letters[letter - 0x00C0];
    constexpr char32_t full_width = 0xFEE0;
    if (between(letter, 0xFF01, 0xFF5E)) return ascii_of(letter - full_width);
    if (between(letter, 0x2010, 0x2015) || letter == 0x2212) return '-';
    if (between(letter, 0x1D400, 0x1D6A3)) return static_cast<char>('a' + (letter - 0x1D400) % 26);
    if (between(letter, 0x2000, 0x200A) || letter == 0x00A0 || letter == 0x202F || letter == 0x3000)
        return ' ';
    const auto *found = std::find_if(std::begin(look_alikes), std::end(look_alikes),
                                     [&](const LooksLike &one) { return one.letter == letter; });
    return found == std::end(look_alikes) ? char{0} : found->as;
}

void replace_all(std::string &text, std::string_view what, std::string_view by) {
    for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + by.size()))
        text.replace(at, what.size(), by);
}

bool is_number(std::string_view word) { return std::all_of(word.begin(), word.end(), is_digit); }

/// "l10": a letter with a number behind it.
bool is_letter_with_number(std::string_view word) {
    return word.size() > 1 && std::isalpha(static_cast<unsigned char>(word.front())) != 0 &&
           is_number(word.substr(1));
}

/// A word in letters that are told apart by sight: of I, l and 1 one, of O and 0 one. Figures are a number.
std::string seen(std::string word) {
    if (word.size() > 1 && is_number(word)) return word;
    const bool mark = is_letter_with_number(word);
    for (char &c : word)
        if (c == 'i' || (c == '1' && !mark))
            c = 'l';
        else if (c == '0' && !mark)
            c = 'o';
    replace_all(word, "rn", "m");
    replace_all(word, "vv", "w");
    return word;
}

/// Stands for a letter that is like some letter of ASCII, nobody knows which; no text holds this byte.
constexpr char some_letter = '\xff';

/// A letter of another alphabet among those of ASCII is there to look like one of these, as nobody's name is
/// written in two alphabets.
std::string with_strange_letters_seen(std::string name) {
    const auto is_strange = [](unsigned char c) { return c >= 0x80; };
    if (std::none_of(name.begin(), name.end(), [](unsigned char c) { return std::isalpha(c) != 0; }) ||
        std::none_of(name.begin(), name.end(), is_strange))
        return name;
    std::string out;
    for (std::string_view rest = name; !rest.empty();) {
        const char first = rest.front();
        taken_letter(rest);
        out += is_strange(static_cast<unsigned char>(first)) ? some_letter : first;
    }
    return out;
}

bool is_like(char a, char b) { return a == b || a == some_letter || b == some_letter; }
bool is_like(std::string_view a, std::string_view b) {
    return a.size() == b.size() &&
           std::equal(a.begin(), a.end(), b.begin(), [](char x, char y) { return is_like(x, y); });
}

std::vector<std::string> seen_words(std::string_view name) {
    std::vector<std::string> out, all;
    for (const auto &word : words_apart(with_strange_letters_seen(folded_name(name)), is_ascii_sign)) {
        all.push_back(seen(word));
        if (!is_title(word)) out.push_back(all.back());
    }
    // A title and a letter name nobody better than both do.
    const bool any = std::any_of(out.begin(), out.end(), [](const auto &word) { return word.size() > 1; });
    return any ? out : all;
}

/// The same, or one is the beginning of the other in a letter or two.
bool may_stand_for(const std::string &a, const std::string &b) {
    const std::string &one = a.size() < b.size() ? a : b, &other = a.size() < b.size() ? b : a;
    return is_like(one, other) || (one.size() <= 2 && !is_number(one) && !is_letter_with_number(other) &&
                                   is_like(one, std::string_view(other).substr(0, one.size())));
}

/// Whether each of `few` stands for another one of `many`.
bool all_stand_for(const std::vector<std::string> &few, std::vector<std::string> many, std::size_t from = 0) {
    if (from == few.size()) return true;
    for (std::size_t i = 0; i < many.size(); ++i) {
        if (!may_stand_for(few[from], many[i])) continue;
        std::vector<std::string> rest = many;
        rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(i));
        if (all_stand_for(few, std::move(rest), from + 1)) return true;
    }
    return false;
}

/// "JR" as J and R.
std::vector<std::string> with_initials_apart(const std::vector<std::string> &words) {
    std::vector<std::string> out;
    for (const auto &word : words)
        if (word.size() == 2 && !is_number(word))
            for (const char c : word) out.emplace_back(1, c);
        else
            out.push_back(word);
    return out;
}

bool may_be_same(const std::vector<std::string> &a, const std::vector<std::string> &b) {
    if (a.empty() || b.empty()) return false;
    if (is_like(joined(a, ""), joined(b, ""))) return true;
    // More words than anybody's name has are a text: it is not searched for all that it may stand for.
    constexpr std::size_t most = 6;
    if (a.size() > most || b.size() > most) return false;
    return a.size() <= b.size() ? all_stand_for(a, b) : all_stand_for(b, a);
}

/// One letter is another, too many, missing, or stands on the other side of its neighbour.
bool one_slip_apart(const std::string &a, const std::string &b) {
    const std::string &one = a.size() < b.size() ? a : b, &other = a.size() < b.size() ? b : a;
    constexpr std::size_t least = 4; // of the longer: Wil and Will
    if (other.size() < least || one.size() + 1 < least || other.size() > one.size() + 1) return false;
    const auto like = [](char p, char q) { return is_like(p, q); };
    const auto [x, y] = std::mismatch(one.begin(), one.end(), other.begin(), like);
    if (other.size() > one.size()) return std::equal(x, one.end(), y + 1, like);
    if (x == one.end() || std::equal(x + 1, one.end(), y + 1, like)) return true;
    return x + 1 != one.end() && like(x[0], y[1]) && like(x[1], y[0]) &&
           std::equal(x + 2, one.end(), y + 2, like);
}

} // namespace

std::string folded_name(std::string_view name) {
    std::string out;
    while (!name.empty()) {
        const std::string_view before = name;
        const char32_t letter = taken_letter(name);
        if (is_nothing(letter)) continue;
        if (const char as = ascii_of(letter); as != 0)
            out += as;
        else
            out += before.substr(0, before.size() - name.size());
    }
    return out;
}

bool may_be_same_person(std::string_view a, std::string_view b) {
    const auto one = names_in(a), other = names_in(b);
    return std::any_of(one.begin(), one.end(), [&](std::string_view x) {
        const auto words = seen_words(x);
        return std::any_of(other.begin(), other.end(), [&](std::string_view y) {
            const auto others = seen_words(y);
            return may_be_same(words, others) ||
                   may_be_same(with_initials_apart(words), with_initials_apart(others));
        });
    });
}

bool may_be_misspelt(std::string_view a, std::string_view b) {
    // A figure that is another is another number: Learner No11 and No12.
    const auto counts = [](std::string_view name) { return std::any_of(name.begin(), name.end(), is_digit); };
    if (counts(folded_name(a)) && counts(folded_name(b))) return false;
    const auto words = seen_words(a), others = seen_words(b);
    // A surname alone may have a slip too.
    const auto &few = words.size() < others.size() ? words : others;
    const auto &many = words.size() < others.size() ? others : words;
    if (few.size() == 1 && many.size() > 1)
        return std::any_of(many.begin(), many.end(),
                           [&](const std::string &word) { return one_slip_apart(few.front(), word); });
    if (words.size() != others.size()) return false;
    int slips = 0;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (may_stand_for(words[i], others[i])) continue;
        if (!one_slip_apart(words[i], others[i]) || ++slips > 1) return false;
    }
    return true;
}

bool may_be_taken_for(std::string_view a, std::string_view b) {
    const auto tells = [](std::string_view name) {
        return name.size() > 2 || (name.size() == 2 && std::none_of(name.begin(), name.end(), is_digit));
    };
    return tells(a) && tells(b) && (may_be_same_person(a, b) || may_be_misspelt(a, b));
}

} // namespace beadbook
