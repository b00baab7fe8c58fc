#include "judge/family.hpp"

#include "judge/judgement.hpp"

#include <algorithm>
#include <limits>

namespace beadbook {
namespace {

/// Of all that is called by its shape alone; no type's own.
constexpr TypeId shape_alone = std::numeric_limits<TypeId>::max();

/// By its name, and by its measures no longer than three times its width.
bool is_round(const ImperfectionType &type, const Indication &found) {
    if (type.shape != Shape::rounded) return false;
    const auto &m = found.measures;
    if (!m.has(Quantity::length) || !m.has(Quantity::width)) return !found.width_open;
    return Exact(m[Quantity::length]) <= Exact(3) * Exact(m[Quantity::width]);
}

bool limits_length(const BoundSet &bound, std::uint16_t index) {
    const Rule &rule = bound.set.rules[index];
    if (rule.kind != Rule::Kind::each || !is_maximum(rule.compare)) return false;
    const auto measured = rule.measure.lone_quantity();
    const bool along = measured && (static_cast<Quantity>(*measured) == Quantity::length ||
                                    static_cast<Quantity>(*measured) == Quantity::size);
    return along && bound.rule(index).applies.truth != Truth::no &&
           bound.rule(index).classes(Limit::Kind::value) != 0;
}

} // namespace

TypeId family_of_type(const BoundSet &bound, TypeId type) {
    if (bound.engine >= first_to_ask_where && bound.vocabulary[type].is_shape_alone()) return shape_alone;
    return bound.vocabulary.widest(type);
}

std::optional<TypeId> family_of(const BoundSet &bound, const Indication &found) {
    if (bound.vocabulary[found.type].measured ||
        std::any_of(bound.set.merges.begin(), bound.set.merges.end(),
                    [&](const Merge &m) { return m.subject.covers(found.type, found.exam); }))
        return std::nullopt;
    return bound.engine < first_to_doubt_widths ? found.type : family_of_type(bound, found.type);
}

Several<std::uint16_t> rules_on_length(const BoundSet &bound, const Indication &found) {
    Several<std::uint16_t> out;
    if (is_round(bound.vocabulary[found.type], found)) return out;
    for (const std::uint16_t r : bound.set.rules_for(found.type, found.exam))
        if (limits_length(bound, r)) out.push_back(r);
    return out;
}

bool agree(const Words &a, const Words &b) {
    for (std::size_t w = 0; w < a.size(); ++w)
        if (a[w] != 0 && b[w] != 0 && a[w] != b[w]) return false;
    return true;
}

} // namespace beadbook
