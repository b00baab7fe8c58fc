#pragma once

#include "report/document.hpp"

namespace beadbook {

/// A value that holds where a call does not give it.
struct Setting {
    std::string command; ///< or "every"
    std::string option;
    std::string value;
    std::string from; ///< file and line, or the name of a variable of the environment
};
struct SettingsInForce {
    std::string file; ///< where they are looked for
    bool there = false;
    std::vector<Setting> settings;
};
Document document_of(const SettingsInForce &all);

/// Text that is printed as it is: a script, a page of a manual.
struct PlainText {
    std::string text;
};
Document document_of(const PlainText &plain);

} // namespace beadbook
