#include "measure/text.hpp"

#include <algorithm>
#include <cctype>
#include <cstdint>
#include <cstdio>
#include <numeric>
#include <optional>

namespace beadbook {
namespace {

bool blank(char c) { return c == ' ' || c == '\t' || c == '\r' || c == '\n'; }

/// Length of the UTF-8 sequence that starts at `i`, or 0 if it is broken (overlong, cut off, surrogate).
std::size_t sequence_at(std::string_view s, std::size_t i) {
    const auto byte = [&](std::size_t k) { return static_cast<unsigned char>(s[k]); };
    const unsigned char lead = byte(i);
    if (lead < 0x80) return 1;
    const std::size_t size = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : 2;
    if (lead < 0xC2 || lead > 0xF4 || i + size > s.size()) return 0;
    for (std::size_t k = i + 1; k < i + size; ++k)
        if ((byte(k) & 0xC0) != 0x80) return 0;
    const unsigned char second = byte(i + 1);
    const bool overlong = (lead == 0xE0 && second < 0xA0) || (lead == 0xF0 && second < 0x90);
    const bool beyond = (lead == 0xED && second > 0x9F) || (lead == 0xF4 && second > 0x8F);
    return overlong || beyond ? 0 : size;
}

/// The character of a whole UTF-8 sequence.
std::uint32_t code_point(std::string_view sequence) {
    const auto lead = static_cast<unsigned char>(sequence.front());
    if (sequence.size() == 1) return lead;
    std::uint32_t out = lead & (0x7Fu >> sequence.size());
    for (const char c : sequence.substr(1)) out = out << 6 | (static_cast<unsigned char>(c) & 0x3Fu);
    return out;
}

/// By the Unicode Standard, chapter 23 (special areas and format characters), from memory: C0, C1 and delete;
/// soft hyphen; marks, embeddings, overrides and isolates of direction; line and paragraph separator; blanks
/// and joins without width that are no letters' joiner; the byte order mark; tags.
bool is_invisible(std::uint32_t c) {
    if (c < 0x20) return c != '\n' && c != '\t';
    return (c >= 0x7F && c <= 0x9F) || c == 0xAD || c == 0x61C || c == 0x180E || c == 0x200B || c == 0x200E ||
           c == 0x200F || (c >= 0x2028 && c <= 0x202E) || (c >= 0x2060 && c <= 0x206F) || c == 0xFEFF ||
           (c >= 0xFFF9 && c <= 0xFFFB) || (c >= 0xE0000 && c <= 0xE007F);
}

/// Whether the sequence at `i` (of `size` bytes, 0: broken) may be printed as it is.
bool plain_at(std::string_view s, std::size_t i, std::size_t size) {
    return size > 0 && !is_invisible(code_point(s.substr(i, size)));
}

/// Whether all of it is what a keyboard gives, which most is.
bool plain_ascii(std::string_view s) {
    return std::all_of(s.begin(), s.end(),
                       [](char c) { return (c >= ' ' && c < 0x7F) || c == '\n' || c == '\t'; });
}

/// With another text for each character that is not to be printed as it is; of a broken sequence for each
/// byte.
template <class Instead>
std::string rewritten(std::string_view s, Instead instead) {
    if (plain_ascii(s)) return std::string(s);
    std::string out;
    out.reserve(s.size());
    for (std::size_t i = 0; i < s.size();) {
        const std::size_t size = sequence_at(s, i);
        if (plain_at(s, i, size))
            out += s.substr(i, size);
        else
            out += instead(size > 0 ? std::optional(code_point(s.substr(i, size))) : std::nullopt, s[i]);
        i += std::max<std::size_t>(size, 1);
    }
    return out;
}

char small(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

std::size_t edit_distance(std::string_view a, std::string_view b) {
    std::vector<std::size_t> row(b.size() + 1);
    std::iota(row.begin(), row.end(), std::size_t{0});
    for (std::size_t i = 1; i <= a.size(); ++i) {
        std::size_t diagonal = row[0];
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t substitute = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
            diagonal = row[j];
            row[j] = std::min({row[j] + 1, row[j - 1] + 1, substitute});
        }
    }
    return row.back();
}

/// Without capitals, and what parts the words of a name.
std::string bare(std::string_view word) {
    std::string out = lowered(word);
    std::erase_if(out, [](char c) { return c == '-' || c == '_' || c == '.' || c == ' '; });
    return out;
}

/// The only candidate that begins so; empty if none or several do.
std::string only_one_begun(const std::string &word, const std::vector<std::string> &candidates) {
    constexpr std::size_t least = 4;
    std::string out;
    if (word.size() < least) return out;
    for (const auto &candidate : candidates)
        if (bare(candidate).starts_with(word)) {
            if (!out.empty() && out != candidate) return "";
            out = candidate;
        }
    return out;
}

} // namespace

std::string_view trimmed(std::string_view s) {
    while (!s.empty() && blank(s.front())) s.remove_prefix(1);
    while (!s.empty() && blank(s.back())) s.remove_suffix(1);
    return s;
}

std::string padded(std::string_view text, std::size_t width) {
    return std::string(text) + std::string(text.size() < width ? width - text.size() : 1, ' ');
}

std::string wrapped(std::string_view text, std::size_t width, std::size_t indent) {
    std::string out(indent, ' ');
    std::size_t column = indent;
    for (const auto word : words_of(text)) {
        const bool begins = column == indent;
        if (!begins && column + 1 + word.size() > width) {
            out += "\n" + std::string(indent, ' ');
            column = indent;
        } else if (!begins) {
            out += " ";
            ++column;
        }
        out += word;
        column += word.size();
    }
    return out;
}

std::vector<std::string_view> words_of(std::string_view s) {
    std::vector<std::string_view> out;
    for (std::size_t i = 0; i < s.size();) {
        if (blank(s[i])) {
            ++i;
            continue;
        }
        std::size_t end = i;
        while (end < s.size() && !blank(s[end])) ++end;
        out.push_back(s.substr(i, end - i));
        i = end;
    }
    return out;
}

std::string shown(std::string_view s) {
    constexpr std::size_t most = 60;
    std::string out;
    for (std::size_t i = 0; i < s.size();) {
        if (out.size() >= most) return out + "...";
        const std::size_t size = sequence_at(s, i);
        if (!plain_at(s, i, size) || s[i] == '\n' || s[i] == '\t')
            out += '?';
        else
            out += s.substr(i, size);
        i += std::max<std::size_t>(size, 1);
    }
    return out;
}

std::string visible(std::string_view s) {
    return rewritten(s, [](std::optional<std::uint32_t> point, char byte) {
        char number[16];
        std::snprintf(number, sizeof number, point ? "<U+%04X>" : "<%02X>",
                      point ? static_cast<unsigned>(*point) : static_cast<unsigned char>(byte));
        return std::string(number);
    });
}

std::string escaped_for_json(std::string_view s) {
    return rewritten(s, [](std::optional<std::uint32_t> point, char byte) {
        if (!point) return std::string(1, byte);
        char number[16];
        if (*point < 0x10000)
            std::snprintf(number, sizeof number, "\\u%04x", static_cast<unsigned>(*point));
        else
            std::snprintf(number, sizeof number, "\\u%04x\\u%04x",
                          static_cast<unsigned>(0xD800 + ((*point - 0x10000) >> 10)),
                          static_cast<unsigned>(0xDC00 + ((*point - 0x10000) & 0x3FF)));
        return std::string(number);
    });
}

bool valid_utf8(std::string_view s) {
    for (std::size_t i = 0; i < s.size();) {
        const std::size_t size = sequence_at(s, i);
        if (size == 0) return false;
        i += size;
    }
    return true;
}

std::vector<std::string_view> letters_in(std::string_view text) {
    const auto letter = [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); };
    std::vector<std::string_view> out;
    for (std::size_t begin = 0; begin < text.size();) {
        std::size_t end = begin;
        while (end < text.size() && letter(text[end])) ++end;
        if (end > begin) out.push_back(text.substr(begin, end - begin));
        begin = std::max(end, begin + 1);
    }
    return out;
}

