#include "criteria/into_wall.hpp"

#include "criteria/doubts.hpp"
#include "criteria/vocabulary.hpp"

#include <algorithm>

namespace beadbook {

bool only_of(const TypeSet &types, std::initializer_list<const char *> wider) {
    const Vocabulary &words = Vocabulary::shipped();
    for (std::size_t t = 0; t < words.size(); ++t)
        if (types[t] && std::none_of(wider.begin(), wider.end(), [&](const char *name) {
                return words.is_a(static_cast<TypeId>(t), *words.find(name));
            }))
            return false;
    return types.any();
}

namespace {
constexpr std::initializer_list<const char *> hollows{"undercut", "incompletely filled groove",
                                                      "root concavity"};
} // namespace

bool goes_into_wall(const Rule &rule) {
    const auto slot = rule.measure.lone_quantity();
    if (slot == slot_of(Quantity::depth)) return true;
    return slot == slot_of(Quantity::height) &&
           (only_of(rule.subject.types, hollows) || only_of(rule.subject.types, {"linear misalignment"}));
}

} // namespace beadbook
