#include "judge/evaluation.hpp"

#include <algorithm>
#include <limits>

namespace beadbook {

Evaluation::Evaluation(const CriteriaSet &criteria, const Coupon &facts, const std::vector<Indication> &found,
                       std::vector<Item> made, int whose)
    : set(criteria), coupon(facts), indications(found), items(std::move(made)), engine(whose),
      classes(criteria.classes.size()), nearest_(criteria.classes.size()), covered_(items.size()),
      may_cover_(items.size()) {
    for (const auto &rule : set.rules) {
        if (rule.kind != Rule::Kind::combine) continue;
        share_.resize(set.rules.size());
        borderlines_.resize(set.rules.size() * set.classes.size());
        for (const std::size_t r : rule.combined) share_[r] = rule.borderline;
    }
}

std::vector<int> Evaluation::numbers_of(std::span<const std::uint32_t> of_items) const {
    std::vector<int> out;
    for (const std::uint32_t i : of_items)
        for (const std::size_t m : items[i].members) out.push_back(indications[m].number);
    std::sort(out.begin(), out.end());
    return out;
}

bool Evaluation::holds_back(std::size_t rule, std::size_t class_index, Exam exam) const {
    return std::any_of(held_back_.begin(), held_back_.end(), [&](const HeldBack &one) {
        return one.rule == rule && one.class_index == class_index && one.exam == exam;
    });
}

std::vector<Finding> Evaluation::take_back(std::size_t rule, std::size_t class_index, Exam exam) const {
    std::vector<Finding> out;
    for (const auto &one : held_back_)
        if (one.rule == rule && one.class_index == class_index && one.exam == exam)
            out.push_back(one.finding);
    return out;
}

void Evaluation::untrace(std::size_t rule, std::size_t class_index, Exam exam) {
    std::erase_if(traces_, [&](const Traced &row) {
        return row.rule == rule && row.class_index == class_index && row.item != Traced::whole_coupon &&
               indications[items[row.item].members.front()].exam == exam;
    });
}

double ratio_of(const Exact &measured, const Exact &limit, Compare compare) {
    const bool upper = is_maximum(compare);
    const double above = (upper ? measured : limit).to_double();
    const double below = (upper ? limit : measured).to_double();
    if (below == 0) return above == 0 ? 1 : std::numeric_limits<double>::infinity();
    return above / below;
}

void Evaluation::kept(std::size_t class_index, std::size_t rule, const Exact &measured, const Exact &limit,
                      std::span<const std::uint32_t> of_items, std::optional<Span> place) {
    Nearest &best = nearest_[class_index];
    const double ratio = ratio_of(measured, limit, set.rules[rule].compare);
    if (ratio < best.ratio) return;
    // Equal ones are told apart by rule, then by indication, so that the order of entry never shows.
    if (ratio == best.ratio &&
        (rule > best.rule ||
         (rule == best.rule && numbers_of(of_items) >= numbers_of({best.items.data(), best.items.size()}))))
        return;
    best.items.assign(of_items.begin(), of_items.end());
    best.ratio = ratio;
    best.rule = rule;
    best.measured = measured;
    best.limit = limit;
    best.place = place;
}

void Evaluation::note_borderline(std::size_t rule, std::size_t class_index, const Exact &measured,
                                 const Exact &limit, Truth certain, std::span<const std::uint32_t> of_items) {
    if (share_.empty() || !share_[rule]) return;
    const Compare compare = set.rules[rule].compare;
    const bool upper = is_maximum(compare);
    const bool reached = upper ? measured >= limit * *share_[rule] : measured * *share_[rule] <= limit;
    if (!reached) return;
    Borderline &b = borderlines_[rule * set.classes.size() + class_index];
    b.reached = std::max(b.reached, certain);
    b.items.insert(b.items.end(), of_items.begin(), of_items.end());
}

void Evaluation::settle_nearest() {
    for (std::size_t c = 0; c < classes.size(); ++c) {
        const Nearest &best = nearest_[c];
        if (best.ratio < 0) continue;
        Finding f;
        f.rule = static_cast<int>(best.rule);
        f.indications = numbers_of({best.items.data(), best.items.size()});
        f.place = best.place;
        f.has_numbers = true;
        f.measured = best.measured;
        f.limit = best.limit;
        f.ratio = best.ratio;
        classes[c].nearest = std::move(f);
    }
}

} // namespace beadbook
