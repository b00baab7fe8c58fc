#include "operations/limit_curves.hpp"

#include "criteria/environment.hpp"
#include "operations/at_thickness.hpp"
#include "operations/class_asked.hpp"

#include <algorithm>
#include <array>

namespace beadbook {
namespace {

bool has_numbers(const Rule &rule, const std::vector<std::size_t> &classes) {
    if (rule.kind == Rule::Kind::presence || rule.kind == Rule::Kind::coupon ||
        rule.kind == Rule::Kind::combine)
        return false;
    return std::any_of(classes.begin(), classes.end(),
                       [&](std::size_t k) { return rule.limits[k].kind == Limit::Kind::value; });
}

bool same_window(const Rule &rule, std::size_t a, std::size_t b) {
    return !rule.window_by_class || rule.windows[a].text == rule.windows[b].text;
}

class Curves {
public:
    Curves(const CriteriaSet &set, const Coupon &coupon, const std::vector<std::int64_t> &thickness)
        : set_(set) {
        for (const std::int64_t nm : thickness)
            for (std::size_t side = 0; side < sides_.size(); ++side) {
                const Coupon &one = sides_[side].coupons.emplace_back(
                    so_thick(coupon, nm + static_cast<std::int64_t>(side) - 1, set.unit));
                sides_[side].outside.push_back(outside_scope(set, one));
            }
    }

    /// Into the one list or the other.
    void take(LimitCurves &out, std::size_t index) const {
        const Rule &rule = set_.rules[index];
        const auto is_for_another = [&](std::size_t k) { return rule.limits[k].kind == Limit::Kind::other; };
        if (out.classes.size() < set_.classes.size() &&
            std::all_of(out.classes.begin(), out.classes.end(), is_for_another))
            return;
        UncurvedRule other{index, {}, false, !has_numbers(rule, out.classes), false};
        if (other.no_number) return out.others.push_back(other);
        for (const std::size_t k : out.classes)
            if (rule.limits[k].kind == Limit::Kind::value && !of_coupon(rule.limits[k].formula))
                other.of_finds = true;
        if (other.of_finds) return out.others.push_back(other);
        CurvedRule curved{index, {}};
        bool any = false;
        for (const std::size_t k : out.classes) {
            if (rule.limits[k].kind != Limit::Kind::value) continue;
            Missing beside;
            LimitCurve one;
            one.classes = {k};
            one.at = curve(rule, k, sides_[1], other.lacks, one.open);
            std::vector<bool> open;
            one.under = curve(rule, k, sides_[0], beside, open);
            one.over = curve(rule, k, sides_[2], beside, open);
            any =
                any || std::any_of(one.at.begin(), one.at.end(), [](const auto &v) { return v.has_value(); });
            const auto same =
                std::find_if(curved.curves.begin(), curved.curves.end(), [&](const LimitCurve &before) {
                    return before.at == one.at && before.under == one.under && before.over == one.over &&
                           before.open == one.open && same_window(rule, before.classes.front(), k) &&
                           (rule.limits[before.classes.front()].text == rule.limits[k].text ||
                            std::find(one.open.begin(), one.open.end(), true) == one.open.end());
                });
            if (same == curved.curves.end())
                curved.curves.push_back(std::move(one));
            else
                same->classes.push_back(k);
        }
        other.not_so = !other.lacks.any();
        if (any)
            out.rules.push_back(std::move(curved));
        else
            out.others.push_back(other);
    }

private:
    /// Coupons of every thickness, or all of them a little thinner or thicker.
    struct Side {
        std::vector<Coupon> coupons;
        std::vector<bool> outside;
    };

    static LimitCurve::Values curve(const Rule &rule, std::size_t k, const Side &side, Missing &lacks,
                                    std::vector<bool> &open) {
        LimitCurve::Values out;
        for (std::size_t i = 0; i < side.coupons.size(); ++i) {
            out.emplace_back();
            open.push_back(false);
            const Coupon &coupon = side.coupons[i];
            if (side.outside[i] || truth_for(rule.when, coupon) == Truth::no) continue;
            const Evaluated limit =
                rule.limits[k].formula.limit(Environment{coupon.values, nullptr}, rule.compare);
            if (limit.known())
                out.back() = limit.value;
            else if (!limit.missing.has(Missing::table_value())) // beyond its table nothing would tell it
                lacks |= limit.missing, open.back() = limit.missing.any();
        }
        return out;
    }

    const CriteriaSet &set_;
    std::array<Side, 3> sides_;
};

/// How far the usual thicknesses are stretched, so that all that the set covers is drawn: one whose scope
/// ends nowhere near is drawn as far as most work goes.
std::int64_t stretched_by(const CriteriaSet &set, const Coupon &coupon, std::int64_t thickest) {
    for (const std::int64_t times : {1, 2, 4, 8})
        if (outside_scope(set, so_thick(coupon, times * thickest + 1, set.unit))) return times;
    return 1;
}

} // namespace

LimitCurves limit_curves(std::shared_ptr<const CriteriaSet> set, const CouponRecord &coupon) {
    check_tells_no_thickness(coupon);
    LimitCurves out;
    out.coupon = coupon;
    if (const std::string sought = coupon.get("class"); !sought.empty())
        out.classes = {class_asked(*set, sought, "class")};
    else
        for (std::size_t k = 0; k < set->classes.size(); ++k) out.classes.push_back(k);
    const bool inches = set->unit == Unit::inch;
    out.thickness = usual_thicknesses(set->unit);
    // Those that are told are stretched with them.
    const std::int64_t times = stretched_by(*set, coupon.facts(), out.thickness.back());
    for (auto &nm : out.thickness) nm *= times;
    if (inches)
        out.told = {3, 7, 11, 15, 23, 31, 47, 63}; // 1/16, 1/8, 3/16, 1/4, 3/8, 1/2, 3/4, 1 in
    else
        out.told = {3, 7, 11, 19, 31, 39, 59, 79, 99}; // 1, 2, 3, 5, 8, 10, 15, 20, 25 mm
    const Curves curves(*set, coupon.facts(), out.thickness);
    for (std::size_t r = 0; r < set->rules.size(); ++r) curves.take(out, r);
    out.set = std::move(set);
    return out;
}

} // namespace beadbook
