#include "judge/neighbours.hpp"

#include <algorithm>
#include <numeric>

namespace beadbook {
namespace {

struct Placed {
    std::size_t id;
    std::int64_t from, to;
};

/// By where they begin; ties by where they end, then by index, so that the order never depends on entry.
Several<Placed> in_order(std::span<const Span> spans) {
    Several<Placed> out;
    out.reserve(spans.size() * 2);
    for (std::size_t i = 0; i < spans.size(); ++i) out.push_back({i, spans[i].from.nm, spans[i].to.nm});
    std::sort(out.begin(), out.end(), [](const Placed &a, const Placed &b) {
        return a.from != b.from ? a.from < b.from : a.to != b.to ? a.to < b.to : a.id < b.id;
    });
    return out;
}

/// The two furthest reaches by different stretches.
class Reach {
public:
    void add(const Placed &p) {
        if (!best_ || p.to >= best_->to) {
            if (!best_ || best_->id != p.id) second_ = best_;
            best_ = p;
        } else if (best_->id != p.id && (!second_ || p.to >= second_->to)) {
            second_ = p;
        }
    }
    const std::optional<Placed> &other_than(std::size_t id) const {
        return best_ && best_->id == id ? second_ : best_;
    }

private:
    std::optional<Placed> best_, second_;
};

std::int64_t free_between(const Placed &before, const Placed &after) {
    return std::max<std::int64_t>(0, after.from - before.to);
}

Placed turned(const Placed &p, std::int64_t by) { return {p.id, p.from + by, p.to + by}; }

} // namespace

Several<Pair> neighbour_pairs(std::span<const Span> spans, std::optional<std::int64_t> around) {
    Several<Pair> pairs;
    const Several<Placed> line = in_order(spans);
    const std::size_t n = line.size();
    if (n < 2) return pairs;
    // Mostly the next one finds the same pair from its side.
    const auto take = [&](std::size_t first, std::size_t second, std::int64_t gap) {
        if (pairs.empty() || pairs.back().first != first || pairs.back().second != second)
            pairs.push_back({first, second, gap});
    };
    Reach reach;
    if (around)
        for (const auto &p : line) reach.add(turned(p, -*around));
    for (std::size_t i = 0; i < n; ++i) {
        if (const auto &before = reach.other_than(line[i].id))
            take(before->id, line[i].id, free_between(*before, line[i]));
        reach.add(line[i]);
        if (i + 1 < n)
            take(line[i].id, line[i + 1].id, free_between(line[i], line[i + 1]));
        else if (around)
            take(line[i].id, line[0].id, free_between(line[i], turned(line[0], *around)));
    }
    return pairs;
}

Several<std::int64_t> gaps_to(std::span<const Span> spans, const std::vector<bool> &to,
                              std::optional<std::int64_t> around) {
    const Several<Placed> line = in_order(spans);
    Several<std::int64_t> nearest(line.size(), longest_length.nm);
    const auto offer = [&](const Placed &before, const Placed &after, std::size_t of) {
        if (before.id != after.id) nearest[of] = std::min(nearest[of], free_between(before, after));
    };
    const Placed *first = nullptr, *next = nullptr;
    Reach reach;
    for (const auto &p : line) {
        if (!to[p.id]) continue;
        if (!first) first = &p;
        if (around) reach.add(turned(p, -*around));
    }
    for (const auto &p : line) {
        if (const auto &before = reach.other_than(p.id)) offer(*before, p, p.id);
        if (around && first) offer(p, turned(*first, *around), p.id);
        if (to[p.id]) reach.add(p);
    }
    for (std::size_t i = line.size(); i-- > 0;) {
        if (next) offer(line[i], *next, line[i].id);
        if (to[line[i].id]) next = &line[i];
    }
    return nearest;
}

std::vector<std::vector<std::size_t>> groups_in_line(std::span<const Span> spans,
                                                     std::span<const std::int64_t> lengths,
                                                     std::optional<std::int64_t> around, const Links &links) {
    const Several<Placed> line = in_order(spans);
    const std::size_t n = line.size();
    if (n == 0) return {};
    // gap[i]: free distance between what came before i and i. On a closed weld gap[0] lies over the datum.
    std::vector<std::int64_t> gap(n, -1);
    std::int64_t reach = line[0].to;
    for (std::size_t i = 1; i < n; ++i) {
        gap[i] = std::max<std::int64_t>(0, line[i].from - reach);
        reach = std::max(reach, line[i].to);
    }
    if (around && n > 1) {
        gap[0] = std::max<std::int64_t>(0, line[0].from + *around - reach);
        // What hangs over the datum covers the first ones from behind.
        const std::int64_t over = reach - *around;
        for (std::size_t i = 1; i < n && line[i].from <= over; ++i) gap[i] = 0;
    }
    std::vector<std::size_t> by_length(n);
    std::iota(by_length.begin(), by_length.end(), std::size_t{0});
    std::sort(by_length.begin(), by_length.end(), [&](std::size_t a, std::size_t b) {
        const auto x = lengths[line[a].id], y = lengths[line[b].id];
        return x != y ? x > y : a < b;
    });
    // The longest first: it takes all that its length holds together, and nothing shorter can reach across.
    std::vector<bool> taken(n, false);
    std::vector<std::vector<std::size_t>> groups;
    for (const std::size_t start : by_length) {
        if (taken[start]) continue;
        const std::int64_t longest = lengths[line[start].id];
        taken[start] = true;
        std::size_t first = start, last = start, size = 1;
        const auto before = [&](std::size_t i) { return i == 0 ? n - 1 : i - 1; };
        const auto after = [&](std::size_t i) { return i + 1 == n ? 0 : i + 1; };
        while (gap[first] >= 0 && !taken[before(first)] && links(gap[first], longest)) {
            first = before(first);
            taken[first] = true;
            ++size;
        }
        while (gap[after(last)] >= 0 && !taken[after(last)] && links(gap[after(last)], longest)) {
            last = after(last);
            taken[last] = true;
            ++size;
        }
        std::vector<std::size_t> group;
        for (std::size_t i = first; group.size() < size; i = after(i)) group.push_back(line[i].id);
        groups.push_back(std::move(group));
    }
    std::sort(groups.begin(), groups.end());
    return groups;
}

} // namespace beadbook
