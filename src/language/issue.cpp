#include "language/issue.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <sstream>
#include <string_view>
#include <tuple>

namespace beadbook {

void Issues::error(Where where, std::string path, std::string text) {
    add({Severity::error, where, std::move(path), std::move(text), {}});
}

void Issues::late_error(Where where, std::string path, std::string text) {
    add({Severity::error, where, std::move(path), std::move(text), {}, true});
}

void Issues::warning(Where where, std::string path, std::string text) {
    add({Severity::warning, where, std::move(path), std::move(text), {}});
}

void Issues::spoil(Where from, int last_line) { spoilt_.push_back({from, last_line}); }

void Issues::add(Issue issue) {
    const auto at = [](const Where &where) { return std::tie(where.line, where.column); };
    const bool follows = std::any_of(spoilt_.begin(), spoilt_.end(), [&](const Spoilt &one) {
        return at(issue.where) >= at(one.from) && issue.where.line <= one.last_line;
    });
    if (!follows) all_.push_back(std::move(issue));
}

bool Issues::any_error() const {
    return std::any_of(all_.begin(), all_.end(),
                       [](const Issue &i) { return i.severity == Severity::error; });
}

bool Issues::any_early_error() const {
    return std::any_of(all_.begin(), all_.end(),
                       [](const Issue &i) { return i.severity == Severity::error && !i.late; });
}

void Issues::sort_by_place() {
    std::stable_sort(all_.begin(), all_.end(), [](const Issue &a, const Issue &b) {
        return std::tie(a.where.line, a.where.column) < std::tie(b.where.line, b.where.column);
    });
}

namespace {

bool same_place(Where a, Where b) { return a.line == b.line && a.column == b.column; }

void list_some(std::ostream &out, const char *what, const std::vector<std::string> &all, const char *more) {
    constexpr std::size_t most = 8;
    for (std::size_t i = 0; i < std::min(all.size(), most); ++i)
        out << (i == 0 ? "  " + std::string(what) + " " : ", ") << all[i];
    if (all.size() > most) out << " and " << all.size() - most << " more " << more;
    if (!all.empty()) out << '\n';
}

/// Counted from 1, without its end; nothing where the text has no such line.
std::optional<std::string_view> line_of(std::string_view text, int number) {
    if (number < 1) return std::nullopt;
    for (; number > 1; --number) {
        const std::size_t end = text.find('\n');
        if (end == std::string_view::npos) return std::nullopt;
        text.remove_prefix(end + 1);
    }
    if (text.empty()) return std::nullopt;
    return text.substr(0, text.find('\n'));
}

} // namespace

std::vector<Issue> told_once(const std::vector<Issue> &issues) {
    std::vector<Issue> out;
    std::map<std::pair<Severity, std::string_view>, std::size_t> told;
    for (const auto &issue : issues) {
        const auto [at, first] =
            told.emplace(std::pair(issue.severity, std::string_view(issue.text)), out.size());
        if (first)
            out.push_back(issue);
        else if (Issue &once = out[at->second];
                 same_place(once.where, issue.where) && once.path != issue.path)
            once.also_of.push_back(issue.path);
        else
            once.also.push_back(issue.where);
    }
    return out;
}

std::string print(const Issue &issue, const std::string &file, const std::string &source) {
    std::ostringstream out;
    out << file;
    if (issue.where.line > 0) out << ':' << issue.where.line << ':' << issue.where.column;
    out << ": " << (issue.severity == Severity::error ? "error: " : "warning: ");
    if (!issue.path.empty()) out << issue.path << ": ";
    out << issue.text << '\n';
    const auto line = line_of(source, issue.where.line);
    constexpr std::size_t widest = 160;
    if (line && line->size() < widest)
        out << "  | " << *line << "\n  | "
            << std::string(static_cast<std::size_t>(issue.where.column - 1), ' ') << "^\n";
    std::vector<std::string> places;
    for (const Where &at : issue.also)
        places.push_back(std::to_string(at.line) + ":" + std::to_string(at.column));
    list_some(out, "also at", places, "places");
    list_some(out, "also of", issue.also_of, "parts");
    return out.str();
}

} // namespace beadbook
