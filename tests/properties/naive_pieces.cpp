#include "naive_pieces.hpp"

#include <algorithm>

namespace beadbook::test {
namespace {

/// How far behind the beginning of a that of b lies; on a closed weld going forward.
std::int64_t ahead(const Coupon &coupon, const Indication &a, const Indication &b) {
    const std::int64_t way = b.place->from.nm - a.place->from.nm;
    if (!coupon.around()) return way;
    return (way % *coupon.around() + *coupon.around()) % *coupon.around();
}

bool meets(const Coupon &coupon, const Indication &a, const Indication &b) {
    const std::int64_t way = ahead(coupon, a, b);
    return way >= 0 && way <= a.place->to.nm - a.place->from.nm;
}

/// b begins in a or at its end.
Indication joined(const Coupon &coupon, const Indication &a, const Indication &b) {
    Indication out = a;
    out.number = std::min(a.number, b.number);
    const std::int64_t shift = a.place->from.nm + ahead(coupon, a, b) - b.place->from.nm;
    out.place->to.nm = std::max(a.place->to.nm, b.place->to.nm + shift);
    if (coupon.around()) out.place->to.nm = std::min(out.place->to.nm, out.place->from.nm + *coupon.around());
    for (const Quantity q : {Quantity::width, Quantity::depth, Quantity::height, Quantity::angle})
        out.measures.set(q, Exact(std::max(a.measures[q], b.measures[q])));
    const std::int64_t extent = out.place->to.nm - out.place->from.nm;
    out.measures.set(Quantity::length, Exact(extent));
    out.measures.set(Quantity::size,
                     Exact(std::max({a.measures[Quantity::size], b.measures[Quantity::size], extent})));
    out.measures.forget(Quantity::area);
    out.complete(Vocabulary::shipped());
    out.across = Span{std::min(a.across->from, b.across->from), std::max(a.across->to, b.across->to)};
    return out;
}

/// Joins one pair of those that touch.
bool join_a_pair(const CriteriaSet &set, RandomCase &c, const RandomCase &whole,
                 std::vector<std::vector<Indication>> &parts) {
    for (std::size_t i = 0; i < parts.size(); ++i)
        for (std::size_t j = 0; j < parts.size(); ++j) {
            if (i == j) continue;
            for (const auto &a : parts[i])
                for (const auto &b : parts[j])
                    if (naive_touch(set, whole.coupon, a, b)) {
                        Indication &x = c.indications[i], &y = c.indications[j];
                        x = meets(c.coupon, x, y) ? joined(c.coupon, x, y) : joined(c.coupon, y, x);
                        parts[i].insert(parts[i].end(), parts[j].begin(), parts[j].end());
                        c.indications.erase(c.indications.begin() + static_cast<std::ptrdiff_t>(j));
                        parts.erase(parts.begin() + static_cast<std::ptrdiff_t>(j));
                        return true;
                    }
        }
    return false;
}

} // namespace

bool naive_touch(const CriteriaSet &set, const Coupon &coupon, const Indication &a, const Indication &b) {
    if (a.type != b.type || a.exam != b.exam || Vocabulary::shipped()[a.type].measured) return false;
    for (const auto &merge : set.merges)
        if (merge.subject.covers(a.type, a.exam)) return false;
    for (std::size_t w = 0; w < attribute_count; ++w)
        if (a.words[w] != b.words[w]) return false;
    if (a.across->to < b.across->from || b.across->to < a.across->from) return false;
    return meets(coupon, a, b) || meets(coupon, b, a);
}

RandomCase naive_as_one(const CriteriaSet &set, RandomCase c) {
    const RandomCase whole = c;
    std::vector<std::vector<Indication>> parts;
    for (const auto &i : c.indications) parts.push_back({i});
    while (join_a_pair(set, c, whole, parts)) {
    }
    return c;
}

} // namespace beadbook::test
