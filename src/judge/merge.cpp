#include "judge/merge.hpp"

#include <algorithm>

namespace beadbook {
namespace {

Exact value_or_zero(const Item &item, Quantity q) {
    return item.measures.has(q) ? item.measures[q] : Exact(0);
}

/// What a clause may ask of one of two neighbours.
struct Sizes {
    std::optional<Exact> size, length;

    explicit Sizes(const Item &item) {
        if (item.measures.has(Quantity::size)) size = item.measures[Quantity::size];
        if (item.measures.has(Quantity::length)) length = item.measures[Quantity::length];
    }
    /// As large as the largest neighbour that could still be met.
    void reach(const Exact &largest, const Exact &longest) {
        size = std::max(largest, size.value_or(0));
        length = std::max(longest, length.value_or(0));
    }
};

Truth mergeable(const Sizes &a, const Sizes &b, std::int64_t gap, const Merge &clause, const Coupon &coupon,
                Missing &missing) {
    Environment::Values pair;
    pair.set_whole(Quantity::gap, gap);
    const auto both = [&](const std::optional<Exact> &x, const std::optional<Exact> &y, Quantity smaller,
                          Quantity larger) {
        if (!x || !y) return;
        pair.set(smaller, std::min(*x, *y));
        pair.set(larger, std::max(*x, *y));
    };
    both(a.size, b.size, Quantity::smaller_size, Quantity::larger_size);
    both(a.length, b.length, Quantity::shorter_length, Quantity::longer_length);
    return clause.when.compare(Environment{coupon.values, &pair}, missing);
}

/// Between items of which all that the clause asks is known.
bool mergeable(const Sizes &a, const Sizes &b, std::int64_t gap, const Merge &clause, const Coupon &coupon) {
    Missing none;
    return mergeable(a, b, gap, clause, coupon, none) == Truth::yes;
}

/// The free way from one to another; `turn`: the other one a turn further on.
std::int64_t gap_between(const Item &a, const Item &b, std::int64_t turn = 0) {
    return std::max<std::int64_t>(0, b.place->from.nm + turn - a.place->to.nm);
}

bool mergeable(const Item &a, const Item &b, const Merge &clause, const Coupon &coupon,
               std::int64_t turn = 0) {
    return mergeable(Sizes(a), Sizes(b), gap_between(a, b, turn), clause, coupon);
}

/// Joins b into a; both are located and b does not begin before a.
void join(Item &a, const Item &b) {
    a.members.insert(a.members.end(), b.members.begin(), b.members.end());
    a.place->to = std::max(a.place->to, b.place->to);
    a.has_linear = a.has_linear || b.has_linear;
    if (b.shape == Shape::unknown) a.shape = Shape::unknown;
    a.narrowest =
        a.narrowest && b.narrowest ? std::optional(std::min(*a.narrowest, *b.narrowest)) : std::nullopt;
    if (b.narrow_at_most)
        a.narrow_at_most =
            a.narrow_at_most ? std::min(*a.narrow_at_most, *b.narrow_at_most) : *b.narrow_at_most;
    for (const Quantity q : LeastKnown::quantities)
        if (a.measures.has(q) && b.measures.has(q)) {
            a.measures.set(q, std::max(value_or_zero(a, q), value_or_zero(b, q)));
        } else { // known of one only: not known of both, but no less than that
            for (const Item *part : {static_cast<const Item *>(&a), &b})
                a.least.raise(q, part->measures.has(q) ? part->measures.get()[q] : part->least[q]);
            a.measures.forget(q);
        }
    if (a.measures.has(Quantity::area) && b.measures.has(Quantity::area))
        a.measures.set(Quantity::area, value_or_zero(a, Quantity::area) + value_or_zero(b, Quantity::area));
    const Exact extent = a.place->to.nm - a.place->from.nm;
    const Exact size = std::max(value_or_zero(a, Quantity::size), value_or_zero(b, Quantity::size));
    a.measures.set(Quantity::length, extent);
    a.measures.set(Quantity::size, std::max(size, extent));
    for (std::size_t w = 0; w < a.words.size(); ++w)
        if (a.words[w] != b.words[w]) a.words[w] = 0;
    if (a.across && b.across)
        a.across = Span{std::min(a.across->from, b.across->from), std::max(a.across->to, b.across->to)};
    else
        a.across.reset();
}

/// Whatever would join the earlier one joins the later one too.
bool hides(const Item &later, const Item &earlier) {
    const auto at_least = [&](Quantity q) { return value_or_zero(later, q) >= value_or_zero(earlier, q); };
    return at_least(Quantity::size) && at_least(Quantity::length) && later.place->to >= earlier.place->to;
}

/// The way back from an item past those that it hides, so that many small ones are not looked at one by one.
struct WayBack {
    std::optional<std::size_t> next; ///< the nearest before it that it does not hide
    std::int64_t least_to;           ///< how far the least reaches, of it and of those that it hides
};

/// One run from left to right. Looks back past neighbours that do not join, because a small one between two
/// large ones must not keep them apart; stops where even the largest could not reach.
class Sweep {
public:
    Sweep(std::vector<Item> &line, const Merge &clause, const Coupon &coupon)
        : line_(line), clause_(clause), coupon_(coupon) {
        for (const auto &item : line) grow(item);
    }

