#include "operations/boundary_values.hpp"

#include "language/evaluate.hpp"

#include <algorithm>
#include <bit>
#include <cmath>
#include <set>

namespace beadbook {
namespace {

constexpr std::size_t most_tries = 20'000;
constexpr std::size_t most_coupons = 8;
constexpr std::size_t most_with_a_value = 60;

/// Numbers that a quantity is held against, if it stands alone.
void add_edges(const std::vector<Condition> &conditions, Quantity q, const Exact &step,
               std::set<Exact> &out) {
    for (const auto &c : conditions)
        if (c.kind == Condition::Kind::comparison && c.left.lone_quantity() == slot_of(q))
            for (const auto &edge : c.edges)
                if (edge.right.is_constant())
                    for (const Exact &at : {edge.right.constant_value() - step, edge.right.constant_value(),
                                            edge.right.constant_value() + step})
                        out.insert(at);
}

/// Where a formula of that quantity alone goes from one of its parts to another.
void add_switches(const Formula &formula, Quantity q, Unit unit, const Exact &step, std::set<Exact> &out) {
    const auto pieces = pieces_of(formula, unit);
    if (!pieces) return;
    for (const auto &piece : *pieces)
        for (const auto &one : piece.where) {
            if (one.sum.factors.size() != 1 || !one.sum.factors.contains(slot_of(q))) continue;
            const Exact at = Exact(0) - one.sum.constant / one.sum.factors.at(slot_of(q));
            for (const Exact &near : {at, at + step}) out.insert(Exact::whole(near.rounded()));
        }
}

std::vector<Exact> spread_of(Quantity q, Unit unit) {
    switch (info(q).dimension) {
    case Dimension::angle: return {Exact(30'000'000), Exact(90'000'000), Exact(150'000'000)};
    case Dimension::temperature: return {Exact(20'000'000), Exact(100'000'000), Exact(400'000'000)};
    case Dimension::number: return {Exact(1), Exact(2), Exact(5)};
    default: break;
    }
    const bool inch = unit == Unit::inch;
    const bool along = q == Quantity::weld_length || q == Quantity::outside_diameter;
    const Exact one = inch ? Exact(nm_per_inch / 1000) : Exact(nm_per_mm / 10);
    std::vector<int> times;
    if (along)
        times = inch ? std::vector{2000, 6000, 10000, 12000, 24000, 48000}
                     : std::vector{500, 1000, 1500, 3000, 6000, 12000};
    else
        times = inch ? std::vector{20, 40, 63, 100, 125, 250, 500, 1000, 2000}
                     : std::vector{5, 10, 20, 30, 50, 80, 120, 200, 400};
    std::vector<Exact> out;
    for (const int n : times) out.push_back(Exact(n) * one);
    return out;
}

bool all_hold(const std::vector<Condition> &conditions, const Coupon &coupon,
              const Environment::Values *local) {
    const Environment env{coupon.values, local};
    return std::all_of(conditions.begin(), conditions.end(), [&](const Condition &c) {
        Missing missing;
        return c.kind != Condition::Kind::comparison || c.compare(env, missing) == Truth::yes;
    });
}

void add_quantities(const std::vector<Condition> &conditions, std::vector<Quantity> &out) {
    const auto take = [&](const Formula &formula) {
        for (const Quantity q : quantities_of(formula))
            if (std::find(out.begin(), out.end(), q) == out.end()) out.push_back(q);
    };
    for (const auto &c : conditions) {
        if (c.kind != Condition::Kind::comparison) continue;
        take(c.left);
        for (const auto &edge : c.edges) take(edge.right);
    }
}

/// Tries every choice of one value a quantity, in order, until `fits`.
template <class Fits>
bool choose(const std::vector<std::vector<std::int64_t>> &values, Fits fits) {
    std::vector<std::size_t> at(values.size(), 0);
    for (std::size_t n = 0; n < most_tries; ++n) {
        if (fits(at)) return true;
        std::size_t k = values.size();
        while (k > 0 && ++at[k - 1] == values[k - 1].size()) at[--k] = 0;
        if (k == 0) return false;
    }
    return false;
}

/// The side of a square of at least that area.
std::int64_t square_that_holds(std::int64_t area) {
    return static_cast<std::int64_t>(std::ceil(std::sqrt(static_cast<double>(area)))) + 1;
}

} // namespace

Exact reading_step(Dimension dimension, Unit unit) {
    const Exact length = unit == Unit::inch ? Exact(nm_per_inch / 1000) : Exact(nm_per_mm / 100);
    switch (dimension) {
    case Dimension::length: return length;
    case Dimension::area: return length * length;
    case Dimension::number: return 1;
    default: return 1'000'000;
    }
}

BoundaryCoupons::BoundaryCoupons(const CriteriaSet &set, const Rule &rule, std::size_t class_index)
    : set_(set), rule_(rule), limit_(rule.limits[class_index]), conditions_(rule.when) {
    for (const auto &part : set.scope)
        if (part.only_if.empty()) conditions_.insert(conditions_.end(), part.when.begin(), part.when.end());
    take(limit_.formula);
    if (const Window *window = rule.window(class_index); window && window->kind == Window::Kind::length)
        take(window->length);
    std::vector<Quantity> all;
    add_quantities(conditions_, all);
    add_quantities(rule.where, all);
    for (const auto &one : set.relevance) add_quantities(one.ignore, all);
    if (set.linear) add_quantities({*set.linear}, all);
    if (rule.linked) add_quantities({*rule.linked}, all);
    for (const Quantity q : all)
        if (info(q).scope == Scope::coupon && std::find(varied_.begin(), varied_.end(), q) == varied_.end())
            asked_.push_back(q);
}

void BoundaryCoupons::take(const Formula &formula) {
    for (const Quantity q : quantities_of(formula))
        if (info(q).scope == Scope::coupon && std::find(varied_.begin(), varied_.end(), q) == varied_.end())
            varied_.push_back(q);
}

std::vector<std::int64_t> BoundaryCoupons::values_of(Quantity q) const {
    const Exact step = reading_step(info(q).dimension, set_.unit);
    std::set<Exact> edges, out;
    add_edges(conditions_, q, step, edges);
    add_switches(limit_.formula, q, set_.unit, step, edges);
    for (const Exact &value : spread_of(q, set_.unit)) out.insert(value);
    out.insert(edges.begin(), edges.end());
    std::vector<std::int64_t> whole;
    for (const Exact &value : out)
        if (value.is_whole() && (value > Exact(0) || info(q).dimension == Dimension::temperature))
            whole.push_back(static_cast<std::int64_t>(value.num()));
    return whole;
}

bool BoundaryCoupons::holds_for_coupon(const Coupon &coupon) const {
    const auto &v = coupon.values;
    if (v.has(Quantity::thinner) && v.has(Quantity::thicker) && v[Quantity::thinner] > v[Quantity::thicker])
        return false;
    return all_hold(conditions_, coupon, nullptr);
}

/// Words for which the rule is heard and the set's scope holds; parts that ask first are kept out of it.
void BoundaryCoupons::give_words(Coupon &coupon) const {
    std::map<Slot, std::uint64_t> fitting;
    const auto narrow = [&](const Condition &c, bool fits) {
        if (c.kind != Condition::Kind::word || c.slot >= fact_count) return;
        const auto all = (std::uint64_t{1} << (info(static_cast<Fact>(c.slot)).words.size() + 1)) - 2;
        auto &here = fitting.try_emplace(c.slot, all).first->second;
        const std::uint64_t next = here & (fits ? c.fitting : ~c.fitting);
        if (next != 0) here = next;
    };
    for (const auto &c : conditions_) narrow(c, true);
    for (const auto &part : set_.scope)
        for (const auto &c : part.only_if) narrow(c, false);
    for (const auto &[slot, words] : fitting)
        coupon.facts[slot] = static_cast<std::uint8_t>(std::countr_zero(words));
}

Coupon BoundaryCoupons::plain() const {
    Coupon out;
    give_words(out);
    const std::int64_t length = set_.unit == Unit::inch ? 48 * nm_per_inch : 1200 * nm_per_mm;
    out.values.set(Quantity::weld_length, Exact(length));
    return out;
}

std::vector<Coupon> BoundaryCoupons::all() const {
    std::vector<std::vector<std::int64_t>> varied, asked;
    for (const Quantity q : varied_) varied.push_back(values_of(q));
    for (const Quantity q : asked_) asked.push_back(values_of(q));
    std::vector<Coupon> out;
    choose(varied, [&](const std::vector<std::size_t> &at) {
        Coupon coupon = plain();
        for (std::size_t k = 0; k < at.size(); ++k) coupon.values.set(varied_[k], Exact(varied[k][at[k]]));
        const bool found = choose(asked, [&](const std::vector<std::size_t> &chosen) {
            for (std::size_t k = 0; k < chosen.size(); ++k)
                coupon.values.set(asked_[k], Exact(asked[k][chosen[k]]));
            return holds_for_coupon(coupon);
        });
        if (found) out.push_back(coupon);
        return false;
    });
    for (auto &coupon : out) coupon.line.length = Length{coupon.values[Quantity::weld_length]};
    // Spread over all of them, first and last kept.
    if (out.size() <= most_coupons) return out;
    std::vector<Coupon> few;
    for (std::size_t k = 0; k < most_coupons; ++k)
        few.push_back(out[k * (out.size() - 1) / (most_coupons - 1)]);
    return few;
}

/// The end itself, or the last step before it; nothing where other conditions leave neither.
std::optional<std::int64_t> BoundaryCoupons::last_within(Quantity q, const Condition::Edge &edge) const {
    const Exact step = reading_step(info(q).dimension, set_.unit), end = edge.right.constant_value();
    const Exact inside = is_maximum(edge.compare) ? end - step : end + step;
    for (const Exact &value : {end, inside}) {
        if (!value.is_whole()) continue;
        Environment::Values alone;
        alone.set(q, value);
        const Environment env{alone, &alone};
        const bool out = std::any_of(conditions_.begin(), conditions_.end(), [&](const Condition &c) {
            Missing missing;
            return c.kind == Condition::Kind::comparison && c.compare(env, missing) == Truth::no;
        });
        if (!out) return static_cast<std::int64_t>(value.num());
    }
    return std::nullopt;
}

std::vector<NamedPoint> BoundaryCoupons::named() const {
    std::vector<NamedPoint> out;
    const auto add = [&](Quantity q, std::int64_t value) {
        const bool there = std::any_of(out.begin(), out.end(), [&](const NamedPoint &one) {
            return one.quantity == q && one.value == value;
        });
        if (!there) out.push_back({q, value});
    };
    for (const auto &c : rule_.when) {
        if (c.kind == Condition::Kind::word && !c.denied && c.slot < fact_count)
            for (std::size_t word = 1; word <= info(static_cast<Fact>(c.slot)).words.size(); ++word)
                if ((c.fitting >> word) & 1u)
                    out.push_back({{}, 0, static_cast<Fact>(c.slot), static_cast<std::uint8_t>(word)});
        const auto slot = c.left.lone_quantity();
        for (const auto &edge : c.edges)
            if (slot && edge.right.is_constant())
                if (const auto value = last_within(static_cast<Quantity>(*slot), edge))
                    add(static_cast<Quantity>(*slot), *value);
    }
    for (const Quantity q : varied_) {
        std::set<Exact> edges;
        add_switches(limit_.formula, q, set_.unit, reading_step(info(q).dimension, set_.unit), edges);
        for (const Exact &value : edges)
            if (value > Exact(0)) add(q, static_cast<std::int64_t>(value.num()));
    }
    return out;
}

/// Also of the parts of the scope that ask first whether they apply.
bool BoundaryCoupons::words_hold(const Coupon &coupon) const {
    const auto fits = [&](const Condition &c) {
        return c.kind != Condition::Kind::word || c.slot >= fact_count || coupon.facts[c.slot] == 0 ||
               ((c.fitting >> coupon.facts[c.slot]) & 1u) != 0;
    };
    return std::all_of(conditions_.begin(), conditions_.end(), fits) &&
           std::all_of(set_.scope.begin(), set_.scope.end(), [&](const ScopePart &part) {
               return part.only_if.empty() || !std::all_of(part.only_if.begin(), part.only_if.end(), fits) ||
                      std::all_of(part.when.begin(), part.when.end(), fits);
           });
}

void BoundaryCoupons::each_with(const NamedPoint &named,
                                const std::function<bool(const Coupon &)> &takes) const {
    Coupon first = plain();
    if (!named.quantity) first.facts[static_cast<std::size_t>(named.fact)] = named.word;
    if (!words_hold(first)) return;
    std::vector<Quantity> all = varied_;
    all.insert(all.end(), asked_.begin(), asked_.end());
    std::vector<std::vector<std::int64_t>> values;
    for (const Quantity q : all)
        values.push_back(named.quantity == q ? std::vector{named.value} : values_of(q));
    std::size_t tried = 0;
    choose(values, [&](const std::vector<std::size_t> &at) {
        Coupon coupon = first;
        for (std::size_t k = 0; k < at.size(); ++k) coupon.values.set(all[k], Exact(values[k][at[k]]));
        coupon.line.length = Length{coupon.values[Quantity::weld_length]};
        return holds_for_coupon(coupon) && (takes(coupon) || ++tried == most_with_a_value);
    });
}

std::optional<Environment::Values> find_with(const CriteriaSet &set, const Rule &rule, const Coupon &coupon,
                                             Quantity measure, std::int64_t value,
                                             std::array<std::uint8_t, attribute_count> &words,
                                             const Environment::Values &settled) {
    std::vector<Quantity> quantities{Quantity::length, Quantity::width};
    add_quantities(rule.where, quantities);
    std::vector<const Relevance *> clauses; // any of them leaves it out
    for (const auto &one : set.relevance)
        if ((one.subject.types & rule.subject.types).any() &&
            (one.subject.exams & rule.subject.exams).any()) {
            clauses.push_back(&one);
            add_quantities(one.ignore, quantities);
        }
    for (const auto &c : rule.where)
        if (c.kind == Condition::Kind::word && c.slot >= fact_count && c.fitting != 0)
            words[c.slot - fact_count] = static_cast<std::uint8_t>(std::countr_zero(c.fitting));
    std::erase_if(quantities, [&](Quantity q) {
        return info(q).scope != Scope::indication || q == measure || is_way_to_nearest(q) ||
               q == Quantity::size;
    });
    std::vector<std::vector<std::int64_t>> values;
    const bool size = measure == Quantity::size, area = measure == Quantity::area;
    for (const Quantity q : quantities) {
        std::set<Exact> edges;
        const Exact step = reading_step(info(q).dimension, set.unit);
        add_edges(rule.where, q, step, edges);
        for (const auto *clause : clauses) add_edges(clause->ignore, q, step, edges);
        const bool length = info(q).dimension == Dimension::length;
        std::vector<std::int64_t> own;
        if (settled.has(q)) {
            values.push_back({settled[q]});
            continue;
        }
        if (length && info(measure).dimension == Dimension::length)
            own = {value, std::max<std::int64_t>(value / 10, 1), value * 4};
        else if (length && area)
            own = {nm_per_inch / 8, nm_per_inch, square_that_holds(value)};
        else if (length)
            own = {nm_per_inch / 8, nm_per_inch / 100, nm_per_inch};
        for (const Exact &edge : edges)
            if (edge.is_whole() && edge > Exact(0)) own.push_back(static_cast<std::int64_t>(edge.num()));
        for (const Exact &more : spread_of(q, set.unit)) own.push_back(static_cast<std::int64_t>(more.num()));
        values.push_back(std::move(own));
    }
    Environment::Values out;
    const bool found = choose(values, [&](const std::vector<std::size_t> &at) {
        out = {};
        out.set(measure, Exact(value));
        for (std::size_t k = 0; k < at.size(); ++k) out.set(quantities[k], Exact(values[k][at[k]]));
        const std::int64_t length = out[Quantity::length], width = out[Quantity::width];
        if (width > length) return false;
        if (size && length != value) return false;
        if (area && Exact(length) * Exact(width) < Exact(value)) return false;
        if (!size) out.set(Quantity::size, Exact(length));
        if (set.linear && rule.shape != Shape::unknown) {
            Missing missing;
            const Environment env{coupon.values, &out};
            if ((set.linear->compare(env, missing) == Truth::yes) != (rule.shape == Shape::linear))
                return false;
        }
        std::vector<Condition> where = rule.where;
        std::erase_if(where, [](const Condition &c) { return uses_way_to_nearest(c.left); });
        const bool ignored = std::any_of(clauses.begin(), clauses.end(), [&](const Relevance *one) {
            return all_hold(one->ignore, coupon, &out);
        });
        return !ignored && all_hold(where, coupon, &out);
    });
    return found ? std::optional(out) : std::nullopt;
}

} // namespace beadbook
