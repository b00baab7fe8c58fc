#include "judge/family.hpp"

#include "judge/judgement.hpp"

#include <algorithm>
#include <limits>

namespace beadbook {
namespace {

/// Of all that is called by its shape alone; no type's own.
constexpr TypeId shape_alone = std::numeric_limits<TypeId>::max();

TypeId widest(const Vocabulary &vocabulary, TypeId type) {
    while (vocabulary[type].under) type = *vocabulary[type].under;
    return type;
}

} // namespace

std::optional<TypeId> family_of(const BoundSet &bound, const Indication &found) {
    const ImperfectionType &type = bound.vocabulary[found.type];
    if (type.measured || std::any_of(bound.set.merges.begin(), bound.set.merges.end(), [&](const Merge &m) {
            return m.subject.covers(found.type, found.exam);
        }))
        return std::nullopt;
    if (bound.engine < first_to_doubt_widths) return found.type;
    if (bound.engine >= first_to_ask_where && type.is_shape_alone()) return shape_alone;
    return widest(bound.vocabulary, found.type);
}

bool agree(const Words &a, const Words &b) {
    for (std::size_t w = 0; w < a.size(); ++w)
        if (a[w] != 0 && b[w] != 0 && a[w] != b[w]) return false;
    return true;
}

} // namespace beadbook
