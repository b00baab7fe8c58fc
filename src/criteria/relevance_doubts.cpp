// What does not count, and should.
#include "criteria/doubts.hpp"
#include "criteria/limit_order.hpp"
#include "measure/print.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// `size at most 1/4 in`, and what of the find it bounds.
const Condition *bound_of_size(const Relevance &one) {
    for (const auto &c : one.ignore)
        if (c.kind == Condition::Kind::comparison && c.left.lone_quantity() && c.edges.size() == 1 &&
            is_maximum(c.edges[0].compare))
            return &c;
    return nullptr;
}

/// The largest dimension is no less than any other.
bool bounds_measure(const Condition &bound, const Formula &measure) {
    return bound.left.lone_quantity() == measure.lone_quantity() ||
           (bound.left.lone_quantity() == slot_of(Quantity::size) &&
            is_one_of(measure.lone_quantity(), {Quantity::length, Quantity::width}));
}

/// Finds of which both speak, as far as shapes that their names deny tell.
bool both_speak(const Relevance &one, const Rule &rule, const Vocabulary &vocabulary) {
    if ((rule.subject.exams & one.subject.exams).none()) return false;
    for (std::size_t t = 0; t < vocabulary.size(); ++t) {
        const auto &type = vocabulary[static_cast<TypeId>(t)];
        // A group that it names not is not reached by it.
        if (rule.subject.types[t] && one.subject.types[t] && !one.groups[t] && !type.measured &&
            (rule.shape == Shape::unknown || type.shape == Shape::unknown || type.shape == rule.shape))
            return true;
    }
    return false;
}

/// What does not count is never over the limit, though the limit is smaller, of some coupons at least.
void check_beside(const CriteriaSet &set, const Relevance &one, const Rule &rule,
                  const Vocabulary &vocabulary, Doubts &doubts) {
    const Condition *bound = bound_of_size(one);
    if (!bound || rule.kind != Rule::Kind::each || !is_maximum(rule.compare) ||
        !rule.measure.lone_quantity() || !bounds_measure(*bound, rule.measure) ||
        !both_speak(one, rule, vocabulary))
        return;
    for (std::size_t c = 0; c < set.classes.size(); ++c) {
        if (rule.limits[c].kind != Limit::Kind::value || !one.classes[c]) continue;
        std::vector<Condition> all = conditions_of(set, rule);
        for (const auto &other : one.ignore)
            if (&other != bound) all.push_back(other);
        const Formula &limit = rule.limits[c].formula;
        bool over = true, everywhere = true;
        for (const Unit unit : units_to_try(set, rule)) {
            const Formula &least = bound->edges[0].right;
            over = over && may_be_over(where_hold(all, unit), least, limit, unit) == true;
            everywhere = everywhere && may_be_over(where_hold(all, unit), limit, least, unit) == false;
        }
        if (over)
            return doubts.tell("relevance-over-limit", rule.id, rule.where_from, "rules." + rule.id,
                               "its limit for class " + set.classes[c].id + ", '" + rule.limits[c].text +
                                   "', lies under what relevance '" + one.id + "' leaves out" +
                                   (everywhere ? "" : ", of some coupons") +
                                   ", so what is over it may not count");
    }
}

/// So large a find nobody leaves uncounted. Common practice, no source; what
/// shipped sets leave out is smaller.
constexpr std::int64_t most_uncounted = 5 * nm_per_mm;

void check_uncounted(const CriteriaSet &set, const Relevance &one, Doubts &doubts) {
    const Condition *bound = bound_of_size(one);
    if (!bound || !is_one_of(bound->left.lone_quantity(), {Quantity::size, Quantity::length}) ||
        !bound->edges[0].right.is_constant() ||
        bound->edges[0].right.constant_value() <= Exact(most_uncounted))
        return;
    doubts.tell("limit-beyond-belief", one.id, one.where_from, "relevance." + one.id,
                "'" + bound->text + "' is more than " +
                    print(Exact(most_uncounted), Dimension::length, set.unit) +
                    ", and nobody leaves so large ones uncounted: are the unit "
                    "and the decimal point right?");
}

} // namespace

void check_relevance(const CriteriaSet &set, const Vocabulary &vocabulary, Doubts &doubts) {
    for (const auto &one : set.relevance) {
        check_uncounted(set, one, doubts);
        for (const auto &rule : set.rules) check_beside(set, one, rule, vocabulary, doubts);
    }
}

} // namespace beadbook
