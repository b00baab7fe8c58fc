#include "operations/marks.hpp"

#include "facts/name_likeness.hpp"
#include "measure/refusal.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <cctype>
#include <optional>
#include <set>

namespace beadbook {
namespace {

/// A mark that ends with a number of at most 9 digits.
struct Numbered {
    std::string stem;
    int number = 0;
    std::size_t digits = 0; ///< at least so many are written

    std::string with(int n) const {
        std::string out = std::to_string(n);
        if (out.size() < digits) out.insert(0, digits - out.size(), '0');
        return stem + out;
    }
};

std::optional<Numbered> numbered(const std::string &mark) {
    std::size_t at = mark.size();
    while (at > 0 && is_digit(mark[at - 1])) --at;
    const std::size_t digits = mark.size() - at;
    if (digits == 0 || digits > 9) return std::nullopt;
    return Numbered{mark.substr(0, at), std::stoi(mark.substr(at)), mark[at] == '0' ? digits : 0};
}

void take_series(const std::string &part, std::vector<std::string> &out) {
    const std::size_t dots = part.find("..");
    if (dots == std::string::npos) {
        out.push_back(part);
        return;
    }
    const auto first = numbered(part.substr(0, dots)), last = numbered(part.substr(dots + 2));
    const auto bad = [&](const std::string &why) {
        return refused("'" + shown(part) + "' is no series of marks: " + why +
                       "; expected such as T-1..T-15");
    };
    if (!first || !last) throw bad("both ends must end with a number");
    if (!last->stem.empty() && last->stem != first->stem) throw bad("its ends differ before the number");
    if (last->number < first->number) throw bad("it runs backwards");
    if (last->number - first->number >= most_marks)
        throw bad("it has more than " + std::to_string(most_marks) + " marks");
    for (int n = first->number; n <= last->number; ++n) out.push_back(first->with(n));
}

} // namespace

std::vector<std::string> marks_in(const std::string &word) {
    std::vector<std::string> out;
    for (std::size_t at = 0; at != std::string::npos;) {
        const std::size_t comma = word.find(',', at);
        take_series(std::string(trimmed(word.substr(at, comma - at))), out);
        at = comma == std::string::npos ? comma : comma + 1;
    }
    std::set<std::string> seen;
    for (const auto &mark : out)
        if (!seen.insert(mark).second) throw refused("mark " + shown(mark) + " is named twice");
    if (out.size() > most_marks)
        throw refused("these are more than " + std::to_string(most_marks) + " marks");
    return out;
}

std::string one_mark(const std::string &word) {
    if (word.find("..") == std::string::npos) return word;
    const auto marks = marks_in(word);
    return marks.size() == 1 ? marks.front() : word;
}

std::string plain_mark(const std::string &mark) {
    std::string out;
    const auto digit = [](char c) { return c >= '0' && c <= '9'; };
    for (std::size_t i = 0; i < mark.size(); ++i) {
        const char c = mark[i];
        const bool leads = c == '0' && (i == 0 || !digit(mark[i - 1]) || out.empty() || !digit(out.back()));
        if (leads && i + 1 < mark.size() && digit(mark[i + 1])) continue;
        out += c;
    }
    return lowered(out);
}

std::string seen_mark(const std::string &mark) {
    const std::string read = folded_name(mark);
    const auto digit = [&](std::size_t i) { return i < read.size() && is_digit(read[i]); };
    std::string out;
    for (std::size_t i = 0; i < read.size(); ++i) {
        const auto c = static_cast<unsigned char>(read[i]);
        const bool in_number = digit(i + 1) || (i > 0 && digit(i - 1));
        if (c == '|')
            out += 'l';
        else if (c < 0x80 && std::isalnum(c) == 0)
            // Between two numbers it parts them: 1-11 is not 11-1.
            out += digit(i + 1) && i > 0 && digit(i - 1) ? "-" : "";
        else if (in_number && c == 'o')
            out += '0';
        else if (c == 'b' && digit(i + 1) && i > 0 && digit(i - 1))
            out += '8';
        else
            out += read[i];
    }
    out = plain_mark(out);
    // Last, as a number begins after a letter: L-01 is L1, and not 101.
    for (char &c : out)
        if (c == 'i' || c == 'l') c = '1';
    return out;
}

bool seen_alike(const std::string &a, const std::string &b) {
    const std::string seen = seen_mark(a);
    return !seen.empty() && seen == seen_mark(b);
}

std::string odd_mark(const std::string &mark) {
    if (!mark.empty() && std::isalnum(static_cast<unsigned char>(mark.back())) == 0)
        return "it ends with '" + mark.substr(mark.size() - 1) + "'";
    for (std::size_t at = mark.find('-'); at != std::string::npos; at = mark.find('-', at + 1)) {
        const auto first = numbered(mark.substr(0, at)), last = numbered(mark.substr(at + 1));
        if (first && last && !first->stem.empty() && first->stem == last->stem)
            return "is it a series, " + mark.substr(0, at) + ".." + mark.substr(at + 1) + "?";
    }
    return "";
}

std::string next_mark(const std::string &mark) {
    const auto of = numbered(mark);
    return of ? of->with(of->number + 1) : "";
}

std::string marks_text(const std::vector<std::string> &marks) {
    for (std::size_t i = 1; i < marks.size(); ++i)
        if (next_mark(marks[i - 1]) != marks[i]) return listed(marks);
    return marks.size() > 2 ? marks.front() + " to " + marks.back() : listed(marks);
}

} // namespace beadbook
