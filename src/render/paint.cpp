#include "render/paint.hpp"

namespace beadbook {
namespace {

const char *code_of(Tone tone) {
    switch (tone) {
    case Tone::strong: return "1";
    case Tone::quiet: return "2";
    case Tone::accept: return "32";
    case Tone::reject: return "31";
    case Tone::cannot_say: return "33";
    case Tone::plain: break;
    }
    return "";
}

} // namespace

std::string Paint::operator()(const std::string &text, Tone tone) const {
    if (!colour_ || tone == Tone::plain || text.empty()) return text;
    return std::string("\033[") + code_of(tone) + "m" + text + "\033[0m";
}

} // namespace beadbook