std::string lowered(std::string_view text) {
    std::string out(text);
    std::transform(out.begin(), out.end(), out.begin(), small);
    return out;
}

std::string without_signs(std::string text) {
    std::erase_if(text, [](unsigned char c) { return c < 0x80 && std::isalnum(c) == 0; });
    return text;
}

bool means_none(std::string_view text) {
    constexpr std::string_view words[] = {"none",    "no",  "nothing", "nil", "zero", "null",
                                          "notused", "off", "na",      "tbd", "nope", "notapplicable"};
    const std::string plain = without_signs(lowered(text));
    return !trimmed(text).empty() &&
           (plain.empty() || std::find(std::begin(words), std::end(words), plain) != std::end(words));
}

std::string counted(std::size_t number, const std::string &one) { return counted(number, one, one + "s"); }

std::string counted(std::size_t number, const std::string &one, const std::string &many) {
    return std::to_string(number) + " " + (number == 1 ? one : many);
}

bool same_word(std::string_view a, std::string_view b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [](char x, char y) { return small(x) == small(y); });
}

std::string word_among(std::string_view word, const std::vector<std::string> &list) {
    const auto found =
        std::find_if(list.begin(), list.end(), [&](const std::string &one) { return same_word(one, word); });
    return found == list.end() ? "" : *found;
}

