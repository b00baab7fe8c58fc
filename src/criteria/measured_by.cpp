#include "criteria/measured_by.hpp"

#include "criteria/doubts.hpp"

namespace beadbook {

Measures measured_by(const Rule &rule) {
    const auto bit = [](Quantity q) {
        const bool extent =
            is_one_of(slot_of(q), {Quantity::size, Quantity::length, Quantity::width, Quantity::area});
        return Measures{1} << slot_of(extent ? Quantity::size : q);
    };
    if (rule.kind == Rule::Kind::sum) return bit(rule.summed);
    if (rule.kind == Rule::Kind::count) return Measures{1} << quantity_count;
    if (rule.kind == Rule::Kind::gap) return bit(Quantity::gap);
    Measures out = 0;
    if (rule.kind == Rule::Kind::each)
        for (const Quantity q : quantities_of(rule.measure))
            if (info(q).scope == Scope::indication) out |= bit(q);
    return out;
}

} // namespace beadbook
