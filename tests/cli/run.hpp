#pragma once

#include "temporary.hpp"

#include <string>
#include <vector>

namespace beadbook::test {

/// What one run of the program gave.
struct Run {
    int code = 0;
    std::string out, err;
};

/// Runs the program's words in this process, with a record in a folder of its own, a fixed clock and name.
class Program {
public:
    Run operator()(const std::vector<std::string> &words, const std::string &input = "",
                   bool terminal = false) const;
    /// Fails the test unless the run ends with 0.
    std::string ok(const std::vector<std::string> &words, const std::string &input = "") const;
    std::string book() const { return folder_.file("book.db"); }
    std::string settings() const { return folder_.file("settings.yaml"); }
    std::string file(const std::string &name) const { return folder_.file(name); }

private:
    TemporaryFolder folder_;
};

/// The words of a page, wherever its lines were wrapped.
std::string flat(const std::string &text);

} // namespace beadbook::test
