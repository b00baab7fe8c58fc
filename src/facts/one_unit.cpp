#include "facts/one_unit.hpp"

#include "measure/refusal.hpp"
#include "measure/text.hpp"

#include <cctype>

namespace beadbook {
namespace {

bool is_digit(char c) { return std::isdigit(static_cast<unsigned char>(c)) != 0; }

std::string_view unit_behind(std::string_view text) {
    std::size_t end = text.size();
    while (end > 0 && !is_digit(text[end - 1])) --end;
    return trimmed(text.substr(end));
}

} // namespace

void check_one_unit(std::string_view typed, const Typed &first, const Typed &second, std::size_t column) {
    typed = trimmed(typed);
    const bool clock = (first.text + second.text).find(':') != std::string::npos;
    if (clock || typed.empty() || !is_digit(typed.back())) return;
    const auto own = unit_behind(first.text), other = unit_behind(second.text);
    if (own == other) return;
    throw InputError("'" + shown(second.text) + "' has a unit and '" + shown(typed) +
                         "' before it has none: is that " + std::string(own) + ", or " + std::string(other) +
                         " too? write the unit behind both",
                     column);
}

} // namespace beadbook
