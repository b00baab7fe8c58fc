#pragma once

#include <string>
#include <vector>

namespace beadbook {

/// A place in a text: 1-based line and column (in characters). 0 means the file as a whole.
struct Where {
    int line = 0;
    int column = 0;
};

enum class Severity { error, warning };

/// One mistake of the author of a criteria file, in the author's words.
struct Issue {
    Severity severity = Severity::error;
    Where where;
    std::string path; ///< e.g. rules.pore-size.at most.B
    std::string text; ///< what was found, what was expected, the nearest known word
};

/// All mistakes of one file: reading goes on after each, so that one run shows them all.
class Issues {
public:
    void error(Where where, std::string path, std::string text);
    void warning(Where where, std::string path, std::string text);

    const std::vector<Issue> &all() const { return all_; }
    bool any_error() const;
    void sort_by_place();

private:
    std::vector<Issue> all_;
};

/// file:line:column: error: path: text, then the line itself with a caret under the place.
std::string print(const Issue &issue, const std::string &file, const std::string &source);

} // namespace beadbook
