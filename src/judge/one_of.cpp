#include "judge/one_of.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// On a closed weld the shortest stretch that holds them all, whichever way round. It begins where one
/// begins: from there on lie those that begin later on the first turn, and a turn further the others.
Span stretch_round(const std::vector<const Indication *> &parts, std::int64_t around) {
    struct Laid {
        std::int64_t from, to; ///< on the first turn
    };
    std::vector<Laid> line;
    const auto laid = [&](const Indication *part) {
        const std::int64_t from = (part->place->from.nm % around + around) % around;
        return Laid{from, from + part->place->to.nm - part->place->from.nm};
    };
    for (const Indication *part : parts) line.push_back(laid(part));
    std::sort(line.begin(), line.end(), [](const Laid &a, const Laid &b) { return a.from < b.from; });
    // How far those before each of them reach, and those from it on.
    std::vector<std::int64_t> before(line.size()), onward(line.size());
    before.front() = line.front().to;
    for (std::size_t i = 1; i < line.size(); ++i) before[i] = std::max(before[i - 1], line[i - 1].to);
    std::int64_t reach = line.back().to;
    for (std::size_t i = line.size(); i-- > 0;) onward[i] = reach = std::max(reach, line[i].to);
    std::optional<Span> least;
    for (const Indication *start : parts) {
        const std::int64_t from = laid(start).from;
        const auto at = std::lower_bound(line.begin(), line.end(), from,
                                         [](const Laid &a, std::int64_t x) { return a.from < x; });
        const auto i = static_cast<std::size_t>(at - line.begin());
        const std::int64_t to = i == 0 ? onward[i] : std::max(onward[i], before[i] + around);
        const std::int64_t extent = std::clamp<std::int64_t>(to - from, 0, around);
        if (!least || extent < least->to.nm - least->from.nm)
            least = Span{start->place->from, {start->place->from.nm + extent}};
    }
    return *least;
}

} // namespace

Extent extent_of(const std::vector<const Indication *> &parts, std::optional<std::int64_t> around) {
    Span stretch = *parts.front()->place;
    if (around) {
        stretch = stretch_round(parts, *around);
    } else {
        for (const Indication *part : parts) {
            stretch.from = std::min(stretch.from, part->place->from);
            stretch.to = std::max(stretch.to, part->place->to);
        }
        stretch.to = std::max(stretch.from, stretch.to);
    }
    return {stretch, stretch.to.nm - stretch.from.nm};
}

TypeId another_type(const std::vector<const Indication *> &parts) {
    const auto other = std::find_if(parts.begin(), parts.end(),
                                    [&](const Indication *p) { return p->type != parts.front()->type; });
    return other == parts.end() ? parts.front()->type : (*other)->type;
}

Indication as_one(const OneOf &several, const Vocabulary &vocabulary, Named named) {
    const auto &parts = several.parts;
    Indication out = *parts.front();
    if (named == Named::another) out.type = another_type(parts);
    out.measures = {};
    out.place = several.extent.place;
    const auto known_of_all = [&](Quantity q) {
        return std::all_of(parts.begin(), parts.end(),
                           [&](const Indication *p) { return p->measures.has(q); });
    };
    const auto largest = [&](Quantity q) {
        Exact most = parts.front()->measures[q];
        for (const Indication *p : parts) most = std::max(most, Exact(p->measures[q]));
        return most;
    };
    for (const Quantity q : {Quantity::width, Quantity::depth, Quantity::height, Quantity::angle})
        if (known_of_all(q)) out.measures.set(q, largest(q));
    const Exact extent = several.extent.length;
    if (known_of_all(Quantity::length)) out.measures.set(Quantity::length, extent);
    if (known_of_all(Quantity::size))
        out.measures.set(Quantity::size, std::max(largest(Quantity::size), extent));
    const bool measured = std::any_of(parts.begin(), parts.end(), [](const Indication *p) {
        return p->measures.has(Quantity::area) && p->area_from == AreaFrom::measured;
    });
    out.area_from = AreaFrom::measured;
    if (measured && known_of_all(Quantity::area)) {
        Exact sum = 0;
        for (const Indication *p : parts) sum = sum + Exact(p->measures[Quantity::area]);
        out.measures.set(Quantity::area, sum);
    }
    for (std::size_t w = 0; w < attribute_count; ++w)
        for (const Indication *p : parts)
            if (out.words[w] == 0) out.words[w] = p->words[w];
    for (const Indication *p : parts) {
        if (!p->across) out.across.reset();
        if (out.across)
            out.across =
                Span{std::min(out.across->from, p->across->from), std::max(out.across->to, p->across->to)};
    }
    out.complete(vocabulary);
    out.width_open =
        !out.measures.has(Quantity::width) &&
        std::any_of(parts.begin(), parts.end(), [](const Indication *p) { return p->width_open; });
    return out;
}

Exact at_most_as_wide(const std::vector<const Indication *> &parts) {
    Exact least = longest_length.nm;
    for (const Indication *p : parts)
        for (const Quantity q : {Quantity::length, Quantity::width})
            if (p->measures.has(q)) least = std::min(least, Exact(p->measures[q]));
    return least;
}

} // namespace beadbook
