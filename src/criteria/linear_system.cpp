#include "criteria/linear_system.hpp"

#include "criteria/band.hpp"

#include <algorithm>
#include <map>

namespace beadbook {
namespace {

constexpr std::size_t most_rows = 2000;

Int128 without_sign(Int128 value) { return value < 0 ? -value : value; }

Int128 common_divisor(Int128 a, Int128 b) {
    a = without_sign(a), b = without_sign(b);
    while (b != 0) {
        const Int128 rest = a % b;
        a = b;
        b = rest;
    }
    return a;
}

Int128 product(Int128 a, Int128 b) {
    Int128 out = 0;
    if (__builtin_mul_overflow(a, b, &out)) throw OutOfRange();
    return out;
}

Int128 sum_of(Int128 a, Int128 b) {
    Int128 out = 0;
    if (__builtin_add_overflow(a, b, &out)) throw OutOfRange();
    return out;
}

/// An inequality in whole numbers without a common divisor, so that equal ones are found.
struct WholeRow {
    boost::container::small_flat_map<Slot, Int128, 3> factors;
    Int128 constant = 0;
    bool strict = false;

    void reduce() {
        factors.erase(
            std::remove_if(factors.begin(), factors.end(), [](const auto &f) { return f.second == 0; }),
            factors.end());
        Int128 divisor = constant;
        for (const auto &[slot, factor] : factors) divisor = common_divisor(divisor, factor);
        divisor = without_sign(divisor);
        if (divisor <= 1) return;
        for (auto &[slot, factor] : factors) factor /= divisor;
        constant /= divisor;
    }
    bool fails() const { return factors.empty() && (constant < 0 || (strict && constant == 0)); }
    friend bool operator==(const WholeRow &, const WholeRow &) = default;
    friend std::strong_ordering operator<=>(const WholeRow &, const WholeRow &) = default;
};

WholeRow whole_row(const Inequality &one) {
    Int128 denominator = one.sum.constant.den();
    for (const auto &[slot, factor] : one.sum.factors)
        denominator = product(denominator / common_divisor(denominator, factor.den()), Int128(factor.den()));
    const auto scaled = [&](const Exact &value) { return product(value.num(), denominator / value.den()); };
    WholeRow out;
    for (const auto &[slot, factor] : one.sum.factors) out.factors[slot] = scaled(factor);
    out.constant = scaled(one.sum.constant);
    out.strict = one.strict;
    out.reduce();
    return out;
}

/// What follows from a row with a positive and one with a negative factor of `slot`, without it.
WholeRow without(Slot slot, const WholeRow &positive, const WholeRow &negative) {
    const Int128 a = positive.factors.at(slot), b = -negative.factors.at(slot);
    WholeRow out;
    out.strict = positive.strict || negative.strict;
    out.constant = sum_of(product(positive.constant, b), product(negative.constant, a));
    for (const auto &[s, factor] : positive.factors) out.factors[s] = product(factor, b);
    for (const auto &[s, factor] : negative.factors) {
        Int128 &here = out.factors[s];
        here = sum_of(here, product(factor, a));
    }
    out.reduce();
    return out;
}

/// The quantity whose elimination leaves the fewest rows.
Slot cheapest(const std::vector<WholeRow> &rows) {
    std::map<Slot, std::pair<std::size_t, std::size_t>> signs;
    for (const auto &row : rows)
        for (const auto &[slot, factor] : row.factors)
            ++(factor > 0 ? signs[slot].first : signs[slot].second);
    return std::min_element(signs.begin(), signs.end(),
                            [](const auto &a, const auto &b) {
                                return a.second.first * a.second.second < b.second.first * b.second.second;
                            })
        ->first;
}

void once_each(std::vector<WholeRow> &rows) {
    std::sort(rows.begin(), rows.end());
    rows.erase(std::unique(rows.begin(), rows.end()), rows.end());
}

bool whole_rows_hold(std::vector<WholeRow> rows) {
    for (;;) {
        once_each(rows);
        if (std::any_of(rows.begin(), rows.end(), [](const WholeRow &row) { return row.fails(); }))
            return false;
        std::erase_if(rows, [](const WholeRow &row) { return row.factors.empty(); });
        if (rows.empty()) return true;
        const Slot slot = cheapest(rows);
        std::vector<WholeRow> next;
        std::vector<const WholeRow *> positive, negative;
        for (const auto &row : rows) {
            const auto found = row.factors.find(slot);
            if (found == row.factors.end())
                next.push_back(row);
            else
                (found->second > 0 ? positive : negative).push_back(&row);
        }
        for (const auto *p : positive)
            for (const auto *n : negative) {
                next.push_back(without(slot, *p, *n));
                if (next.size() <= 2 * most_rows) continue;
                once_each(next);
                if (next.size() > most_rows) throw OutOfRange();
            }
        rows = std::move(next);
    }
}

/// Each of one quantity alone, as most are: what they leave of it is a band. Nothing: one speaks of several.
std::optional<bool> bands_hold(const std::vector<Inequality> &all) {
    boost::container::small_flat_map<Slot, Band, 3> left;
    for (const auto &[sum, strict] : all) {
        if (sum.factors.size() > 1) return std::nullopt;
        if (sum.is_constant()) {
            if (sum.constant < Exact(0) || (strict && sum.constant == Exact(0))) return false;
            continue;
        }
        const auto &[slot, factor] = *sum.factors.begin();
        const bool least = factor > Exact(0);
        const Compare inclusive = least ? Compare::at_least : Compare::at_most;
        left[slot].narrow(strict ? (least ? Compare::over : Compare::under) : inclusive,
                          Exact(0) - sum.constant / factor);
    }
    return std::none_of(left.begin(), left.end(), [](const auto &one) { return one.second.empty(); });
}

} // namespace

Linear Linear::times(const Exact &factor) const {
    if (factor == Exact(0)) return {};
    Linear out{factors, constant * factor};
    for (auto &[slot, own] : out.factors) own = own * factor;
    return out;
}

Linear operator+(const Linear &a, const Linear &b) {
    Linear out{a.factors, a.constant + b.constant};
    for (const auto &[slot, factor] : b.factors) {
        Exact &own = out.factors[slot];
        own = own + factor;
        if (own == Exact(0)) out.factors.erase(slot);
    }
    return out;
}

Inequality over_zero(Linear sum) { return {std::move(sum), true}; }
Inequality at_least_zero(Linear sum) { return {std::move(sum), false}; }

std::optional<bool> can_hold(const std::vector<Inequality> &all) {
    try {
        if (const auto held = bands_hold(all)) return held;
        std::vector<WholeRow> rows;
        for (const auto &one : all) rows.push_back(whole_row(one));
        return whole_rows_hold(std::move(rows));
    } catch (const std::range_error &) {
        return std::nullopt;
    }
}

} // namespace beadbook
