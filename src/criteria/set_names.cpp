#include "criteria/set_names.hpp"

#include "criteria/environment.hpp"
#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {

static_assert(quantity_count <= Missing::most_quantities);
static_assert(fact_count + attribute_count <= Missing::most_words);

void read_symbols(const Fields &top, Names &names) {
    const Yaml *map = top.get("quantities");
    if (!map) return;
    if (map->kind != Yaml::Kind::map)
        return top.error("quantities", "expected a map such as {T: thinner member}");
    std::vector<std::string> all;
    for (std::size_t i = 0; i < coupon_quantities; ++i) all.emplace_back(info(static_cast<Quantity>(i)).name);
    for (const auto &entry : map->entries) {
        const std::string path = "quantities." + entry.key;
        const auto found = std::find(all.begin(), all.end(), entry.value.text);
        if (found == all.end()) {
            top.error_at(entry.value.where, path,
                         "'" + shown(entry.value.text) + "' is no quantity of a coupon; expected " +
                             listed(all, "or") + did_you_mean(entry.value.text, all));
            continue;
        }
        const auto quantity = static_cast<Quantity>(found - all.begin());
        const bool word = fact_named(entry.key) || attribute_named(entry.key);
        if (word ||
            !names.add({entry.key, Name::Kind::quantity, slot_of(quantity), info(quantity).dimension, {}}))
            top.error_at(entry.key_where, path,
                         "'" + shown(entry.key) + "' is the name of something else here");
    }
}

void add_set_names(Names &names) {
    for (std::size_t i = coupon_quantities; i < quantity_count; ++i) {
        const auto &quantity = info(static_cast<Quantity>(i));
        names.add(
            {std::string(quantity.name), Name::Kind::quantity, static_cast<Slot>(i), quantity.dimension, {}});
    }
    const auto word = [&](const FactInfo &fact, std::size_t slot) {
        names.add({std::string(fact.name), Name::Kind::word, static_cast<Slot>(slot), Dimension::number,
                   fact.words});
    };
    for (std::size_t i = 0; i < fact_count; ++i) word(info(static_cast<Fact>(i)), i);
    for (std::size_t i = 0; i < attribute_count; ++i) word(info(static_cast<Attribute>(i)), fact_count + i);
}

} // namespace beadbook
