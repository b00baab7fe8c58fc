#include "language/indentation.hpp"

#include "measure/text.hpp"

#include <algorithm>
#include <sstream>
#include <vector>

namespace beadbook {
namespace {

/// A key, or the dash of an entry, that begins a line or stands behind such a dash.
struct Begun {
    int line = 0, column = 0;
    bool dash = false;
    bool opens = false; ///< nothing stands behind it, so what it holds begins below
    std::string name;   ///< the key; for a dash what stands behind it
};

std::string in_words(const Begun &one) { return "'" + shown((one.dash ? "- " : "") + one.name) + "'"; }

/// More of what stands behind a dash is not looked at for its key.
constexpr std::size_t longest_name = 80;

/// What a line begins; nothing of a comment, or of a text that goes on.
std::vector<Begun> begun_in(const std::string &line, int number) {
    std::vector<Begun> out;
    std::size_t at = line.find_first_not_of(' ');
    while (at != std::string::npos && line.compare(at, 2, "- ") == 0) {
        const std::size_t behind = line.find_first_not_of(' ', at + 1);
        const std::string name = behind == std::string::npos ? "" : line.substr(behind, longest_name);
        out.push_back(
            {number, static_cast<int>(at) + 1, true, name.empty(), name.substr(0, name.find(": "))});
        at = behind;
    }
    if (at == std::string::npos || line[at] == '#' || line[at] == '{' || line[at] == '[') return out;
    std::size_t colon = line.find(": ", at);
    if (colon == std::string::npos && line.ends_with(':')) colon = line.size() - 1;
    if (colon != std::string::npos)
        out.push_back({number, static_cast<int>(at) + 1, false,
                       line.find_first_not_of(' ', colon + 1) == std::string::npos,
                       line.substr(at, colon - at)});
    return out;
}

/// Brackets that a line opens and does not close, quoted ones aside.
int opened_in(const std::string &line) {
    int out = 0;
    char quote = 0;
    for (std::size_t i = 0; i < line.size(); ++i) {
        const char c = line[i];
        const bool after_blank = i == 0 || line[i - 1] == ' ';
        if (quote != 0)
            quote = c == quote ? '\0' : quote;
        else if ((c == '"' || c == '\'') && (after_blank || line[i - 1] == '{' || line[i - 1] == '['))
            quote = c;
        else if (c == '#' && after_blank)
            break;
        else if (c == '{' || c == '[')
            ++out;
        else if (c == '}' || c == ']')
            --out;
    }
    return out;
}

/// The open one of the same kind whose column is nearest; the deeper and later of two.
const Begun *nearest(const std::vector<Begun> &open, const Begun &to) {
    const Begun *best = nullptr;
    for (const auto &one : open)
        if (one.dash == to.dash &&
            (!best || std::abs(one.column - to.column) <= std::abs(best->column - to.column)))
            best = &one;
    return best;
}

/// Whether something may stand inside of another by its column; the entries of a list also stand in line with
/// their key.
bool may_hold(const Begun &outer, const Begun &inner) {
    return outer.column < inner.column || (outer.column == inner.column && inner.dash && !outer.dash);
}

} // namespace

std::optional<WrongIndentation> wrong_indentation(const std::string &text, int line) {
    std::istringstream lines(text);
    std::string one;
    std::vector<Begun> all, open; // open: from the outermost in, the newest of each column
    int braces = 0, last = 0;
    for (int number = 1; number < line && std::getline(lines, one); ++number) {
        if (trimmed(one).empty() || trimmed(one).front() == '#') continue;
        last = number;
        for (const auto &begun : braces == 0 ? begun_in(one, number) : std::vector<Begun>{}) {
            while (!open.empty() && !may_hold(open.back(), begun)) open.pop_back();
            open.push_back(begun);
            all.push_back(begun);
        }
        braces += opened_in(one);
    }
    std::getline(lines, one);
    const auto here = begun_in(one, line);
    if (braces != 0 || here.empty() || all.empty() || all.back().line != last) return std::nullopt;
    const Begun &found = here.front(), &above = all.back();
    const bool in_line = std::any_of(open.begin(), open.end(), [&](const Begun &of) {
        return of.dash == found.dash && of.column == found.column;
    });
    const Begun *best = nearest(open, found);
    if (in_line || !best || (above.opens && may_hold(above, found))) return std::nullopt;
    std::string out = in_words(found) + " begins in column " + std::to_string(found.column);
    const Begun *before = all.size() < 2 ? nullptr : &all[all.size() - 2];
    if (before && before->dash == found.dash && before->column == found.column)
        out += ", in line with " + in_words(*before) + " of line " + std::to_string(before->line) + ", but " +
               in_words(above) + " of line " + std::to_string(above.line) +
               " between the two begins in column " + std::to_string(above.column) +
               "; bring the one that is wrong in line";
    else
        out += std::string(", in line with no ") + (found.dash ? "entry" : "key") +
               " above that is open; it seems to belong in line with " + in_words(*best) + " of line " +
               std::to_string(best->line) + ", which begins in column " + std::to_string(best->column) +
               (found.column > above.column ? ", or it is text that goes on: put that in quotes" : "");
    return WrongIndentation{{line, found.column}, out};
}

} // namespace beadbook
