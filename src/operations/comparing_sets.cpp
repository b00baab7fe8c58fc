// Which classes of two sets go together, and in which units.
#include "criteria/extend.hpp"
#include "measure/text.hpp"
#include "operations/at_thickness.hpp"
#include "operations/class_asked.hpp"
#include "operations/comparing.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// "S is B": class here, class of the set that it extends, as its file says.
std::vector<std::pair<std::size_t, std::size_t>> stands_for(const CriteriaSet &set, const CriteriaSet &base) {
    std::vector<std::pair<std::size_t, std::size_t>> out;
    if (set.extends != base.name) return out;
    Issues issues;
    const auto none = [](const std::string &) { return std::nullopt; }; // all is below the file
    for (const auto &[mine, there] : read_extended(set.text, none, issues).stands_for)
        if (const auto here = set.class_index(mine), as = base.class_index(there); here && as)
            out.emplace_back(*here, *as);
    return out;
}

/// The class of `other` that goes with one of `set`, where one of the two extends the other and says so.
std::optional<std::size_t> class_by_base(const CriteriaSet &set, std::size_t index,
                                         const CriteriaSet &other) {
    for (const auto &[here, there] : stands_for(set, other))
        if (here == index) return there;
    std::optional<std::size_t> only;
    for (const auto &[there, here] : stands_for(other, set)) {
        if (here != index) continue;
        if (only) return std::nullopt; // two stand for it
        only = there;
    }
    return only;
}

/// The class of `other` that goes with one of `set`: what its file says, of the same name, or the only one.
std::size_t class_beside(const CriteriaSet &set, std::size_t index, const CriteriaSet &other,
                         const char *field) {
    if (const auto said = class_by_base(set, index, other)) return *said;
    if (const auto same = other.class_index(set.classes[index].id)) return *same;
    if (other.classes.size() == 1) return 0;
    throw lacking(field, "which class of " + other.name + " goes with class " + set.classes[index].id +
                             " of " + set.name + "? it has " + listed(other.class_names()));
}

std::vector<std::pair<std::size_t, std::size_t>>
class_pairs(const CriteriaSet &first, const CriteriaSet &second, const CompareRequest &request) {
    std::vector<std::pair<std::size_t, std::size_t>> out;
    if (!request.class_id.empty()) {
        const std::size_t a = class_asked(first, request.class_id, "class");
        out.emplace_back(a, request.as_class.empty() ? class_beside(first, a, second, "as-class")
                                                     : class_asked(second, request.as_class, "as-class"));
    } else if (!request.as_class.empty()) {
        const std::size_t b = class_asked(second, request.as_class, "as-class");
        out.emplace_back(class_beside(second, b, first, "class"), b);
    } else {
        out = stands_for(first, second);
        if (out.empty())
            for (const auto &[there, here] : stands_for(second, first)) out.emplace_back(here, there);
        const bool said = !out.empty();
        for (std::size_t a = 0; !said && a < first.classes.size(); ++a)
            if (const auto b = second.class_index(first.classes[a].id)) out.emplace_back(a, *b);
        if (out.empty() && first.classes.size() == 1)
            out.emplace_back(0, class_beside(first, 0, second, "as-class"));
        if (out.empty() && second.classes.size() == 1)
            out.emplace_back(class_beside(second, 0, first, "class"), 0);
        if (out.empty())
            throw lacking("class", "no class of " + first.name + " is called like one of " + second.name +
                                       ": which goes with which? " + first.name + " has " +
                                       listed(first.class_names()) + ", " + second.name + " has " +
                                       listed(second.class_names()));
    }
    return out;
}

/// What is printed in both units differs, perhaps, where the work is measured in the other one.
void take_other_unit(const ComparedSets &all, const Coupon &coupon, ComparedClasses &classes) {
    const auto printed_twice = [&](const ComparedThing &thing) {
        const auto twice = [](const CriteriaSet &set, std::size_t c, const SaidOfThing &said) {
            return said.kind == SaidOfThing::Kind::value &&
                   set.rules[said.rule].limits[c].formula.has_twins();
        };
        return std::any_of(thing.stretches.begin(), thing.stretches.end(), [&](const ThicknessStretch &one) {
            return twice(*all.first, classes.first, one.first) ||
                   twice(*all.second, classes.second, one.second);
        });
    };
    std::vector<ComparedThing *> asked;
    for (auto &thing : classes.things)
        if (thing.all_equal() && printed_twice(thing)) asked.push_back(&thing);
    if (asked.empty()) return;
    Coupon in_other = coupon;
    const Unit measured = coupon.values.measured_in().value_or(all.unit);
    const Unit unit = measured == Unit::inch ? Unit::millimetre : Unit::inch;
    in_other.values.measure_in(unit);
    const auto other =
        compare_classes(*all.first, classes.first, *all.second, classes.second, in_other, unit);
    for (ComparedThing *thing : asked)
        thing->differs_in_other_unit =
            std::any_of(other.things.begin(), other.things.end(), [&](const ComparedThing &one) {
                return one.exam == thing->exam && one.of_second == thing->of_second &&
                       one.rule == thing->rule && (one.types & thing->types).any() && !one.all_equal();
            });
}

} // namespace

ComparedSets compare_sets(std::shared_ptr<const CriteriaSet> first, std::shared_ptr<const CriteriaSet> second,
                          const CompareRequest &request) {
    check_tells_no_thickness(request.coupon);
    ComparedSets out;
    out.first = std::move(first);
    out.second = std::move(second);
    out.coupon = request.coupon;
    out.unit = request.coupon.fixed_unit().value_or(out.first->unit);
    for (const auto &[a, b] : class_pairs(*out.first, *out.second, request))
        out.classes.push_back(
            compare_classes(*out.first, a, *out.second, b, request.coupon.facts(), out.unit));
    for (auto &one : out.classes) take_other_unit(out, request.coupon.facts(), one);
    out.otherwise = written_otherwise(*out.first, *out.second);
    return out;
}

} // namespace beadbook
