#include "report/paint.hpp"

namespace beadbook {

std::string Paint::verdict(Verdict v) const {
    const std::string word(name_of(v));
    if (!colour_) return word;
    const char *code = v == Verdict::accept ? "32" : v == Verdict::reject ? "31" : "33";
    return std::string("\033[") + code + "m" + word + "\033[0m";
}

} // namespace beadbook
