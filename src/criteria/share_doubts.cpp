// Limits that are a share of another quantity than those beside them.
#include "criteria/doubts.hpp"
#include "criteria/into_wall.hpp"
#include "criteria/limit_order.hpp"
#include "criteria/measured_by.hpp"
#include "criteria/vocabulary.hpp"

#include <algorithm>
#include <cctype>

namespace beadbook {
namespace {

constexpr std::initializer_list<Quantity> walls{Quantity::thinner, Quantity::thicker,
                                                Quantity::weld_thickness};
/// What is deep, or large, is no worse for less of these, as it is for less of the wall or the throat.
constexpr std::initializer_list<Quantity> not_through{Quantity::weld_width, Quantity::weld_length,
                                                      Quantity::outside_diameter, Quantity::fillet_size,
                                                      Quantity::longest_leg};

bool is_share_of(const Formula &formula, std::initializer_list<Quantity> quantities) {
    const auto of = formula.quantities();
    return std::any_of(of.begin(), of.end(), [&](Slot slot) { return is_one_of(slot, quantities); });
}

bool has_share_of(const Limit &limit, std::initializer_list<Quantity> quantities) {
    return limit.kind == Limit::Kind::value && is_share_of(limit.formula, quantities);
}

/// No measure of a leg.
constexpr std::initializer_list<Quantity> none_of_a_leg{Quantity::throat, Quantity::weld_width,
                                                        Quantity::weld_length, Quantity::outside_diameter,
                                                        Quantity::longest_leg};

/// Of a table the author chose the quantity in a line of its own.
bool of_another_alone(const Limit &limit) {
    return has_share_of(limit, not_through) && !has_share_of(limit, walls) &&
           !has_share_of(limit, {Quantity::throat}) && limit.formula.tables().empty();
}

/// A thickness: the thicker one too, but what goes through the thinner member is no less of it for that.
bool of_thicker_alone(const Limit &limit) {
    return has_share_of(limit, {Quantity::thicker}) &&
           !has_share_of(limit, {Quantity::thinner, Quantity::weld_thickness}) &&
           limit.formula.tables().empty();
}

/// What a symbol of one letter means wherever it is printed. Common practice, no source; what shipped sets
/// call so lies within.
struct UsualSymbol {
    char letter;
    std::initializer_list<Quantity> means;
    const char *words;
};
const UsualSymbol usual_symbols[] = {
    {'t',
     {Quantity::thinner, Quantity::thicker, Quantity::weld_thickness, Quantity::bead_thickness},
     "a thickness"},
    {'s',
     {Quantity::thinner, Quantity::thicker, Quantity::weld_thickness, Quantity::fillet_size},
     "a weld thickness or the size of a fillet"},
};

/// How large one imperfection is. A group may be as wide as the weld, so it says nothing unless it stands
/// beside single ones.
bool is_extent_across(const Rule &rule) {
    const Vocabulary &words = Vocabulary::shipped();
    bool single = false;
    for (std::size_t t = 0; t < words.size(); ++t) {
        if (!rule.subject.types[t]) continue;
        const ImperfectionType &type = words[static_cast<TypeId>(t)];
        if (type.measured) return false;
        single = single || !type.is_group();
    }
    return single && is_one_of(rule.measure.lone_quantity(), {Quantity::size, Quantity::width});
}
bool is_held_by_wall(const Rule &rule) { return goes_into_wall(rule) || is_extent_across(rule); }

/// What is measured of the find, of which the limit is a share.
std::vector<Quantity> quantities_of_find(const Limit &limit) {
    std::vector<Quantity> out;
    if (limit.kind == Limit::Kind::value) out = quantities_of(limit.formula);
    std::erase_if(out, [](Quantity q) { return info(q).scope != Scope::indication; });
    return out;
}

/// "weld width": of the first that it is a share of.
std::string share_name(const Limit &limit, const std::vector<Quantity> &quantities) {
    for (const Quantity q : quantities_of(limit.formula))
        if (std::find(quantities.begin(), quantities.end(), q) != quantities.end())
            return std::string(info(q).name);
    return "";
}

class Shares {
public:
    Shares(const CriteriaSet &set, const SetBelow &below, Doubts &doubts)
        : set_(set), below_(below), doubts_(doubts) {}

