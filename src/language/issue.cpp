#include "language/issue.hpp"

#include <algorithm>
#include <sstream>
#include <tuple>

namespace beadbook {

void Issues::error(Where where, std::string path, std::string text) {
    all_.push_back({Severity::error, where, std::move(path), std::move(text)});
}

void Issues::warning(Where where, std::string path, std::string text) {
    all_.push_back({Severity::warning, where, std::move(path), std::move(text)});
}

bool Issues::any_error() const {
    return std::any_of(all_.begin(), all_.end(),
                       [](const Issue &i) { return i.severity == Severity::error; });
}

void Issues::sort_by_place() {
    std::stable_sort(all_.begin(), all_.end(), [](const Issue &a, const Issue &b) {
        return std::tie(a.where.line, a.where.column) < std::tie(b.where.line, b.where.column);
    });
}

std::string print(const Issue &issue, const std::string &file, const std::string &source) {
    std::ostringstream out;
    out << file;
    if (issue.where.line > 0) out << ':' << issue.where.line << ':' << issue.where.column;
    out << ": " << (issue.severity == Severity::error ? "error: " : "warning: ");
    if (!issue.path.empty()) out << issue.path << ": ";
    out << issue.text << '\n';
    std::istringstream lines(source);
    std::string line;
    for (int n = 0; n < issue.where.line; ++n)
        if (!std::getline(lines, line)) return out.str();
    constexpr std::size_t widest = 160;
    if (issue.where.line > 0 && line.size() < widest)
        out << "  | " << line << "\n  | "
            << std::string(static_cast<std::size_t>(issue.where.column - 1), ' ') << "^\n";
    return out.str();
}

} // namespace beadbook
