#include "judge/item.hpp"

#include "judge/merge.hpp"
#include "judge/neighbours.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// The least free distance along the weld to another item. With an unplaced one somewhere, or a turn of
/// unknown length, nobody's nearest neighbour is known; a lone one has the longest possible way to go.
void set_nearest_gaps(std::vector<Item> &items, const Coupon &coupon) {
    if (coupon.turn_unknown() && items.size() > 1) return;
    std::vector<Span> spans;
    for (const auto &item : items) {
        if (!item.place) return;
        spans.push_back(*item.place);
    }
    std::vector<std::int64_t> nearest(items.size(), longest_length.nm);
    for (const Pair &pair : neighbour_pairs(spans, coupon.around()))
        for (const std::size_t i : {pair.first, pair.second}) nearest[i] = std::min(nearest[i], pair.gap);
    for (std::size_t i = 0; i < items.size(); ++i)
        items[i].measures.set(Quantity::nearest_gap, Exact(nearest[i]));
}

Shape shape_of(const Item &item, const CriteriaSet &set, const Coupon &coupon, const ImperfectionType &type) {
    const bool measured = item.measures.has(Quantity::length) && item.measures.has(Quantity::width);
    if (!set.linear || !measured) return type.shape;
    Missing missing;
    const Truth linear = set.linear->compare(Environment{coupon.values, &item.measures.get()}, missing);
    return linear == Truth::yes ? Shape::linear : linear == Truth::no ? Shape::rounded : Shape::unknown;
}

void settle_relevance(Item &item, const CriteriaSet &set, const Coupon &coupon, const Indication &first) {
    for (const auto &clause : set.relevance) {
        if (!clause.subject.covers(first.type, first.exam)) continue;
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

/// The joined one's shape goes by its length and its narrowest member: a wide or round neighbour must not
/// make a linear one round, whose limit is larger.
template <class SettleShape>
void merge_and_reshape(std::vector<Item> &items, const CriteriaSet &set, const Coupon &coupon,
                       const std::vector<Indication> &indications, SettleShape settle_shape) {
    for (auto &item : items) {
        item.has_linear = item.shape == Shape::linear;
        if (item.measures.has(Quantity::width)) item.narrowest = item.measures[Quantity::width];
    }
    for (const auto &clause : set.merges) merge_items(items, clause, indications, coupon);
    for (auto &item : items) {
        if (item.members.size() == 1) continue;
        const bool open = item.shape == Shape::unknown;
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

} // namespace

Truth holds_for(const std::vector<Condition> &conditions, const Coupon &coupon,
                const Environment::Values &measures, const std::array<std::uint8_t, attribute_count> &words,
                Missing &missing) {
    Truth all = Truth::yes;
    Missing lacks;
    for (const auto &c : conditions) {
        Truth one = Truth::yes;
        switch (c.kind) {
        case Condition::Kind::comparison:
            one = c.compare(Environment{coupon.values, &measures}, lacks);
            break;
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
                             const std::vector<Indication> &indications, const Vocabulary &vocabulary) {
    std::vector<Item> items;
    items.reserve(indications.size());
    for (std::size_t i = 0; i < indications.size(); ++i) {
        Item item;
        item.members.push_back(i);
        item.place = indications[i].place;
        item.across = indications[i].across;
        item.measures = Measures(indications[i].measures);
        item.words = indications[i].words;
        items.push_back(std::move(item));
    }
    const auto settle_shape = [&](Item &item) {
        item.shape = shape_of(item, set, coupon, vocabulary[indications[item.members.front()].type]);
    };
    for (auto &item : items) settle_shape(item);
    if (!set.merges.empty()) merge_and_reshape(items, set, coupon, indications, settle_shape);
    if (set.needs_nearest_gap) set_nearest_gaps(items, coupon);
    for (auto &item : items) {
        const Indication &first = indications[item.members.front()];
        settle_relevance(item, set, coupon, first);
    }
    return items;
}

} // namespace beadbook
