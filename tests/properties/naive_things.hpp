#pragma once

#include "naive.hpp"

#include <algorithm>

namespace beadbook::test {

/// An indication as the naive evaluator sees it, or several that are one.
struct Thing {
    TypeId type = 0;
    std::vector<TypeId> types;
    Exam exam = Exam::VT;
    std::int64_t from = 0, to = 0, across_from = 0, across_to = 0;
    Environment::Values measures;
    std::array<std::uint8_t, attribute_count> words{};
    Shape shape = Shape::unknown;
    bool has_linear = false;
    Exact narrowest;
    std::vector<Environment::Values> parts; ///< of each indication in it
    std::vector<int> numbers;
};

/// What was found, merged and shaped by the set's notions in the plainest way.
class NaiveThings {
protected:
    NaiveThings(const CriteriaSet &set, const RandomCase &c) : set_(set), c_(c) {
        around_ = c.coupon.line.closed ? c.coupon.line.length->nm : 0;
        for (const auto &i : c.indications)
            things_.push_back({i.type,
                               {i.type},
                               i.exam,
                               i.place->from.nm,
                               i.place->to.nm,
                               i.across->from.nm,
                               i.across->to.nm,
                               i.measures,
                               i.words,
                               Shape::unknown,
                               false,
                               {},
                               {i.measures},
                               {i.number}});
        for (auto &t : things_) {
            settle_shape(t);
            t.has_linear = t.shape == Shape::linear;
            t.narrowest = measure(t, Quantity::width);
        }
        for (const auto &merge : set.merges) {
            const auto before = things_;
            merge_all(merge);
            close_rings(merge, before);
        }
        for (auto &t : things_) {
            const Exact widest = measure(t, Quantity::width);
            t.measures.set(Quantity::width, t.narrowest);
            settle_shape(t);
            t.measures.set(Quantity::width, widest);
            if (t.has_linear) t.shape = Shape::linear;
        }
    }

    Exact measure(const Thing &t, Quantity q) const { return t.measures[q]; }
    Environment env(const Environment::Values &local) const { return {c_.coupon.values, &local}; }

    bool condition(const Condition &c, const Thing *t) const {
        static const Environment::Values nothing;
        Missing missing;
        if (c.kind == Condition::Kind::word)
            return c.word(c.slot < fact_count ? c_.coupon.facts[c.slot] : t->words[c.slot - fact_count],
                          missing) == Truth::yes;
        return c.compare(env(t ? t->measures : nothing), missing) == Truth::yes;
    }

    /// From the end of a to the start of b, going forward; nothing if b does not come after a.
    std::optional<std::int64_t> forward_gap(const Thing &a, const Thing &b) const {
        if (!around_) {
            if (b.from < a.from) return std::nullopt;
            return std::max<std::int64_t>(0, b.from - a.to);
        }
        const std::int64_t ahead = ((b.from - a.from) % around_ + around_) % around_;
        return std::max<std::int64_t>(0, ahead - (a.to - a.from));
    }

    void merge_all(const Merge &merge) {
        for (bool changed = true; changed;) {
            changed = false;
            for (std::size_t i = 0; i < things_.size() && !changed; ++i)
                for (std::size_t j = 0; j < things_.size() && !changed; ++j) {
                    Thing &a = things_[i], &b = things_[j];
                    if (i == j || a.exam != b.exam || !merge.subject.covers(a.type, a.exam) ||
                        !merge.subject.covers(b.type, b.exam))
                        continue;
                    const auto gap = forward_gap(a, b);
                    if (!gap) continue;
                    Environment::Values pair;
                    pair.set(Quantity::gap, Exact(*gap));
                    pair.set(Quantity::smaller_size,
                             std::min(measure(a, Quantity::size), measure(b, Quantity::size)));
                    pair.set(Quantity::larger_size,
                             std::max(measure(a, Quantity::size), measure(b, Quantity::size)));
                    Missing missing;
                    if (merge.when.compare(env(pair), missing) != Truth::yes) continue;
                    join(a, b);
                    things_.erase(things_.begin() + static_cast<std::ptrdiff_t>(j));
                    changed = true;
                }
        }
    }

    bool near(const Merge &merge, const Thing &a, const Thing &b, std::int64_t gap) const {
        Environment::Values pair;
        pair.set(Quantity::gap, Exact(gap));
        pair.set(Quantity::smaller_size, std::min(measure(a, Quantity::size), measure(b, Quantity::size)));
        pair.set(Quantity::larger_size, std::max(measure(a, Quantity::size), measure(b, Quantity::size)));
        Missing missing;
        return merge.when.compare(env(pair), missing) == Truth::yes;
    }

