#include "criteria/model.hpp"

#include "measure/print.hpp"

#include <algorithm>
#include <array>
#include <set>

namespace beadbook {

std::string_view name_of(Standing::Kind kind) {
    switch (kind) {
    case Standing::Kind::read: return "read";
    case Standing::Kind::second_hand: return "second hand";
    case Standing::Kind::memory: return "memory";
    case Standing::Kind::house: return "house";
    case Standing::Kind::blank: return "blank";
    case Standing::Kind::filled: return "filled";
    case Standing::Kind::common_practice: break;
    }
    return "common practice";
}

std::string print(const Standing &standing) {
    const std::string out = standing.kind == Standing::Kind::filled ? "filled by " + standing.source
                                                                    : std::string(name_of(standing.kind));
    return out + (standing.confirmed.empty() ? "" : ", " + standing.confirmed);
}

std::string print_in_full(const Standing &standing) {
    if (standing.kind == Standing::Kind::filled) return print(standing);
    const std::string kind(name_of(standing.kind));
    // A source that says its kind itself says it once: "common practice, no source".
    return (standing.source.starts_with(kind) ? "" : kind + ": ") + standing.source +
           (standing.confirmed.empty() ? "" : ", " + standing.confirmed);
}

std::string authority(const std::string &clause, const Standing &standing) {
    return clause + ", " + print(standing);
}

std::string_view name_of(Blank::Kind kind) {
    constexpr std::array<std::string_view, 5> names{"length", "area", "angle", "count", "number"};
    return names[static_cast<std::size_t>(kind)];
}

Dimension Blank::dimension() const {
    switch (kind) {
    case Kind::length: return Dimension::length;
    case Kind::area: return Dimension::area;
    case Kind::angle: return Dimension::angle;
    default: return Dimension::number;
    }
}

std::string Blank::fault_of(const Exact &value, Unit unit) const {
    const std::string it = "blank " + id + ": " + print_exact(value, dimension(), unit) + " ";
    if (kind == Kind::count && !value.is_whole()) return it + "is no whole number, and it counts";
    if (value < Exact(0) || (value == Exact(0) && kind != Kind::count)) return it + "allows nothing";
    const bool fits = std::all_of(plausible.begin(), plausible.end(), [&](const Table::Edge &edge) {
        return holds(value, edge.compare, edge.value);
    });
    return fits ? "" : it + "cannot be meant; plausible is " + plausible_text;
}

Dimension Rule::dimension() const {
    switch (kind) {
    case Kind::each: return measure.dimension();
    case Kind::gap: return Dimension::length;
    case Kind::sum: return info(summed).dimension;
    default: return Dimension::number;
    }
}

bool asks_for_side(const Condition &c) {
    return c.kind == Condition::Kind::word &&
           c.slot == fact_count + static_cast<std::size_t>(Attribute::side);
}

const std::vector<std::uint16_t> &CriteriaSet::rules_for(TypeId type, Exam exam) const {
    return by_type_and_exam[type * exam_count + static_cast<std::size_t>(exam)];
}

std::optional<std::size_t> CriteriaSet::class_index(std::string_view id) const {
    for (std::size_t i = 0; i < classes.size(); ++i)
        if (classes[i].id == id) return i;
    return std::nullopt;
}

std::vector<std::string> CriteriaSet::class_names() const {
    std::vector<std::string> out;
    for (const auto &c : classes) out.push_back(c.id);
    return out;
}

const Blank *CriteriaSet::blank(std::string_view id) const {
    const auto found = std::find_if(blanks.begin(), blanks.end(), [&](const Blank &b) { return b.id == id; });
    return found == blanks.end() ? nullptr : &*found;
}

std::vector<Slot> CriteriaSet::blanks_of(const Rule &rule, std::size_t c) const {
    std::set<Slot> out;
    if (rule.limits[c].kind == Limit::Kind::value)
        for (const Slot one : rule.limits[c].formula.blanks()) out.insert(one);
    if (const Window *window = rule.window(c); window && window->kind == Window::Kind::length)
        for (const Slot one : window->length.blanks()) out.insert(one);
    return {out.begin(), out.end()};
}

} // namespace beadbook
