#pragma once

#include "criteria/limit_order.hpp"
#include "judge/coupon.hpp"

#include <functional>

namespace beadbook {

/// A step that people read limits by: 0.001 in, 0.01 mm, one degree, one.
Exact reading_step(Dimension dimension, Unit unit);

/// What a rule's own conditions name of a coupon, or where its limit goes from one part to another: a value,
/// or a word.
struct NamedPoint {
    std::optional<Quantity> quantity; ///< else it is a word
    std::int64_t value = 0;
    Fact fact = Fact::joint;
    std::uint8_t word = 0;
    bool is_met_by(const Coupon &coupon) const {
        return quantity ? coupon.values.has(*quantity) && coupon.values[*quantity] == value
                        : coupon.facts[static_cast<std::size_t>(fact)] == word;
    }
};

/// Values of a coupon for which a rule is heard in one class, by what its limit, its window and its
/// conditions speak of: at both sides of each edge, where the formula changes from one part to another, and
/// between.
class BoundaryCoupons {
public:
    BoundaryCoupons(const CriteriaSet &set, const Rule &rule, std::size_t class_index);

    /// The spread of the limit first, no more than a reader takes in. Empty: nothing was found that holds.
    std::vector<Coupon> all() const;

    /// Each is to be met by some coupon: of a band the last value within it, on either side.
    std::vector<NamedPoint> named() const;
    /// Coupons with that value or word, until `takes` has what it wants.
    void each_with(const NamedPoint &named, const std::function<bool(const Coupon &)> &takes) const;

    /// The quantities that make the coupons differ.
    const std::vector<Quantity> &varied() const { return varied_; }

    /// What scope and rule ask of its quantities.
    bool holds_for_coupon(const Coupon &coupon) const;

private:
    std::vector<std::int64_t> values_of(Quantity q) const;
    void take(const Formula &formula);
    Coupon plain() const;
    void give_words(Coupon &coupon) const;
    bool words_hold(const Coupon &coupon) const;
    std::optional<std::int64_t> last_within(Quantity q, const Condition::Edge &edge) const;

    const CriteriaSet &set_;
    const Rule &rule_;
    const Limit &limit_;
    std::vector<Condition> conditions_;
    std::vector<Quantity> varied_, asked_; ///< of the limit and window; and of the conditions
};

/// Values of one find with `measure` at `value` for which `where` holds, and which counts; what is settled
/// already stays as it is. Nothing if none was found.
std::optional<Environment::Values> find_with(const CriteriaSet &set, const Rule &rule, const Coupon &coupon,
                                             Quantity measure, std::int64_t value,
                                             std::array<std::uint8_t, attribute_count> &words,
                                             const Environment::Values &settled);

} // namespace beadbook
