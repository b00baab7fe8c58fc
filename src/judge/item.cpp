#include "judge/item.hpp"

#include "judge/judgement.hpp"
#include "judge/merge.hpp"
#include "judge/nearest_gaps.hpp"

#include <algorithm>

namespace beadbook {

bool has_open_end(const Indication &found, const Vocabulary &vocabulary) {
    return found.place && found.place->from == found.place->to && !found.measures.has(Quantity::length) &&
           !vocabulary[found.type].measured;
}

bool round_in_spite_of_name(const ImperfectionType &type, const Environment::Values &measures) {
    return type.shape == Shape::linear && measures.has(Quantity::length) && measures.has(Quantity::width) &&
           measures[Quantity::length] <= measures[Quantity::width];
}

namespace {

/// By the set's own notion, with that width.
Truth is_linear(const Item &item, const CriteriaSet &set, const Coupon &coupon,
                const std::optional<Exact> &width = std::nullopt) {
    Environment::Values measures = item.measures.get();
    if (width) measures.set(Quantity::width, *width);
    Missing missing;
    return set.linear->compare(Environment{coupon.values, &measures}, missing);
}

/// How deep or high a hollow or an inclusion is counts as its size, where that is the most.
void size_by_all_dimensions(Item &item) {
    if (!item.measures.has(Quantity::size)) return;
    for (const Quantity q : {Quantity::depth, Quantity::height})
        if (item.measures.has(q) && item.measures[q] > item.measures[Quantity::size])
            item.measures.set(Quantity::size, item.measures[q]);
}

/// A joined one has several names, so its measures decide.
Shape shape_of(const Item &item, const CriteriaSet &set, const Coupon &coupon, const Indication &first,
               const ImperfectionType &type, int engine, Shapes shapes) {
    if (shapes == Shapes::by_name && item.members.size() == 1 &&
        round_in_spite_of_name(type, item.measures.get()))
        return type.shape;
    if (!set.linear) return type.shape;
    if (first.narrowest && is_linear(item, set, coupon, first.narrowest) == Truth::yes) return Shape::linear;
    const bool measured = item.measures.has(Quantity::length) && item.measures.has(Quantity::width);
    const bool open = first.width_open && engine >= first_to_doubt_widths;
    if (!measured && !open) return type.shape;
    const Truth linear = is_linear(item, set, coupon);
    return linear == Truth::yes ? Shape::linear : linear == Truth::no ? Shape::rounded : Shape::unknown;
}

/// Whether a clause may leave it out for its size: each of those joined, whichever lies first.
bool speaks_of(const Relevance &clause, const Item &item, const std::vector<Indication> &indications,
               int engine) {
    const auto may = [&](std::size_t m) {
        return clause.subject.covers(indications[m].type, indications[m].exam) &&
               (engine < first_that_counts_groups || !clause.groups[indications[m].type]);
    };
    if (engine < first_that_counts_groups) return may(item.members.front());
    return std::all_of(item.members.begin(), item.members.end(), may);
}

void settle_relevance(Item &item, const CriteriaSet &set, const Coupon &coupon,
                      const std::vector<Indication> &indications, std::size_t for_class, int engine) {
    for (const auto &clause : set.relevance) {
        if (!clause.classes[for_class] || !speaks_of(clause, item, indications, engine)) continue;
        Missing missing;
        Truth ignored = holds_for(clause.ignore, coupon, item.measures.get(), item.words, missing);
        // Too small alone, but perhaps not as one with a neighbour.
        if (ignored == Truth::yes && item.may_merge.any()) {
            ignored = Truth::unknown;
            missing |= item.may_merge;
        }
        if (ignored == Truth::no) continue;
        if (ignored == Truth::yes && item.irrelevant_by < 0)
            item.irrelevant_by = static_cast<int>(&clause - set.relevance.data());
        item.counts = both(item.counts, ignored == Truth::yes ? Truth::no : Truth::unknown);
        if (ignored == Truth::unknown) item.doubts |= missing;
    }
}

/// Not all widths are known, but it is too long for the narrowest that it can have.
bool is_linear_for_sure(const Item &item, const CriteriaSet &set, const Coupon &coupon) {
    return set.linear && item.narrow_at_most &&
           is_linear(item, set, coupon, Exact(*item.narrow_at_most)) == Truth::yes;
}

/// The joined one's shape goes by its length and its narrowest member: a wide or round neighbour must not
/// make a linear one round, whose limit is larger.
template <class SettleShape>
void merge_and_reshape(std::vector<Item> &items, const CriteriaSet &set, const Coupon &coupon,
                       const std::vector<Indication> &indications, int engine, SettleShape settle_shape) {
    for (auto &item : items) {
        item.has_linear = item.shape == Shape::linear;
        if (item.measures.has(Quantity::width)) item.narrowest = item.measures.get()[Quantity::width];
        item.narrow_at_most = item.narrowest;
        if (!item.narrowest && item.measures.has(Quantity::length))
            item.narrow_at_most = item.measures.get()[Quantity::length];
    }
    const Rings rings = engine < first_with_rings ? Rings::open : Rings::closed;
    for (const auto &clause : set.merges) merge_items(items, clause, indications, coupon, rings);
    for (auto &item : items) {
        if (item.members.size() == 1) continue;
        const bool open = item.shape == Shape::unknown;
        if (engine >= first_with_bounds && !item.narrowest) {
            item.shape = item.has_linear || is_linear_for_sure(item, set, coupon) ? Shape::linear
                         : open                                                   ? Shape::unknown
                                                                                  : Shape::rounded;
            continue;
        }
        const Measures joined = item.measures;
        if (item.narrowest) item.measures.set(Quantity::width, *item.narrowest);
        settle_shape(item);
        item.measures = joined;
        if (item.has_linear)
            item.shape = Shape::linear;
        else if (open && item.shape == Shape::rounded)
            item.shape = Shape::unknown;
    }
}

/// A comparison that hangs on missing data, decided by what is known: the largest of a joined one is at least
/// that of any part, and a lone find's way to its neighbour is longer than any.
Truth by_bounds(const Condition &c, const Coupon &coupon, const Environment::Values &measures,
                const LeastKnown &least) {
    const auto asked = c.left.lone_quantity();
    if (!asked) return Truth::unknown;
    const auto q = static_cast<Quantity>(*asked);
    const bool beyond = is_way_to_nearest(q) && measures.has(q) && measures[q] == longest_length.nm;
    const std::int64_t at_least = least[q];
    if (!beyond && at_least == 0) return Truth::unknown;
    Truth all = Truth::yes;
    for (const auto &edge : c.edges) {
        const bool upper = is_maximum(edge.compare);
        const Evaluated right = edge.right.limit(Environment{coupon.values, &measures}, edge.compare);
        const bool kept = !beyond && right.known() && holds(Exact(at_least), edge.compare, right.value);
        if (upper && (beyond || (right.known() && !kept))) return Truth::no;
        if (!beyond && (upper || !kept)) all = Truth::unknown;
    }
    return all;
}

} // namespace

Truth holds_for(const std::vector<Condition> &conditions, const Coupon &coupon,
                const Environment::Values &measures, const std::array<std::uint8_t, attribute_count> &words,
                Missing &missing, const LeastKnown *least) {
    Truth all = Truth::yes;
    Missing lacks;
    for (const auto &c : conditions) {
        Truth one = Truth::yes;
        switch (c.kind) {
        case Condition::Kind::comparison: {
            Missing of_this;
            one = c.compare(Environment{coupon.values, &measures}, of_this);
            if (one == Truth::unknown && least) one = by_bounds(c, coupon, measures, *least);
            if (one == Truth::unknown) lacks |= of_this;
            break;
        }
        case Condition::Kind::word:
            one = c.slot < fact_count ? c.words_said(coupon.said(c.slot), lacks)
                                      : c.word(words[c.slot - fact_count], lacks);
            break;
        case Condition::Kind::not_past:
        case Condition::Kind::within: one = Truth::unknown; break; // a set names no days
        }
        if (one == Truth::no) return Truth::no;
        all = both(all, one);
    }
    missing |= lacks;
    return all;
}

std::vector<Item> make_items(const CriteriaSet &set, const Coupon &coupon,
                             const std::vector<Indication> &indications, const Vocabulary &vocabulary,
                             int engine, Shapes shapes, std::size_t for_class) {
    std::vector<Item> items;
    items.reserve(indications.size());
    for (std::size_t i = 0; i < indications.size(); ++i) {
        Item &item = items.emplace_back();
        item.members.push_back(i);
        item.place = indications[i].place;
        item.across = indications[i].across;
        item.measures = Measures(indications[i].measures);
        item.open_end = engine >= first_with_bounds && has_open_end(indications[i], vocabulary);
        item.words = indications[i].words;
        if (engine >= first_to_ask_where && vocabulary[indications[i].type].is_volume())
            size_by_all_dimensions(item);
    }
    const auto settle_shape = [&](Item &item) {
        const Indication &first = indications[item.members.front()];
        item.shape = shape_of(item, set, coupon, first, vocabulary[first.type], engine, shapes);
    };
    for (auto &item : items) settle_shape(item);
    if (!set.merges.empty()) merge_and_reshape(items, set, coupon, indications, engine, settle_shape);
    for (auto &item : items) settle_relevance(item, set, coupon, indications, for_class, engine);
    // What does not count is nobody's neighbour.
    set_nearest_gaps(items, set, coupon, indications, vocabulary, engine);
    return items;
}

} // namespace beadbook
