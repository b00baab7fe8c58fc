#include "facts/whole_turn.hpp"

#include "measure/print.hpp"
#include "measure/text.hpp"

namespace beadbook {
namespace {

/// `l 6.283 in at 12:00`: no longer than the weld, to a thousandth of an inch or a hundredth of a millimetre.
std::string length_round(const WeldLine &weld, std::optional<Unit> unit) {
    const Unit in = unit.value_or(Unit::inch);
    const std::int64_t step = in == Unit::inch ? nm_per_inch / 1000 : nm_per_mm / 100;
    const std::int64_t whole = weld.length->nm / step * step;
    return "l " + print(Exact(whole), Dimension::length, in) + " at 12:00";
}

} // namespace

std::string_view whole_turn_said(std::string_view text) {
    constexpr std::string_view ways[] = {"all the way round",  "all the way around",  "all round",
                                         "all around",         "full turn",           "whole turn",
                                         "full circumference", "whole circumference", "entire circumference",
                                         "full circle",        "whole girth"};
    for (const std::string_view way : ways) {
        const bool ends = text.size() == way.size() ||
                          (text.size() > way.size() && (text[way.size()] == ' ' || text[way.size()] == ','));
        if (ends && same_word(text.substr(0, way.size()), way)) return text.substr(0, way.size());
    }
    return {};
}

std::string how_a_turn_is_written(std::string_view said, const WeldLine &weld, std::optional<Unit> unit) {
    return "'" + shown(said) + "': " +
           (weld.closed && weld.length ? "what goes all round is written '" + length_round(weld, unit) + "'"
                                       : "say where it begins and ends, 'from .. to ..', or how long it is");
}

std::string point_or_turn(const IndicationRecord &find, const WeldLine &weld, std::optional<Unit> unit) {
    if (!weld.closed || !weld.length || find.measures.contains(Quantity::length)) return "";
    if (find.at && find.end && find.at->value == find.end->value)
        return "from " + find.at->text + " to " + find.end->text +
               " is a point or the whole turn, and is taken as a point; what goes all round is written '" +
               length_round(weld, unit) + "', a point 'at " + find.at->text + "'";
    const std::string_view remark = find.remark;
    for (std::size_t at = 0; at < remark.size() && !find.end; ++at)
        if ((at == 0 || remark[at - 1] == ' ') && !whole_turn_said(remark.substr(at)).empty())
            return "no verdict goes by the remark '" + shown(whole_turn_said(remark.substr(at))) +
                   "'; what goes all round is written '" + length_round(weld, unit) + "'";
    return "";
}

} // namespace beadbook