    void check() {
        for (const auto &one : set_.declared) check_symbol(one);
        for (const auto &rule : set_.rules) {
            if (check_least(rule)) continue;
            if (rule.kind != Rule::Kind::each || !is_maximum(rule.compare)) continue;
            for (std::size_t c = 0; c < rule.limits.size(); ++c)
                if ((of_another_alone(rule.limits[c]) && check_limit(rule, c)) || check_thicker(rule, c) ||
                    check_own_dimension(rule, c))
                    break;
        }
    }

private:
    bool check_limit(const Rule &rule, std::size_t c) {
        if (in_base(rule, c)) return false; // as it stands there
        for (std::size_t k = 0; k < rule.limits.size(); ++k)
            if (has_share_of(rule.limits[k], walls))
                return tell(rule, c, "for class " + set_.classes[k].id, rule.limits[k]);
        if (const Rule *was = below_.rule(rule.id); was && was->kind == rule.kind)
            for (const Limit &limit : was->limits)
                if (has_share_of(limit, walls))
                    return tell(rule, c, "of the same rule of " + set_.extends, limit);
        if (!is_held_by_wall(rule)) return false;
        for (const auto &other : set_.rules) {
            if (&other == &rule || other.kind != rule.kind || other.compare != rule.compare ||
                (is_extent_across(rule) && (other.subject.types & rule.subject.types).none()) ||
                goes_into_wall(other) != goes_into_wall(rule) ||
                (measured_by(other) & measured_by(rule)) == 0)
                continue;
            for (const Limit &limit : other.limits)
                if (has_share_of(limit, walls))
                    return tell(rule, c,
                                "of rule '" + other.id + "'" +
                                    (other.where_from.line > 0
                                         ? " (line " + std::to_string(other.where_from.line) + ")"
                                         : ""),
                                limit);
        }
        return tell_alone(rule, c, not_through,
                          ", and how deep or how large one may be goes by the wall or by a number: is the "
                          "quantity meant?");
    }

    /// The longer it is, the deeper it may be.
    bool check_own_dimension(const Rule &rule, std::size_t c) {
        const auto own = quantities_of_find(rule.limits[c]);
        if (own.empty() || !is_held_by_wall(rule) || in_base(rule, c) ||
            has_share_of(rule.limits[c], walls) || has_share_of(rule.limits[c], not_through))
            return false;
        return tell_alone(rule, c, own,
                          " of the find itself, so a longer one may be worse: is the quantity meant?");
    }

    void check_symbol(const DeclaredQuantity &one) {
        for (const auto &usual : usual_symbols)
            if (one.name.size() == 1 &&
                std::tolower(static_cast<unsigned char>(one.name[0])) == usual.letter &&
                !is_one_of(one.slot, usual.means)) {
                doubts_.tell("symbol-of-another", one.name, one.where, "quantities." + one.name,
                             "'" + one.name + "' is the " +
                                 std::string(info(static_cast<Quantity>(one.slot)).name) +
                                 " here, and where standards print it, it is " + usual.words +
                                 ": is the quantity meant?");
                return;
            }
    }

    /// A leg is longer than its throat: one of the size of the throat is far too small.
    bool check_least(const Rule &rule) {
        if (rule.kind != Rule::Kind::each || is_maximum(rule.compare) ||
            !only_of(rule.subject.types, {"fillet size"}))
            return false;
        for (std::size_t c = 0; c < rule.limits.size(); ++c)
            if (has_share_of(rule.limits[c], none_of_a_leg) && !has_share_of(rule.limits[c], walls) &&
                !has_share_of(rule.limits[c], {Quantity::fillet_size}) && !in_base(rule, c))
                return tell_alone(rule, c, none_of_a_leg,
                                  ", and the size of a fillet is held by what the drawing says of it, the " +
                                      std::string(info(Quantity::fillet_size).name) +
                                      ": is the quantity meant?");
        return false;
    }

    bool check_thicker(const Rule &rule, std::size_t c) {
        const auto of_thinner = [](const Limit &limit) {
            return has_share_of(limit, {Quantity::thinner, Quantity::weld_thickness});
        };
        if (std::any_of(rule.limits.begin(), rule.limits.end(), of_thinner))
            return false; // told by the order
        if (!is_held_by_wall(rule) || !of_thicker_alone(rule.limits[c]) || in_base(rule, c)) return false;
        return tell_alone(rule, c, {Quantity::thicker},
                          ", and the thinner one may be much less: is the quantity meant?");
    }

    bool tell_alone(const Rule &rule, std::size_t c, const std::vector<Quantity> &of,
                    const std::string &rest) {
        doubts_.tell("limit-by-another", rule.id, rule.where_from, "rules." + rule.id,
                     "its limit for class " + set_.classes[c].id + ", '" + rule.limits[c].text +
                         "', is a share of the " + share_name(rule.limits[c], of) + rest);
        return true;
    }

    bool in_base(const Rule &rule, std::size_t c) const {
        const Rule *was = below_.rule(rule.id);
        const auto k = below_.class_of(set_.classes[c].id);
        return was && k && was->limits[*k].text == rule.limits[c].text;
    }

    bool tell(const Rule &rule, std::size_t c, const std::string &whose, const Limit &beside) {
        doubts_.tell("limit-by-another", rule.id, rule.where_from, "rules." + rule.id,
                     "its limit for class " + set_.classes[c].id + ", '" + rule.limits[c].text +
                         "', is a share of the " + share_name(rule.limits[c], not_through) + ", and '" +
                         beside.text + "' " + whose + " one of the " + share_name(beside, walls) +
                         ": is the quantity meant?");
        return true;
    }

    const CriteriaSet &set_;
    const SetBelow &below_;
    Doubts &doubts_;
};

} // namespace

void check_shares(const CriteriaSet &set, const SetBelow &below, Doubts &doubts) {
    Shares(set, below, doubts).check();
}

} // namespace beadbook
