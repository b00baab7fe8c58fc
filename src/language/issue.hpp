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
    std::string path;        ///< e.g. rules.pore-size.at most.B
    std::string text;        ///< what was found, what was expected, the nearest known word
    std::vector<Where> also; ///< where else, of those that are told once
    bool late = false;       ///< an error that older programs did not look for
    /// Paths of others that are told once and stand at the same place: what is taken over by 'extends'.
    std::vector<std::string> also_of = {};
};

/// All mistakes of one file: reading goes on after each, so that one run shows them all.
class Issues {
public:
    void error(Where where, std::string path, std::string text);
    /// Of a mistake that older programs took: what was kept by them goes on to be read, so that verdicts are
    /// replayed; what is read anew is refused.
    void late_error(Where where, std::string path, std::string text);
    void warning(Where where, std::string path, std::string text);
    /// What stands from here to the end of that line cannot be read right: further mistakes in it only follow
    /// from the one that was told, and are left out.
    void spoil(Where from, int last_line);

    const std::vector<Issue> &all() const { return all_; }
    bool any_error() const;
    bool any_early_error() const;
    void sort_by_place();

private:
    struct Spoilt {
        Where from;
        int last_line;
    };

    void add(Issue issue);

    std::vector<Issue> all_;
    std::vector<Spoilt> spoilt_;
};

/// One each of those that say the same words of several places, which it names.
std::vector<Issue> told_once(const std::vector<Issue> &issues);

/// file:line:column: error: path: text, then the line itself with a caret under the place.
std::string print(const Issue &issue, const std::string &file, const std::string &source);

} // namespace beadbook
