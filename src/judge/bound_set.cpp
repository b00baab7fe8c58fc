#include "judge/bound_set.hpp"

#include "judge/item.hpp"
#include "judge/judgement.hpp"

#include <algorithm>

namespace beadbook {
namespace {

Settled settled(const std::vector<Condition> &when, const Coupon &coupon) {
    Settled out;
    if (!when.empty()) out.truth = holds_for(when, coupon, {}, {}, out.lacks);
    return out;
}

BoundWindow bound(const Window &window, const Coupon &coupon) {
    BoundWindow out;
    out.window = &window;
    switch (window.kind) {
    case Window::Kind::whole_weld: out.whole = true; return out;
    case Window::Kind::area: out.length = window.longest_side; return out;
    case Window::Kind::length: break;
    }
    const Evaluated length = window.length.evaluate(Environment{coupon.values});
    out.missing = length.missing;
    if (!length.known()) return out;
    out.length = std::min(length.value, Exact(longest_length.nm));
    // A fraction of a nanometre is given to the welder's disadvantage: the window is rounded up.
    const Int128 down = out.length->num() / out.length->den();
    out.width = static_cast<std::int64_t>(*out.length == Exact::whole(down) ? down : down + 1);
    out.whole = coupon.line.length && out.width >= coupon.line.length->nm;
    return out;
}

/// A number of the standard that its limit or window still lacks.
bool lacks_number(const Rule &rule, std::size_t class_index) {
    const Limit &limit = rule.limits[class_index];
    const Window *window = rule.window(class_index);
    return (limit.kind == Limit::Kind::value && limit.formula.has_blanks()) ||
           (window && window->kind == Window::Kind::length && window->length.has_blanks());
}

/// Rules that some find, or the coupon as a whole, is held against.
std::vector<bool> asked_of(const CriteriaSet &set, const std::vector<Indication> &found) {
    std::vector<bool> out;
    for (const auto &rule : set.rules)
        out.push_back(rule.kind == Rule::Kind::combine || rule.kind == Rule::Kind::coupon ||
                      rule.must_be_measured);
    for (const auto &one : found)
        for (const std::uint16_t r : set.rules_for(one.type, one.exam)) out[r] = true;
    return out;
}

} // namespace

BoundSet::BoundSet(const CriteriaSet &criteria, const Coupon &facts, const Vocabulary &words, int whose,
                   const std::vector<Indication> *found)
    : set(criteria), vocabulary(words), coupon(facts), engine(whose),
      all_classes_(static_cast<ClassBits>((std::uint64_t{1} << criteria.classes.size()) - 1)),
      rules_(criteria.rules.size()), limits_(criteria.rules.size() * criteria.classes.size()) {
    const std::vector<bool> asked = found ? asked_of(set, *found) : std::vector<bool>(rules_.size(), true);
    for (std::size_t r = 0; r < rules_.size(); ++r) {
        if (set.rules[r].only_with) only_with.push_back(r);
        if (asked[r]) bind_rule(r);
    }
    for (const auto &part : set.scope)
        scope.push_back({settled(part.only_if, coupon), settled(part.when, coupon)});
    for (const auto &exam : set.required) required.push_back(settled(exam.when, coupon));
    for (const auto &gap : set.gaps) gaps.push_back(settled(gap.when, coupon));
    for (std::size_t c = 0; c < set.classes.size(); ++c) one_of_any_.push_back(methods_judged(c));
    bind_coupon();
}

void BoundSet::bind_coupon() {
    const auto said = [&](Fact fact) { return coupon.said(static_cast<Slot>(fact)) != 0; };
    const auto is = [&](Fact fact, std::string_view word) {
        return coupon.facts[static_cast<Slot>(fact)] == word_index(info(fact), word);
    };
    if (coupon.values.has(Quantity::longest_leg)) fillet_size = vocabulary.find("fillet size");
    // What by its name is not magnetic is not said to be, nor what is not to be (common practice, no source).
    const bool has_magnetic = engine >= first_to_ask_where && coupon.has_magnetic;
    if (said(Fact::magnetic) && (coupon.not_magnetic || has_magnetic || said(Fact::material)))
        metal_agrees = !(coupon.not_magnetic && is(Fact::magnetic, "yes")) &&
                       !(has_magnetic && is(Fact::magnetic, "no"));
    const bool tube =
        said(Fact::form) ? is(Fact::form, "tube") : coupon.values.has(Quantity::outside_diameter);
    seam_untold = tube && !said(Fact::seam);
    if (set.scope_not_read())
        for (const Fact fact : {Fact::joint, Fact::material})
            if (!said(fact)) untold |= lack_of(fact);
}

std::vector<Exam> BoundSet::methods_judged(std::size_t class_index) const {
    if (engine < first_that_asks_what_is_judged) return {};
    for (std::size_t r = 0; r < required.size(); ++r)
        if (set.required[r].classes[class_index] && required[r].truth != Truth::no) return {};
    std::vector<Exam> out;
    for (std::size_t x = 0; x < exam_count; ++x) {
        if (coupon.called_for[x]) return {};
        if (std::any_of(set.rules.begin(), set.rules.end(), [&](const Rule &rule) {
                return rule.subject.exams[x] && rule.limits[class_index].kind != Limit::Kind::other;
            }))
            out.push_back(static_cast<Exam>(x));
    }
    return out;
}

void BoundSet::bind_rule(std::size_t index) {
    const Rule &rule = set.rules[index];
    BoundRule &out = rules_[index];
    if (rule.kind == Rule::Kind::combine) {
        combining.push_back(index);
        borderline.resize(rules_.size());
        for (const std::size_t other : rule.combined) borderline[other] = rule.borderline;
    }
    if (rule.kind == Rule::Kind::coupon) of_coupon.push_back(index);
    if (rule.must_be_measured) to_be_measured.push_back(index);
    for (std::size_t c = 0; c < rule.limits.size(); ++c)
        if (lacks_number(rule, c)) out.blank |= ClassBits{1} << c;
    out.applies = settled(rule.when, coupon);
    if (out.applies.truth == Truth::no) return;
    for (std::size_t c = 0; c < rule.limits.size(); ++c) {
        const Limit &limit = rule.limits[c];
        out.by_kind[static_cast<std::size_t>(limit.kind)] |= ClassBits{1} << c;
        if (limit.kind == Limit::Kind::value)
            limits_[index * set.classes.size() + c] = BoundLimit(limit, rule.compare, coupon);
    }
    if (rule.kind == Rule::Kind::each) out.lone_measure = rule.measure.lone_quantity();
    if (rule.windows.empty()) out.windows.emplace_back();
    for (const auto &window : rule.windows) {
        out.windows.push_back(bound(window, coupon));
        if (!rule.window_by_class) break;
    }
}

} // namespace beadbook