std::string joined(const std::vector<std::string> &items, std::string_view between) {
    std::string out;
    for (const auto &item : items) out.append(&item == &items.front() ? "" : between).append(item);
    return out;
}

std::string listed(const std::vector<std::string> &items, std::string_view last) {
    std::string out;
    for (std::size_t i = 0; i < items.size(); ++i) {
        if (i > 0) out += i + 1 == items.size() ? " " + std::string(last) + " " : std::string(", ");
        out += items[i];
    }
    return out;
}

namespace {

/// What a word denies: "with" of without, "magnetic" of non-magnetic; empty: nothing.
std::string denied_by(const std::string &word) {
    for (const std::string_view end : {"out", "less"})
        if (word.size() > end.size() + 1 && word.ends_with(end))
            return word.substr(0, word.size() - end.size());
    for (const std::string_view begin : {"not", "non", "no", "un", "in"})
        if (word.size() > begin.size() + 1 && word.starts_with(begin)) return word.substr(begin.size());
    return {};
}

/// Whether one of two words is nearer to what the other denies than to that one itself.
bool says_opposite(const std::string &word, const std::string &other) {
    const auto denies = [](const std::string &one, const std::string &than) {
        const std::string plain = denied_by(one);
        return !plain.empty() && edit_distance(plain, than) < edit_distance(one, than);
    };
    return denies(word, other) || denies(other, word);
}

std::vector<std::string> without_opposites(const std::string &word, const std::vector<std::string> &from) {
    std::vector<std::string> out;
    std::copy_if(from.begin(), from.end(), std::back_inserter(out),
                 [&](const std::string &one) { return !says_opposite(word, bare(one)); });
    return out;
}

} // namespace

std::string nearest_word(std::string_view word, const std::vector<std::string> &among) {
    // A long pasted text is no misspelling, and comparing it would take for ever.
    if (word.size() > 60) return {};
    // What differs by capitals alone is meant sooner than another word.
    if (std::string same = word_among(word, among); !same.empty()) return same;
    const std::string plain = bare(word);
    for (const auto &candidate : among)
        if (!plain.empty() && bare(candidate) == plain) return candidate;
    const auto candidates = without_opposites(plain, among);
    // What begins so as well: aws-d1.1 is soon typed for aws-d1.1-visual.
    if (std::string begun = only_one_begun(plain, candidates); !begun.empty()) return begun;
    std::string best;
    std::size_t least = std::max<std::size_t>(2, word.size() / 3) + 1;
    for (const auto &candidate : candidates) {
        const std::size_t distance = edit_distance(word, candidate);
        const bool begun = distance == least && word.starts_with(candidate) && !word.starts_with(best);
        if ((distance < least || begun) && distance < candidate.size()) {
            least = distance;
            best = candidate;
        }
    }
    return best;
}

std::string did_you_mean(std::string_view word, const std::vector<std::string> &candidates) {
    const std::string best = nearest_word(word, candidates);
    return best.empty() ? "" : "; did you mean '" + best + "'?";
}

} // namespace beadbook