    void run() {
        done_.reserve(line_.size());
        back_.reserve(line_.size());
        for (auto &next : line_) {
            done_.push_back(std::move(next));
            while (const auto first = joined_by_last()) join_from(*first);
            remember_last();
        }
        line_ = std::move(done_);
    }

private:
    void grow(const Item &item) {
        largest_ = std::max(largest_, value_or_zero(item, Quantity::size));
        longest_ = std::max(longest_, value_or_zero(item, Quantity::length));
    }

    /// The nearest before the last one that is near enough to be one with it.
    std::optional<std::size_t> joined_by_last() const {
        if (done_.size() < 2) return std::nullopt;
        const Sizes last(done_.back());
        Sizes reach = last;
        reach.reach(largest_, longest_);
        const auto near = [&](const Sizes &sizes, std::int64_t to) {
            const std::int64_t gap = std::max<std::int64_t>(0, done_.back().place->from.nm - to);
            return mergeable(sizes, last, gap, clause_, coupon_);
        };
        for (std::optional k = done_.size() - 2; k; k = back_[*k].next) {
            const std::int64_t to = done_[*k].place->to.nm;
            if (!near(reach, to)) break;
            if (near(Sizes(done_[*k]), to)) return k;
            if (back_[*k].least_to < to && !near(reach, back_[*k].least_to)) break;
        }
        return std::nullopt;
    }

    void join_from(std::size_t first) {
        Item whole = std::move(done_[first]);
        for (std::size_t m = first + 1; m < done_.size(); ++m) join(whole, done_[m]);
        done_.resize(first);
        back_.resize(first);
        done_.push_back(std::move(whole));
        grow(done_.back());
    }

    void remember_last() {
        const Item &last = done_.back();
        WayBack way{std::nullopt, last.place->to.nm};
        if (done_.size() > 1) way.next = done_.size() - 2;
        for (; way.next && hides(last, done_[*way.next]); way.next = back_[*way.next].next)
            way.least_to = std::min(way.least_to, back_[*way.next].least_to);
        back_.push_back(way);
    }

