#pragma once

#include "report/document.hpp"

#include <string>

namespace beadbook {

/// Colour for a terminal, or none. Words always carry the meaning; colour only helps the eye.
class Paint {
public:
    explicit Paint(bool colour) : colour_(colour) {}
    std::string operator()(const std::string &text, Tone tone) const;

private:
    bool colour_;
};

} // namespace beadbook
