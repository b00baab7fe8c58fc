#pragma once

#include "judge/judgement.hpp"

#include <string>

namespace beadbook {

/// Colour for a terminal, or none. Words always carry the meaning; colour only helps the eye.
class Paint {
public:
    explicit Paint(bool colour) : colour_(colour) {}
    std::string verdict(Verdict v) const;
    std::string strong(const std::string &text) const {
        return colour_ ? "\033[1m" + text + "\033[0m" : text;
    }

private:
    bool colour_;
};

/// The caution that every report and --help carries.
inline constexpr std::string_view caution =
    "An aid, not the code: the governing code, the contract and certified personnel decide. Limits marked\n"
    "'memory' must be checked against the owner's copy before use.\n";

} // namespace beadbook
