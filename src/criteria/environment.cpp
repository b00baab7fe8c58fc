#include "criteria/environment.hpp"

#include "language/evaluate.hpp"

#include <algorithm>

namespace beadbook {

template Evaluated Formula::evaluate<Environment>(const Environment &) const;
template Evaluated Formula::limit<Environment>(const Environment &, Compare) const;

Formula formula_of(Quantity q) { return Formula::of(slot_of(q), info(q).dimension); }

std::vector<Quantity> quantities_of(const Formula &f) {
    std::vector<Quantity> out;
    for (const Slot slot : f.quantities()) out.push_back(static_cast<Quantity>(slot));
    return out;
}

bool uses_scope(const Formula &f, Scope scope) {
    const auto all = quantities_of(f);
    return std::any_of(all.begin(), all.end(), [&](Quantity q) { return info(q).scope == scope; });
}

} // namespace beadbook
