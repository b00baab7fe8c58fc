#include "measure/text.hpp"

#include <algorithm>
#include <numeric>

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

} // namespace

std::string_view trimmed(std::string_view s) {
    while (!s.empty() && blank(s.front())) s.remove_prefix(1);
    while (!s.empty() && blank(s.back())) s.remove_suffix(1);
    return s;
}

std::string padded(std::string_view text, std::size_t width) {
    return std::string(text) + std::string(text.size() < width ? width - text.size() : 1, ' ');
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
        const auto c = static_cast<unsigned char>(s[i]);
        if (size == 0 || c < 0x20 || c == 0x7F)
            out += '?';
        else
            out += s.substr(i, size);
        i += std::max<std::size_t>(size, 1);
    }
    return out;
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

std::string nearest_word(std::string_view word, const std::vector<std::string> &candidates) {
    // A long pasted text is no misspelling, and comparing it would take for ever.
    if (word.size() > 60) return {};
    std::string best;
    std::size_t least = std::max<std::size_t>(2, word.size() / 3) + 1;
    for (const auto &candidate : candidates) {
        const std::size_t distance = edit_distance(word, candidate);
        if (distance < least && distance < candidate.size()) {
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
