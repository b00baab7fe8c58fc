#include "operations/rule_words.hpp"

#include "measure/text.hpp"
#include "operations/known_words.hpp"

#include <algorithm>

namespace beadbook {
namespace {

constexpr std::string_view weld_fields[] = {
    "process",    "operation", "transfer",       "position", "progression", "rotated",     "joint",
    "form",       "sides",     "thickness",      "runs",     "thickness-2", "diameter",    "layers",
    "backing",    "filler",    "filler-group",   "welded",   "filler-type", "metal-group", "material",
    "joint-form", "seam",      "weld-thickness", "throat",   "fillet-size"};

} // namespace

bool describes_weld(std::string_view field) {
    return std::find(std::begin(weld_fields), std::end(weld_fields), field) != std::end(weld_fields);
}

const std::vector<Trait> &rule_words() {
    static const std::vector<Trait> out{Trait::transfer,    Trait::position,    Trait::progression,
                                        Trait::rotated,     Trait::metal_group, Trait::filler_group,
                                        Trait::filler_type, Trait::backing,     Trait::runs};
    return out;
}

void take_rule_words(CouponRecord &test, const RuleWords &words, const RangeRules &rules) {
    for (const Trait trait : rule_words()) {
        const std::string field = field_of(trait);
        const auto given = words.find(field);
        if (given == words.end()) continue;
        const std::string own = test.get(field);
        const auto &known = rules.test_words[index_of(trait)];
        if (!own.empty() && own != given->second &&
            (known.empty() || std::find(known.begin(), known.end(), own) != known.end()))
            throw refused("coupon " + test.id + " says " + field + " '" + shown(own) + "'")
                .at(field)
                .mend({"change", {test.id}, {field, "why"}});
        test.set(field, given->second);
    }
}

} // namespace beadbook
