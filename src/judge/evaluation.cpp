#include "judge/evaluation.hpp"

#include <algorithm>

namespace beadbook {

Evaluation::Evaluation(const BoundSet &program, const std::vector<Indication> &found, std::vector<Item> made,
                       Methods looked_at)
    : bound(program), set(program.set), coupon(program.coupon), indications(found), items(std::move(made)),
      methods(looked_at), engine(program.engine), classes(set.classes.size()), nearest_(set.classes.size()),
      covered_(items.size()), may_cover_(items.size()) {
    if (!bound.borderline.empty()) borderlines_.resize(set.rules.size() * set.classes.size());
}

std::vector<int> Evaluation::numbers_of(std::span<const std::uint32_t> of_items) const {
    std::vector<int> out;
    out.reserve(of_items.size());
    for (const std::uint32_t i : of_items)
        for (const std::size_t m : items[i].members) out.push_back(indications[m].number);
    if (out.size() > 1) std::sort(out.begin(), out.end());
    return out;
}

Truth Evaluation::applies(std::size_t rule, Missing &lacks) {
    const Settled &applies = bound.rule(rule).applies;
    lacks |= applies.lacks;
    if (applies.truth == Truth::no) not_applying_.push_back(static_cast<int>(rule));
    return applies.truth;
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
    const auto its_row = [&](const Traced &row) {
        return row.rule == rule && row.class_index == class_index && row.size > 0 &&
               indications[traced_entries[row.first].entry].exam == exam;
    };
    traces_.erase(std::remove_if(traces_.begin(), traces_.end(), its_row), traces_.end());
}

void Evaluation::take_nearest(std::size_t class_index, std::size_t rule, const Exact &measured,
                              const Exact &limit, double ratio, std::span<const std::uint32_t> of_items,
                              const std::optional<Span> &place) {
    Nearest &best = nearest_[class_index];
    // Equal ones are told apart by rule, then by indication, so that the order of entry never shows.
    if (ratio == best.ratio) {
        if (rule > best.rule) return;
        const auto before = view(best.items);
        if (rule == best.rule &&
            (std::equal(of_items.begin(), of_items.end(), before.begin(), before.end()) ||
             numbers_of(of_items) >= numbers_of(before)))
            return;
    }
    best.items.assign(of_items.begin(), of_items.end());
    best.ratio = ratio;
    best.rule = rule;
    best.measured = measured;
    best.limit = limit;
    best.place = place;
}

void Evaluation::hold_borderline(std::size_t rule, std::size_t class_index, const Exact &measured,
                                 const Exact &limit, Truth certain, std::span<const std::uint32_t> of_items) {
    const Exact &share = *bound.borderline[rule];
    const bool upper = is_maximum(set.rules[rule].compare);
    const bool reached = upper ? measured >= limit * share : measured * share <= limit;
    if (!reached) return;
    Borderline &b = borderlines_[rule * set.classes.size() + class_index];
    b.reached = std::max(b.reached, certain);
    b.items.insert(b.items.end(), of_items.begin(), of_items.end());
}

void Evaluation::settle_nearest() {
    for (std::size_t c = 0; c < classes.size(); ++c) {
        const Nearest &best = nearest_[c];
        if (best.ratio < 0) continue;
        Finding &f = classes[c].nearest.emplace();
        f.rule = static_cast<int>(best.rule);
        f.indications = numbers_of(view(best.items));
        f.place = best.place;
        f.has_numbers = true;
        f.measured = best.measured;
        f.limit = best.limit;
        f.ratio = best.ratio;
    }
}

} // namespace beadbook
