#include "judge/window.hpp"

#include "judge/few.hpp"

#include <algorithm>

namespace beadbook {
namespace {

template <class T>
using Line = boost::container::small_vector<T, 30>;

/// On a closed weld each stretch stands three times, a turn apart: a window that begins in the second turn
/// sees what hangs over the datum from the first and what it reaches in the third.
Line<Stretch> unrolled(std::span<const Stretch> stretches, std::optional<std::int64_t> around) {
    Line<Stretch> out(stretches.begin(), stretches.end());
    for (std::int64_t turn = 1; around && turn <= 2; ++turn)
        for (Stretch s : stretches) {
            s.from += turn * *around;
            s.to += turn * *around;
            out.push_back(s);
        }
    return out;
}

/// Sum over all stretches of the part that lies before x, in O(log n) after sorting.
class LengthBefore {
public:
    explicit LengthBefore(std::span<const Stretch> stretches) {
        for (const auto &s : stretches) {
            starts_.push_back(s.from);
            ends_.push_back(s.to);
        }
        prepare(starts_, start_sums_);
        prepare(ends_, end_sums_);
    }

    Int128 operator()(std::int64_t x) const {
        return ramp(starts_, start_sums_, x) - ramp(ends_, end_sums_, x);
    }
    const Line<std::int64_t> &starts() const { return starts_; }
    const Line<std::int64_t> &ends() const { return ends_; }

private:
    static void prepare(Line<std::int64_t> &edges, Line<Int128> &sums) {
        std::sort(edges.begin(), edges.end());
        sums.assign(1, 0);
        for (const std::int64_t e : edges) sums.push_back(sums.back() + e);
    }
    static Int128 ramp(const Line<std::int64_t> &edges, const Line<Int128> &sums, std::int64_t x) {
        const auto n = std::lower_bound(edges.begin(), edges.end(), x) - edges.begin();
        return static_cast<Int128>(n) * x - sums[static_cast<std::size_t>(n)];
    }

    Line<std::int64_t> starts_, ends_;
    Line<Int128> start_sums_, end_sums_;
};

void offer(WorstWindow &worst, Int128 held, std::int64_t from, std::int64_t to) {
    if (held > worst.held) worst = {held, from, to};
}

} // namespace

WorstWindow most_length(std::span<const Stretch> stretches, std::int64_t width,
                        std::optional<std::int64_t> around) {
    const auto all = unrolled(stretches, around);
    const LengthBefore before(view(all));
    WorstWindow worst;
    const auto try_at = [&](std::int64_t from) {
        offer(worst, before(from + width) - before(from), from, from + width);
    };
    for (const std::int64_t start : before.starts()) try_at(start);
    for (const std::int64_t end : before.ends()) try_at(end - width);
    return worst;
}

WorstWindow most_weight(std::span<const Stretch> stretches, std::int64_t width,
                        std::optional<std::int64_t> around) {
    Line<Stretch> all = unrolled(stretches, around);
    // A window touches a stretch if it overlaps it by more than a point; a stretch without extent (only its
    // place is known) is touched from both sides. So slide the window's end past each start and compare with
    // the ends that have dropped out behind its other end.
    std::sort(all.begin(), all.end(), [](const Stretch &a, const Stretch &b) { return a.from < b.from; });
    Line<const Stretch *> by_end;
    for (const auto &s : all) by_end.push_back(&s);
    std::sort(by_end.begin(), by_end.end(), [](const Stretch *a, const Stretch *b) { return a->to < b->to; });
    std::size_t ids = 0;
    for (const auto &s : all) ids = std::max(ids, s.id + 1);
    Line<int> inside(ids); // copies of each that the window touches
    WorstWindow worst;
    Int128 held = 0;
    std::size_t dropped = 0;
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (inside[all[i].id]++ == 0) held += all[i].weight;
        if (i + 1 < all.size() && all[i + 1].from == all[i].from) continue;
        // The window's end stands an instant past this start, so its beginning an instant past start - width.
        const std::int64_t behind = all[i].from - width;
        for (; dropped < by_end.size() && by_end[dropped]->to <= behind; ++dropped)
            if (--inside[by_end[dropped]->id] == 0) held -= by_end[dropped]->weight;
        offer(worst, held, behind, all[i].from);
    }
    return worst;
}

namespace {

bool touches(const Stretch &s, std::int64_t from, std::int64_t width) {
    return s.to > from && s.from <= from + width;
}

/// Every rectangle that could be worst among a handful: its low edge across lies at the low end of the
/// touched ones, and for a chosen reach across, the longest side along is taken.
WorstWindow worst_rectangle(std::span<const Stretch> few, Int128 area, std::int64_t longest) {
    WorstWindow worst;
    for (const auto &low : few) {
        for (const auto &high : few) {
            // Least height that touches both: from the near edge of one to the near edge of the other.
            const std::int64_t height = std::max<std::int64_t>(high.across_from - low.across_to, 0);
            if (height >= longest) continue;
            const Int128 side = height == 0 ? longest : std::min<Int128>(longest, (area - 1) / height + 1);
            const auto along = static_cast<std::int64_t>(side);
            Line<Stretch> inside;
            for (const auto &s : few)
                if (s.across_to >= low.across_to && s.across_from <= low.across_to + height)
                    inside.push_back(s);
            const WorstWindow here = most_weight(view(inside), along, std::nullopt);
            offer(worst, here.held, here.from, here.to);
        }
    }
    return worst;
}

} // namespace

WorstWindow most_in_area(std::span<const Stretch> stretches, Int128 area, std::int64_t longest,
                         std::size_t enough, std::optional<std::int64_t> around) {
    Line<Stretch> all = unrolled(stretches, around);
    std::sort(all.begin(), all.end(), [](const Stretch &a, const Stretch &b) { return a.from < b.from; });
    WorstWindow worst;
    std::size_t first = 0;
    std::int64_t reach = 0;
    for (const auto &s : all) reach = std::max(reach, s.to - s.from);
    for (std::size_t i = 0; i < all.size(); ++i) {
        // Those that a rectangle ending at this start can touch.
        const std::int64_t from = all[i].from - longest;
        while (all[first].from + reach <= from) ++first;
        Line<Stretch> few;
        for (std::size_t k = first; k < all.size() && all[k].from <= all[i].from && few.size() <= enough + 64;
             ++k)
            if (touches(all[k], from, longest)) few.push_back(all[k]);
        if (few.size() <= static_cast<std::size_t>(worst.held)) continue;
        const WorstWindow here = worst_rectangle(view(few), area, longest);
        offer(worst, here.held, here.from, here.to);
        if (worst.held > static_cast<Int128>(enough)) return worst;
    }
    return worst;
}

} // namespace beadbook
