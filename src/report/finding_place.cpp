#include "report/finding_place.hpp"

#include <algorithm>

namespace beadbook {
namespace {

const Window *window_of(const Case &c, std::size_t class_index, const Finding &f) {
    return f.rule < 0 ? nullptr : c.set.rules[static_cast<std::size_t>(f.rule)].window(class_index);
}

/// The same places, beginning within the first turn.
Span in_first_turn(Span place, std::int64_t around) {
    if (around <= 0) return place;
    const std::int64_t turns = place.from.nm / around * around;
    return {{place.from.nm - turns}, {place.to.nm - turns}};
}

} // namespace

Span extent_of(const Case &c, const std::vector<int> &numbers, const Span &window) {
    const std::int64_t around = c.coupon.around().value_or(0);
    const auto begin_of = [&](const Span &place) {
        if (around == 0) return place.from.nm;
        const std::int64_t way = ((place.from.nm - window.from.nm) % around + around) % around;
        const std::int64_t begin = window.from.nm + way;
        return begin > window.to.nm ? begin - around : begin; // the window cuts it
    };
    std::optional<Span> out;
    for (const int n : numbers) {
        const Indication *i = c.find(n);
        if (!i || !i->place) continue;
        const std::int64_t begin = begin_of(*i->place), end = begin + i->place->to.nm - i->place->from.nm;
        if (!out) out = Span{{begin}, {end}};
        out->from.nm = std::min(out->from.nm, begin);
        out->to.nm = std::max(out->to.nm, end);
    }
    return out.value_or(Span{window.from, window.from});
}

std::optional<Span> laid_place(const Case &c, std::size_t class_index, const Finding &f) {
    const Window *window = window_of(c, class_index, f);
    if (!f.place || !window || window->kind == Window::Kind::whole_weld) return f.place;
    Span place = *f.place;
    // Nothing that it holds lies before its first find, and what it only met at its end it then reaches.
    std::int64_t along = extent_of(c, f.indications, place).from.nm - place.from.nm;
    const auto &line = c.coupon.line;
    if (line.length && !line.closed) {
        along = std::min(along, line.length->nm - place.to.nm);
        place.to = std::min(place.to, *line.length);
    }
    if (along > 0) place = {{place.from.nm + along}, {place.to.nm + along}};
    return in_first_turn(place, c.coupon.around().value_or(0));
}

} // namespace beadbook
