#include "judge/window.hpp"

#include "judge/few.hpp"

#include <algorithm>
#include <map>

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

/// By how much some sorted edges lie before x in sum, asked for ascending x. `Sum` holds all of them.
template <class Sum>
class Ramp {
public:
    explicit Ramp(const Line<std::int64_t> &edges) : edges_(edges) {}

    Sum operator()(std::int64_t x) {
        for (; passed_ < edges_.size() && edges_[passed_] < x; ++passed_) sum_ += edges_[passed_];
        return static_cast<Sum>(passed_) * x - sum_;
    }

private:
    const Line<std::int64_t> &edges_;
    std::size_t passed_ = 0;
    Sum sum_ = 0;
};

void offer(WorstWindow &worst, Int128 held, std::int64_t from, std::int64_t to) {
    if (held > worst.held) worst = {held, from, to};
}

} // namespace

namespace {

/// Slides a window along all stretches, whose starts and ends are sorted.
template <class Sum>
WorstWindow most_length_between(const Line<std::int64_t> &starts, const Line<std::int64_t> &ends,
                                std::int64_t width) {
    WorstWindow worst;
    const auto slide_along = [&](const Line<std::int64_t> &edges, std::int64_t shift) {
        // What has begun before a point, less what has ended before it, lies before it.
        Ramp<Sum> begun(starts), ended(ends), begun_to(starts), ended_to(ends);
        for (const std::int64_t edge : edges) {
            const std::int64_t from = edge + shift, to = from + width;
            const Sum held = begun_to(to) - ended_to(to) - begun(from) + ended(from);
            offer(worst, held, from, to);
        }
    };
    slide_along(starts, 0);
    slide_along(ends, -width);
    return worst;
}

} // namespace

