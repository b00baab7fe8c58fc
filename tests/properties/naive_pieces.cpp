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
    out.narrowest = longest_length.nm;
    for (const Indication *part : {&a, &b}) {
        for (const Quantity q : {Quantity::length, Quantity::width})
            out.narrowest = std::min(*out.narrowest, Exact(part->measures[q]));
        if (part->narrowest) out.narrowest = std::min(*out.narrowest, *part->narrowest);
    }
    out.across = Span{std::min(a.across->from, b.across->from), std::max(a.across->to, b.across->to)};
    return out;
}

/// Joins one pair of those that touch.
bool join_a_pair(const CriteriaSet &set, RandomCase &c, const RandomCase &whole, NaiveKin kin,
                 std::vector<std::vector<Indication>> &parts) {
    for (std::size_t i = 0; i < parts.size(); ++i)
        for (std::size_t j = 0; j < parts.size(); ++j) {
            if (i == j) continue;
            for (const auto &a : parts[i])
                for (const auto &b : parts[j])
                    if (naive_touch(set, whole.coupon, a, b, kin)) {
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

bool round_one(const Indication &i) {
    return Vocabulary::shipped()[i.type].shape == Shape::rounded &&
           Exact(i.measures[Quantity::length]) <= Exact(i.measures[Quantity::width]) * Exact(3);
}

/// One rule says how long or how large each may be, of neither a round one.
bool limited_alike(const CriteriaSet &set, const Coupon &coupon, const Indication &a, const Indication &b) {
    if (round_one(a) || round_one(b)) return false;
    for (const auto &rule : set.rules) {
        Missing missing;
        bool may_apply = true;
        for (const auto &c : rule.when)
            may_apply = may_apply && (c.kind == Condition::Kind::word
                                          ? c.words_said(coupon.said(c.slot), missing)
                                          : c.compare(Environment{coupon.values}, missing)) != Truth::no;
        const bool limits = std::any_of(rule.limits.begin(), rule.limits.end(),
                                        [](const Limit &l) { return l.kind == Limit::Kind::value; });
        const std::string what = rule.kind == Rule::Kind::each ? rule.measure.text : "";
        if (may_apply && limits && (what == "length" || what == "size") &&
            (rule.compare == Compare::at_most || rule.compare == Compare::under) &&
            rule.subject.covers(a.type, a.exam) && rule.subject.covers(b.type, b.exam))
            return true;
    }
    return false;
}

} // namespace

TypeId naive_family(TypeId type) {
    const Vocabulary &v = Vocabulary::shipped();
    if (v[type].name.ends_with(" indication")) return *v.find("linear indication");
    return v[type].under ? naive_family(*v[type].under) : type;
}

bool naive_touch(const CriteriaSet &set, const Coupon &coupon, const Indication &a, const Indication &b,
                 NaiveKin kin) {
    if (a.exam != b.exam || Vocabulary::shipped()[a.type].measured || Vocabulary::shipped()[b.type].measured)
        return false;
    if (naive_family(a.type) != naive_family(b.type) &&
        (kin == NaiveKin::family || !limited_alike(set, coupon, a, b)))
        return false;
    for (const auto &merge : set.merges)
        if (merge.subject.covers(a.type, a.exam) || merge.subject.covers(b.type, b.exam)) return false;
    for (std::size_t w = 0; w < attribute_count; ++w)
        if (a.words[w] != b.words[w]) return false;
    if (a.across->to < b.across->from || b.across->to < a.across->from) return false;
    return meets(coupon, a, b) || meets(coupon, b, a);
}

RandomCase naive_as_one(const CriteriaSet &set, RandomCase c, NaiveKin kin, bool another_name) {
    const RandomCase whole = c;
    std::vector<std::vector<Indication>> parts;
    for (const auto &i : c.indications) parts.push_back({i});
    while (join_a_pair(set, c, whole, kin, parts)) {
    }
    for (std::size_t k = 0; k < parts.size(); ++k) {
        std::sort(parts[k].begin(), parts[k].end(),
                  [](const Indication &a, const Indication &b) { return a.number < b.number; });
        c.indications[k].type = parts[k].front().type;
        for (std::size_t n = parts[k].size(); another_name && n-- > 0;)
            if (parts[k][n].type != parts[k].front().type) c.indications[k].type = parts[k][n].type;
    }
    return c;
}

} // namespace beadbook::test