    std::vector<Item> &line_;
    const Merge &clause_;
    const Coupon &coupon_;
    Exact largest_ = 0, longest_ = 0; ///< of all, so that it is known when to stop
    std::vector<Item> done_;
    std::vector<WayBack> back_; ///< from each of done_ but a last one that is still growing
};

void sweep(std::vector<Item> &line, const Merge &clause, const Coupon &coupon) {
    Sweep(line, clause, coupon).run();
}

Item turned(Item item, std::int64_t by) {
    item.place->from.nm += by;
    item.place->to.nm += by;
    return item;
}

/// The parts that a joined one was made of, in order from where it begins.
std::vector<Item> parts_of(const Item &whole, const std::vector<Item> &all, std::int64_t around) {
    std::vector<std::size_t> in(whole.members.begin(), whole.members.end());
    std::sort(in.begin(), in.end());
    std::vector<Item> parts;
    for (const auto &one : all) {
        if (!std::binary_search(in.begin(), in.end(), one.members.front())) continue;
        std::int64_t ahead = (one.place->from.nm - whole.place->from.nm) % around;
        if (ahead < 0) ahead += around;
        parts.push_back(turned(one, whole.place->from.nm + ahead - one.place->from.nm));
    }
    std::sort(parts.begin(), parts.end(), [](const Item &a, const Item &b) {
        return a.place->from != b.place->from ? a.place->from < b.place->from : a.place->to < b.place->to;
    });
    return parts;
}

/// Whether a stretch holds one, and the rest of the turn another, that are near each other both ways round.
/// What lies between them need not be near: a small one between two large ones does not keep them apart.
bool near_both_ways(std::vector<Item> before, std::vector<Item> after, const Merge &clause,
                    const Coupon &coupon, std::int64_t around) {
    sweep(before, clause, coupon);
    sweep(after, clause, coupon);
    for (const Item &p : before)
        for (const Item &q : after)
            if (mergeable(p, q, clause, coupon) && mergeable(q, p, clause, coupon, around)) return true;
    return false;
}

/// Two that are near each other both ways round are one over both gaps. A joined one goes all the way round
/// if its parts hold two such neighbours, each of them one by itself.
bool closes(const Item &whole, const std::vector<Item> &all, const Merge &clause, const Coupon &coupon,
            std::int64_t around) {
    if (whole.members.size() < 2) return false;
    if (gap_between(whole, whole, around) == 0) return true;
    if (!mergeable(whole, whole, clause, coupon, around)) return false; // no part is larger than the whole
    std::vector<Item> parts = parts_of(whole, all, around);
    // Parted at any two places. Many parts can be parted almost anywhere, so that one of the two may be
    // fixed.
    constexpr std::size_t few = 24;
    const std::size_t starts = parts.size() <= few ? parts.size() : 1;
    for (std::size_t start = 0; start < starts; ++start) {
        for (std::size_t cut = 1; cut + start < parts.size(); ++cut) {
            const auto at = parts.begin() + static_cast<std::ptrdiff_t>(cut);
            if (near_both_ways({parts.begin(), at}, {at, parts.end()}, clause, coupon, around)) return true;
        }
        parts.front() = turned(std::move(parts.front()), around);
        std::rotate(parts.begin(), parts.begin() + 1, parts.end());
    }
    return false;
}

/// All the way round: whatever else lies there lies in it.
void close_ring(std::vector<Item> &line, std::size_t which, std::int64_t around) {
    Item ring = line[which];
    for (std::size_t i = 0; i < line.size(); ++i)
        if (i != which) join(ring, line[i]);
    ring.place = Span{line[which].place->from, {line[which].place->from.nm + around}};
    ring.measures.set(Quantity::length, Exact(around));
    ring.measures.set(Quantity::size, Exact(around));
    line.clear();
    line.push_back(std::move(ring));
}

/// Begins at the largest item, which no gap that joins others can contain; then the end may join the start.
void sweep_round(std::vector<Item> &line, const Merge &clause, const Coupon &coupon, std::int64_t around,
                 Rings rings) {
    const std::vector<Item> all = line;
    for (bool changed = true; changed && line.size() > 1;) {
        const std::size_t before = line.size();
        const auto largest = std::max_element(line.begin(), line.end(), [](const Item &a, const Item &b) {
            const Exact x = value_or_zero(a, Quantity::size), y = value_or_zero(b, Quantity::size);
            return x != y ? x < y : a.place->from < b.place->from;
        });
        for (auto it = line.begin(); it != largest; ++it) *it = turned(std::move(*it), around);
        std::rotate(line.begin(), largest, line.end());
        sweep(line, clause, coupon);
        // The last ones against the first, one turn on.
        for (std::size_t k = line.size(); k-- > 1;) {
            if (!mergeable(line[k], line.front(), clause, coupon, around)) continue;
            const Item first = turned(line.front(), around);
            Item whole = line[k];
            for (std::size_t m = k + 1; m < line.size(); ++m) join(whole, line[m]);
            join(whole, first);
            line.resize(k);
            line.front() = std::move(whole);
            break;
        }
        for (auto &item : line) {
            const auto turns = item.place->from.nm / around;
            item = turned(std::move(item), -turns * around);
        }
        std::sort(line.begin(), line.end(),
                  [](const Item &a, const Item &b) { return a.place->from < b.place->from; });
        changed = line.size() != before;
    }
    for (std::size_t i = 0; rings == Rings::closed && i < line.size(); ++i)
        if (closes(line[i], all, clause, coupon, around)) return close_ring(line, i, around);
}

} // namespace

void merge_items(std::vector<Item> &items, const Merge &clause, const std::vector<Indication> &indications,
                 const Coupon &coupon, Rings rings) {
    std::vector<Item> rest, lines[exam_count], loose[exam_count];
    Missing doubts[exam_count];
    if (coupon.turn_unknown()) std::fill_n(doubts, exam_count, lack_of(Quantity::weld_length));
    for (auto &item : items) {
        const Indication &first = indications[item.members.front()];
        const auto exam = static_cast<std::size_t>(first.exam);
        if (!clause.subject.covers(first.type, first.exam)) {
            rest.push_back(std::move(item));
            continue;
        }
        Missing lacks;
        mergeable(Sizes(item), Sizes(item), 0, clause, coupon, lacks);
        if (!item.place) lacks |= Missing::place();
        if (item.open_end) lacks |= lack_of(Quantity::length);
        if (!lacks.any()) {
            lines[exam].push_back(std::move(item));
        } else {
            doubts[exam] |= lacks;
            loose[exam].push_back(std::move(item));
        }
    }
    for (std::size_t exam = 0; exam < exam_count; ++exam) {
        auto &line = lines[exam];
        std::sort(line.begin(), line.end(), [](const Item &a, const Item &b) {
            if (a.place->from != b.place->from) return a.place->from < b.place->from;
            return a.place->to != b.place->to ? a.place->to < b.place->to : a.members < b.members;
        });
        if (const auto around = coupon.around())
            sweep_round(line, clause, coupon, *around, rings);
        else
            sweep(line, clause, coupon);
        // A lone one has nobody to be one with.
        const bool lone = line.size() + loose[exam].size() < 2;
        for (auto *part : {&line, &loose[exam]})
            for (auto &item : *part) {
                if (!lone) item.may_merge |= doubts[exam];
                rest.push_back(std::move(item));
            }
    }
    items = std::move(rest);
}

} // namespace beadbook