WorstWindow most_length(std::span<const Stretch> stretches, std::int64_t width,
                        std::optional<std::int64_t> around) {
    Line<std::int64_t> starts, ends;
    const auto take = [&](std::int64_t turn) {
        for (const auto &s : stretches) {
            starts.push_back(s.from + turn);
            ends.push_back(s.to + turn);
        }
    };
    take(0);
    if (around) take(*around), take(2 * *around);
    if (starts.empty()) return {};
    std::sort(starts.begin(), starts.end());
    std::sort(ends.begin(), ends.end());
    const Int128 furthest = std::max(static_cast<Int128>(ends.back()), -static_cast<Int128>(starts.front()));
    const bool fits = (furthest + width) * static_cast<Int128>(2 * starts.size()) < std::int64_t{1} << 62;
    return fits ? most_length_between<std::int64_t>(starts, ends, width)
                : most_length_between<Int128>(starts, ends, width);
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

/// The height of the least rectangle over two of them, from the near edge of one to the near edge of the
/// other.
std::int64_t height_over(const Stretch &low, const Stretch &high) {
    return std::max<std::int64_t>(high.across_from - low.across_to, 0);
}

/// The longest side along of a rectangle of that height.
std::int64_t side_along(std::int64_t height, Int128 area, std::int64_t longest) {
    const Int128 side = height == 0 ? longest : std::min<Int128>(longest, (area - 1) / height + 1);
    return static_cast<std::int64_t>(side);
}

/// As many as any rectangle that ends at `end` can touch, or more. The higher it is, the shorter: so of one
/// low edge each is taken in once, by where it begins across, and given up once, by where it ends along.
/// O(k^2).
std::size_t most_ending_at(std::int64_t end, std::span<const Stretch> few, Int128 area,
                           std::int64_t longest) {
    Line<const Stretch *> by_across, by_end;
    for (const auto &s : few) by_across.push_back(&s), by_end.push_back(&s);
    std::sort(by_across.begin(), by_across.end(),
              [](const Stretch *a, const Stretch *b) { return a->across_from < b->across_from; });
    std::sort(by_end.begin(), by_end.end(), [](const Stretch *a, const Stretch *b) { return a->to < b->to; });
    std::size_t most = 0;
    for (const auto &low : few) {
        std::size_t inside = 0, next = 0, given_up = 0;
        std::int64_t behind = end - longest;
        while (next < by_across.size()) {
            const std::int64_t height = height_over(low, *by_across[next]);
            if (height >= longest) break;
            behind = end - side_along(height, area, longest);
            // Those that were taken in before and end before the rectangle begins now.
            for (; given_up < by_end.size() && by_end[given_up]->to <= behind; ++given_up) {
                const Stretch &s = *by_end[given_up];
                const bool taken =
                    s.across_to >= low.across_to && s.across_from < by_across[next]->across_from;
                inside -= taken;
            }
            for (const std::int64_t here = by_across[next]->across_from;
                 next < by_across.size() && by_across[next]->across_from == here; ++next)
                inside += by_across[next]->across_to >= low.across_to && by_across[next]->to > behind;
            most = std::max(most, inside);
        }
    }
    return most;
}

/// Every rectangle that could be worst among a handful: its low edge across lies at the low end of the
/// touched ones, and for a chosen reach across, the longest side along is taken.
WorstWindow worst_rectangle(std::span<const Stretch> few, Int128 area, std::int64_t longest) {
    WorstWindow worst;
    for (const auto &low : few) {
        for (const auto &high : few) {
            const std::int64_t height = height_over(low, high);
            if (height >= longest) continue;
            const std::int64_t along = side_along(height, area, longest);
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

/// Many on a short stretch of weld, as a hostile record may have them: those across the weld from an end are
/// looked up.
class Crowded {
public:
    Crowded(std::span<const Stretch> by_start, Int128 area, std::int64_t longest, std::size_t enough)
        : all_(by_start), area_(area), longest_(longest), enough_(enough) {
        for (const auto &s : all_) {
            by_end_.push_back(&s);
            reach_across_ = std::max(reach_across_, s.across_to - s.across_from);
        }
        std::sort(by_end_.begin(), by_end_.end(),
                  [](const Stretch *a, const Stretch *b) { return a->to < b->to; });
    }

    WorstWindow worst() {
        std::size_t ended = 0, next = 0;
        for (const auto &last : all_) {
            for (; next < all_.size() && all_[next].from <= last.from; ++next)
                live_.emplace(all_[next].across_from, &all_[next]);
            for (; by_end_[ended]->to <= last.from - longest_; ++ended) forget(*by_end_[ended]);
            try_ending_at(last);
            if (worst_.held > static_cast<Int128>(enough_)) break;
        }
        return worst_;
    }

private:
    void forget(const Stretch &gone) {
        auto [at, end] = live_.equal_range(gone.across_from);
        while (at != end && at->second != &gone) ++at;
        if (at != end) live_.erase(at);
    }

    void try_ending_at(const Stretch &last) {
        Line<Stretch> near;
        const auto end = live_.upper_bound(last.across_to + longest_);
        for (auto at = live_.lower_bound(last.across_from - longest_ - reach_across_); at != end; ++at)
            if (touches(*at->second, last.from - longest_, longest_) &&
                at->second->across_to >= last.across_from - longest_)
                near.push_back(*at->second);
        if (near.size() <= static_cast<std::size_t>(worst_.held)) return;
        look_for_crowd(near);
        if (worst_.held > static_cast<Int128>(enough_)) return;
        if (most_ending_at(last.from, view(near), area_, longest_) <= static_cast<std::size_t>(worst_.held))
            return;
        const WorstWindow here = worst_rectangle(view(near), area_, longest_);
        offer(worst_, here.held, here.from, here.to);
    }

    /// More than enough within one rectangle of full length. On a closed weld each may stand there three
    /// times. Without a crowd those near an end are few, however many there are.
    void look_for_crowd(const Line<Stretch> &near) {
        const std::size_t crowd = 3 * enough_ + 1;
        const Int128 height = area_ / longest_;
        for (std::size_t low = 0; low + crowd <= near.size(); ++low) {
            if (near[low + crowd - 1].across_from - near[low].across_from > height) continue;
            const WorstWindow here = worst_rectangle(view(near).subspan(low, crowd), area_, longest_);
            offer(worst_, here.held, here.from, here.to);
            if (worst_.held > static_cast<Int128>(enough_)) return;
        }
    }

    std::span<const Stretch> all_;
    Int128 area_;
    std::int64_t longest_, reach_across_ = 0;
    std::size_t enough_;
    Line<const Stretch *> by_end_;
    std::multimap<std::int64_t, const Stretch *> live_; ///< by where they begin across
    WorstWindow worst_;
};

} // namespace

WorstWindow most_in_area(std::span<const Stretch> stretches, Int128 area, std::int64_t longest,
                         std::size_t enough, std::optional<std::int64_t> around) {
    Line<Stretch> all = unrolled(stretches, around);
    std::sort(all.begin(), all.end(), [](const Stretch &a, const Stretch &b) { return a.from < b.from; });
    WorstWindow worst;
    Line<const Stretch *> live; // those that a rectangle ending at this start can touch
    for (std::size_t next = 0; next < all.size();) {
        const std::int64_t end = all[next].from;
        std::int64_t low = all[next].across_from, high = all[next].across_to;
        for (; next < all.size() && all[next].from == end; ++next) {
            live.push_back(&all[next]);
            low = std::min(low, all[next].across_from);
            high = std::max(high, all[next].across_to);
        }
        live.erase(std::remove_if(live.begin(), live.end(),
                                  [&](const Stretch *s) { return !touches(*s, end - longest, longest); }),
                   live.end());
        if (live.size() > enough + 64) return Crowded(view(all), area, longest, enough).worst();
        // One that ends before was looked at there, so it touches one that begins at this end.
        Line<Stretch> near;
        for (const Stretch *s : live)
            if (s->across_to >= low - longest && s->across_from <= high + longest) near.push_back(*s);
        if (near.size() <= static_cast<std::size_t>(worst.held) ||
            most_ending_at(end, view(near), area, longest) <= static_cast<std::size_t>(worst.held))
            continue;
        const WorstWindow here = worst_rectangle(view(near), area, longest);
        offer(worst, here.held, here.from, here.to);
        if (worst.held > static_cast<Int128>(enough)) return worst;
    }
    return worst;
}

} // namespace beadbook
