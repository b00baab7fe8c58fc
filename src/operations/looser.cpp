#include "operations/looser.hpp"

#include "criteria/extend.hpp"
#include "criteria/owners_copy.hpp"
#include "criteria/provenance.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// Looser for some finds or facts at least.
bool lets_more_through(CompareOutcome outcome) {
    return outcome == CompareOutcome::looser || outcome == CompareOutcome::never_stricter ||
           outcome == CompareOutcome::either || outcome == CompareOutcome::only_second;
}

/// A shipped set with the numbers that stand in its blanks in another one that extends it.
std::shared_ptr<const CriteriaSet> filled_alike(const CriteriaSet &shipped, const CriteriaSet &own) {
    return with_owners_copy(std::shared_ptr<const CriteriaSet>(std::shared_ptr<void>(), &shipped),
                            {own.fillings, {}});
}

/// The class of a shipped set that one of a file of one's own is held against.
std::optional<std::size_t> class_there(const CriteriaSet &own, std::size_t class_index,
                                       const CriteriaSet &shipped) {
    const std::string &id = own.classes[class_index].id;
    // By its name first: a class B that takes over the C below it is read as B.
    if (const auto there = shipped.class_index(id)) return there;
    if (shipped_below(own) == shipped.name)
        if (const auto called = class_below(own.text, id, shipped.name)) return shipped.class_index(*called);
    return own.classes.size() == shipped.classes.size() ? std::optional(class_index) : std::nullopt;
}

bool is_at(const ThicknessStretch &stretch, const Coupon &coupon) {
    if (!coupon.values.has(Quantity::thinner)) return true;
    const Exact thickness(coupon.values[Quantity::thinner]);
    return Exact(stretch.from) <= thickness && (!stretch.to || thickness <= Exact(*stretch.to));
}

} // namespace

std::vector<Looser> looser_than_shipped(const CriteriaSet &own, std::size_t class_index, const Coupon &coupon,
                                        Unit unit) {
    std::vector<Looser> out;
    for (const CriteriaSet *one_alike : shipped_alike(own)) {
        const auto shipped = filled_alike(*one_alike, own);
        const auto other = class_there(own, class_index, *shipped);
        if (!other) continue;
        const std::string &called = shipped->classes[*other].id;
        Looser one{shipped->name, called == own.classes[class_index].id ? "" : called, {}};
        for (const auto &thing : compare_classes(own, class_index, *shipped, *other, coupon, unit).things)
            for (const auto &stretch : thing.stretches) {
                if (!lets_more_through(stretch.outcome) || !is_at(stretch, coupon)) continue;
                const std::string &id = stretch.first.by_a_rule() ? own.rules[stretch.first.rule].id
                                        : stretch.second.by_a_rule()
                                            ? shipped->rules[stretch.second.rule].id
                                            : (thing.of_second ? *shipped : own).rules[thing.rule].id;
                if (std::find(one.rules.begin(), one.rules.end(), id) == one.rules.end())
                    one.rules.push_back(id);
            }
        if (!one.rules.empty()) out.push_back(std::move(one));
    }
    return out;
}

} // namespace beadbook
