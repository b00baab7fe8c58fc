#pragma once

#include "terminal/session.hpp"

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace beadbook {

/// Lines that a person types: at a terminal with editing, history and completion by Tab, else as they come.
class LineEditor {
public:
    /// What the word before the cursor may become, with `before` that stands before it on the line.
    using Complete = std::function<std::vector<std::string>(std::string_view before, std::string_view begun)>;

    LineEditor(Session &session, Complete complete);
    ~LineEditor();

    /// The next line, without its end; nothing after the last one (Ctrl-D).
    std::optional<std::string> next(const std::string &prompt);

private:
    struct Terminal;
    Session &session_;
    std::unique_ptr<Terminal> terminal_; ///< null if nobody types
};

/// The longest beginning that all of these share.
std::string shared_beginning(const std::vector<std::string> &words);

} // namespace beadbook
