#include "facts/one_unit.hpp"

#include "measure/refusal.hpp"
#include "measure/text.hpp"

namespace beadbook {
namespace {

std::string_view unit_behind(std::string_view text) {
    std::size_t end = text.size();
    while (end > 0 && !is_digit(text[end - 1])) --end;
    return trimmed(text.substr(end));
}

} // namespace

void OneUnit::take(std::string_view typed, const Typed &read) {
    typed = trimmed(typed);
    if (typed.empty() || typed.find(':') != typed.npos || typed.find('\'') != typed.npos) return;
    auto &first = is_digit(typed.back()) || typed.back() == '.' ? bare_ : written_;
    if (!first) first = Taken{typed, std::string(unit_behind(read.text))};
    if (bare_ && written_ && bare_->unit != written_->unit)
        throw InputError("'" + shown(written_->typed) + "' has a unit and '" + shown(bare_->typed) +
                             "' has none: is that " + bare_->unit + ", or " + written_->unit +
                             " too? write the unit behind both",
                         0);
}

} // namespace beadbook