    /// Those that are one made one, on a line that does not close.
    std::vector<Thing> merged(const Merge &merge, std::vector<Thing> all) const {
        for (bool changed = true; changed;) {
            changed = false;
            for (std::size_t i = 0; i < all.size() && !changed; ++i)
                for (std::size_t j = 0; j < all.size() && !changed; ++j) {
                    Thing &a = all[i], &b = all[j];
                    if (i == j || b.from < a.from) continue;
                    if (!near(merge, a, b, std::max<std::int64_t>(0, b.from - a.to))) continue;
                    join(a, b);
                    all.erase(all.begin() + static_cast<std::ptrdiff_t>(j));
                    changed = true;
                }
        }
        return all;
    }

    /// Whether a thing holds two neighbours that are near each other both ways round: its parts are cut at
    /// any two places.
    bool goes_round(const Merge &merge, const Thing &t, const std::vector<Thing> &before) const {
        std::vector<Thing> parts;
        for (Thing one : before) {
            if (std::find(t.numbers.begin(), t.numbers.end(), one.numbers.front()) == t.numbers.end())
                continue;
            const std::int64_t from = t.from + ((one.from - t.from) % around_ + around_) % around_;
            one.to += from - one.from;
            one.from = from;
            parts.push_back(one);
        }
        if (parts.size() > 1 && t.to - t.from >= around_) return true;
        std::sort(parts.begin(), parts.end(), [](const Thing &a, const Thing &b) {
            return a.from != b.from ? a.from < b.from : a.to < b.to;
        });
        for (std::size_t first = 0; first < parts.size(); ++first)
            for (std::size_t second = first + 1; second < parts.size(); ++second) {
                std::vector<Thing> inner, outer;
                for (std::size_t k = 0; k < parts.size(); ++k) {
                    Thing one = parts[k];
                    if (k < first) one.from += around_, one.to += around_;
                    (k >= first && k < second ? inner : outer).push_back(one);
                }
                for (const auto &p : merged(merge, inner))
                    for (const auto &q : merged(merge, outer))
                        if (near(merge, p, q, std::max<std::int64_t>(0, q.from - p.to)) &&
                            near(merge, q, p, std::max<std::int64_t>(0, p.from + around_ - q.to)))
                            return true;
            }
        return false;
    }

    void close_rings(const Merge &merge, const std::vector<Thing> &before) {
        for (std::size_t i = 0; around_ && i < things_.size(); ++i) {
            if (!merge.subject.covers(things_[i].type, things_[i].exam)) continue;
            if (!goes_round(merge, things_[i], before)) continue;
            Thing ring = things_[i];
            for (std::size_t j = 0; j < things_.size(); ++j)
                if (j != i && things_[j].exam == ring.exam &&
                    merge.subject.covers(things_[j].type, things_[j].exam))
                    join(ring, things_[j]);
            ring.to = ring.from + around_;
            ring.measures.set(Quantity::length, Exact(around_));
            ring.measures.set(Quantity::size, Exact(around_));
            std::erase_if(things_, [&](const Thing &t) {
                return t.exam == ring.exam && merge.subject.covers(t.type, t.exam);
            });
            things_.push_back(ring);
            return close_rings(merge, things_);
        }
    }

    void join(Thing &a, const Thing &b) const {
        std::int64_t shift = 0;
        if (around_) shift = a.from + ((b.from - a.from) % around_ + around_) % around_ - b.from;
        a.to = std::max(a.to, b.to + shift);
        a.types.insert(a.types.end(), b.types.begin(), b.types.end());
        a.parts.insert(a.parts.end(), b.parts.begin(), b.parts.end());
        a.numbers.insert(a.numbers.end(), b.numbers.begin(), b.numbers.end());
        for (const Quantity q : {Quantity::width, Quantity::depth, Quantity::height, Quantity::angle})
            a.measures.set(q, std::max(measure(a, q), measure(b, q)));
        a.measures.set(Quantity::area, measure(a, Quantity::area) + measure(b, Quantity::area));
        a.measures.set(Quantity::length, Exact(a.to - a.from));
        a.measures.set(Quantity::size, std::max({measure(a, Quantity::size), measure(b, Quantity::size),
                                                 Exact(a.to - a.from)}));
        a.has_linear = a.has_linear || b.has_linear;
        a.narrowest = std::min(a.narrowest, b.narrowest);
        a.across_from = std::min(a.across_from, b.across_from);
        a.across_to = std::max(a.across_to, b.across_to);
    }

    void settle_shape(Thing &t) const {
        t.shape = Vocabulary::shipped()[t.type].shape;
        if (set_.linear) t.shape = condition(*set_.linear, &t) ? Shape::linear : Shape::rounded;
    }

    const CriteriaSet &set_;
    const RandomCase &c_;
    std::int64_t around_ = 0;
    std::vector<Thing> things_;
};

} // namespace beadbook::test
