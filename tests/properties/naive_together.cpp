#include "naive_together.hpp"

#include "naive_pieces.hpp"

#include <algorithm>

namespace beadbook::test {
namespace {

const ImperfectionType &type_of(TypeId id) { return Vocabulary::shipped()[id]; }

bool one_kind(TypeId a, TypeId b) {
    if (naive_family(a) == naive_family(b)) return true;
    if (!type_of(a).name.ends_with(" indication") && !type_of(b).name.ends_with(" indication")) return false;
    const Shape x = type_of(a).shape, y = type_of(b).shape;
    return !(x == Shape::linear && y == Shape::rounded) && !(x == Shape::rounded && y == Shape::linear);
}

/// The side that all of its parts are on.
int side_of(const RandomCase &c, const Thing &t) {
    int side = -1;
    for (const auto &i : c.indications)
        if (std::find(t.numbers.begin(), t.numbers.end(), i.number) != t.numbers.end())
            side = side < 0 || side == i.words[0] ? i.words[0] : 0;
    return side;
}

std::int64_t way(const Coupon &coupon, const Thing &a, const Thing &b) {
    std::int64_t least = longest_length.nm;
    for (std::int64_t turn = -2; turn <= 2; ++turn) {
        if (turn != 0 && !coupon.around()) continue;
        const std::int64_t by = turn * coupon.around().value_or(0);
        least = std::min(least, std::max(b.from + by - a.to, a.from - b.to - by));
    }
    return least;
}

bool may_be_the_same(const RandomCase &c, const Thing &a, const Thing &b) {
    if (a.exam == b.exam) return false;
    const int side = side_of(c, a), other = side_of(c, b);
    if (side > 0 && other > 0 && side != other) return false;
    const std::int64_t longer = std::max(a.to - a.from, b.to - b.from);
    const std::int64_t scatter = std::max(nm_per_inch / 128, longer / 10);
    if (way(c.coupon, a, b) > scatter) return false;
    if (std::max(b.across_from - a.across_to, a.across_from - b.across_to) > scatter) return false;
    for (const TypeId x : a.types)
        for (const TypeId y : b.types)
            if (one_kind(x, y)) return true;
    return false;
}

} // namespace

std::vector<Thing> naive_once(const Rule &rule, const RandomCase &c, std::vector<Thing> found) {
    const auto amount = [&](const Thing &t) {
        return Exact(t.measures[rule.kind == Rule::Kind::sum ? rule.summed : Quantity::size]);
    };
    const auto number = [](const Thing &t) { return *std::min_element(t.numbers.begin(), t.numbers.end()); };
    std::vector<Thing> kept;
    while (!found.empty()) {
        std::size_t next = 0;
        for (std::size_t i = 1; i < found.size(); ++i)
            if (amount(found[i]) > amount(found[next]) ||
                (amount(found[i]) == amount(found[next]) && number(found[i]) < number(found[next])))
                next = i;
        const Thing one = found[next];
        found.erase(found.begin() + static_cast<std::ptrdiff_t>(next));
        if (std::none_of(kept.begin(), kept.end(),
                         [&](const Thing &other) { return may_be_the_same(c, one, other); }))
            kept.push_back(one);
    }
    return kept;
}

bool naive_side_by_side(const CriteriaSet &set, const Indication &a, const Indication &b) {
    return a.exam != b.exam && std::any_of(set.rules.begin(), set.rules.end(), [&](const Rule &rule) {
               return (rule.kind == Rule::Kind::sum || rule.kind == Rule::Kind::count ||
                       rule.kind == Rule::Kind::gap || rule.only_with) &&
                      rule.subject.covers(a.type, a.exam) && rule.subject.covers(b.type, b.exam);
           });
}

} // namespace beadbook::test
