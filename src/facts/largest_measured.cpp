#include "facts/largest_measured.hpp"

#include <algorithm>

namespace beadbook {
namespace {

constexpr auto of_side = static_cast<std::size_t>(Attribute::side);

std::optional<Exact> LargestMeasured::*measured_as(const IndicationRecord &find) {
    const std::string &type = Vocabulary::shipped()[find.type].name;
    return type == "fillet size" ? &LargestMeasured::fillet
           : type == "throat"    ? &LargestMeasured::throat
                                 : nullptr;
}

bool on_one_side(const IndicationRecord &a, const IndicationRecord &b) {
    return a.words[of_side] == 0 || b.words[of_side] == 0 || a.words[of_side] == b.words[of_side];
}

} // namespace

LargestMeasured largest_measured(const IndicationRecord &find, std::span<const IndicationRecord> others) {
    LargestMeasured out;
    const auto take = [&](const IndicationRecord &one) {
        const auto as = measured_as(one);
        const auto size = one.measures.find(Quantity::size);
        if (!as || size == one.measures.end()) return;
        out.*as = std::max((out.*as).value_or(size->second.value), size->second.value);
    };
    if (!measured_as(find)) return out;
    take(find);
    for (const auto &one : others)
        if (one.exam == find.exam && on_one_side(one, find) && (one.number != find.number || one.number == 0))
            take(one);
    return out;
}

} // namespace beadbook
