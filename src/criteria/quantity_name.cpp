#include "criteria/quantity_name.hpp"

#include <algorithm>

namespace beadbook {
namespace {

template <class Key>
std::optional<Key> named(std::string_view name, std::size_t count) {
    for (std::size_t i = 0; i < count; ++i)
        if (info(static_cast<Key>(i)).name == name) return static_cast<Key>(i);
    return std::nullopt;
}

} // namespace

const QuantityInfo &info(Quantity q) {
    static const std::array<QuantityInfo, quantity_count> table{{
        {"thinner member", Dimension::length, Scope::coupon, "thickness"},
        {"thicker member", Dimension::length, Scope::coupon, "thickness"},
        {"weld thickness", Dimension::length, Scope::coupon},
        {"bead thickness", Dimension::length, Scope::coupon},
        {"throat", Dimension::length, Scope::coupon},
        {"weld length", Dimension::length, Scope::coupon},
        {"outside diameter", Dimension::length, Scope::coupon, "diameter"},
        {"specified fillet size", Dimension::length, Scope::coupon, "fillet-size"},
        {"longest leg", Dimension::length, Scope::coupon, "leg"},
        {"weld width", Dimension::length, Scope::coupon},
        {"design temperature", Dimension::temperature, Scope::coupon, "temperature"},
        {"layers", Dimension::number, Scope::coupon},
        {"length", Dimension::length, Scope::indication},
        {"width", Dimension::length, Scope::indication},
        {"depth", Dimension::length, Scope::indication},
        {"height", Dimension::length, Scope::indication},
        {"size", Dimension::length, Scope::indication},
        {"angle", Dimension::angle, Scope::indication},
        {"area", Dimension::area, Scope::indication},
        {"nearest gap", Dimension::length, Scope::indication},
        {"nearest like gap", Dimension::length, Scope::indication},
        {"gap", Dimension::length, Scope::pair},
        {"smaller size", Dimension::length, Scope::pair},
        {"larger size", Dimension::length, Scope::pair},
        {"shorter length", Dimension::length, Scope::pair},
        {"longer length", Dimension::length, Scope::pair},
        {"longest", Dimension::length, Scope::group},
    }};
    return table[index_of(q)];
}

const FactInfo &info(Fact fact) {
    static const std::array<FactInfo, fact_count> table{{
        {"joint", {"groove", "fillet", "plug"}},
        {"joint form", {"butt", "corner", "tee", "lap", "edge"}},
        {"form", {"sheet", "plate", "tube"}},
        {"seam", {"straight", "girth", "longitudinal"}},
        {"magnetic", {"yes", "no"}, "is the base metal?"},
        {"sides", {"one", "both"}},
        {"inside", {"accessible", "closed"}},
        {"stress", {"transverse", "parallel"}},
        {"mechanical", {"passed", "failed"}, "results: did the bend, fracture or section tests pass?"},
        {"purpose", {"test", "practice"}},
        {"operation", {"manual", "machine"}},
        {"process",
         {"SMAW", "FCAW", "SAW", "GMAW", "GTAW", "PAW", "OFW", "EBW", "LBW", "ESW", "EGW", "RSW", "RSEW",
          "FRW", "FSW"},
         "by its abbreviation or its ISO 4063 number"},
        {"position",
         {"1G", "2G", "3G", "4G", "5G", "6G", "6GR", "1F", "2F", "3F", "4F",     "5F",
          "PA", "PB", "PC", "PD", "PE", "PF", "PG",  "PH", "PJ", "PK", "H-L045", "J-L045"},
         "by its AWS or ISO name"},
        {"material",
         {"steel", "iron", "nickel", "cobalt", "titanium", "aluminium", "magnesium", "copper", "zirconium"},
         "with the metal's name: steel, iron, nickel, cobalt, titanium, aluminium, magnesium, copper or "
         "zirconium"},
    }};
    return table[static_cast<std::size_t>(fact)];
}

const FactInfo &info(Attribute attribute) {
    static const std::array<FactInfo, attribute_count> table{{
        {"side", {"face", "root"}},
        {"transition", {"smooth", "sharp"}},
    }};
    return table[static_cast<std::size_t>(attribute)];
}

std::optional<Fact> fact_named(std::string_view name) { return named<Fact>(name, fact_count); }
std::optional<Attribute> attribute_named(std::string_view name) {
    return named<Attribute>(name, attribute_count);
}

std::uint8_t word_index(const FactInfo &info, std::string_view word) {
    const auto found = std::find(info.words.begin(), info.words.end(), word);
    return found == info.words.end() ? std::uint8_t{0}
                                     : static_cast<std::uint8_t>(found - info.words.begin() + 1);
}

std::vector<std::string> names_of(const Missing &missing) {
    std::vector<std::string> out;
    const auto add = [&](Missing what, std::string_view text) {
        if (missing.has(what)) out.push_back("the " + std::string(text));
    };
    const auto with = [](std::string name, std::string_view more) {
        // A field is typed with a dash where its name has a blank.
        std::replace(name.begin(), name.end(), ' ', '-');
        return more.empty() ? name : name + " (" + std::string(more) + ")";
    };
    for (std::size_t i = 0; i < quantity_count; ++i) {
        const auto &one = info(static_cast<Quantity>(i));
        const std::string name(one.name);
        add(lack_of(static_cast<Quantity>(i)), one.scope != Scope::coupon ? name
                                               : one.field.empty()        ? with(name, "")
                                                                   : with(std::string(one.field), one.name));
    }
    for (std::size_t i = 0; i < fact_count; ++i) {
        const auto &fact = info(static_cast<Fact>(i));
        add(lack_of(static_cast<Fact>(i)), with(std::string(fact.name), fact.asked));
    }
    for (std::size_t i = 0; i < attribute_count; ++i)
        add(lack_of(static_cast<Attribute>(i)), info(static_cast<Attribute>(i)).name);
    add(Missing::place(), "place on the weld");
    add(Missing::across(), "place across the weld");
    add(Missing::shape(), "length and width (linear or rounded?)");
    add(Missing::table_value(), "table's value: it has none for this size");
    add(Missing::exact_number(), "result: the numbers are too large");
    add(Missing::blank(), "limit: it is a blank that nobody filled");
    return out;
}

} // namespace beadbook
