#pragma once

#include "judge/bound_limit.hpp"
#include "judge/few.hpp"

#include <array>
#include <bit>

namespace beadbook {

/// Whether something holds, and what would tell it where that is not known.
struct Settled {
    Truth truth = Truth::yes;
    Missing lacks;
};

/// Classes of a set, class k as bit k; a set has 32 at most.
using ClassBits = std::uint32_t;

template <class F>
void each_of(ClassBits classes, F f) {
    for (; classes != 0; classes &= classes - 1) f(static_cast<std::size_t>(std::countr_zero(classes)));
}

/// The stretch in which a rule sums or counts, on this coupon.
struct BoundWindow {
    const Window *window = nullptr; ///< null: whole groups in line
    Missing missing;                ///< why its length is not known
    std::optional<Exact> length;
    std::int64_t width = 0; ///< the length in whole nanometres, a fraction rounded up
    bool whole = false;     ///< it holds the whole weld
};

/// A rule on this coupon. Of one that does not apply nothing else is bound.
struct BoundRule {
    static constexpr std::size_t limit_kinds = 6;
    Settled applies;
    std::array<ClassBits, limit_kinds> by_kind{}; ///< classes with each kind of limit
    std::optional<Slot> lone_measure;             ///< what it measures of a find, if that is one quantity
    Few<BoundWindow> windows;                     ///< one; or one a class where they differ
    ClassBits blank = 0; ///< classes whose limit or window still lacks a number of the standard

    ClassBits classes(Limit::Kind kind) const { return by_kind[static_cast<std::size_t>(kind)]; }
    const BoundWindow &window(std::size_t class_index) const {
        return windows.size() == 1 ? windows.front() : windows[class_index];
    }
};

/// A criteria set bound to the facts of one coupon: what hangs on these two alone is decided once, and then
/// serves every judgement of coupons with the same facts. Immutable; set and vocabulary outlive it.
class BoundSet {
public:
    /// As `engine` judges. With `found`, for these finds alone: rules that speak of none of them are left
    /// out.
    BoundSet(const CriteriaSet &set, const Coupon &coupon, const Vocabulary &vocabulary, int engine,
             const std::vector<Indication> *found = nullptr);

    const CriteriaSet &set;
    const Vocabulary &vocabulary;
    const Coupon coupon;
    const int engine;

    const BoundRule &rule(std::size_t index) const { return rules_[index]; }
    /// Of a rule that may apply, where the class has Limit::Kind::value.
    const BoundLimit &limit(std::size_t rule, std::size_t class_index) const {
        return limits_[rule * set.classes.size() + class_index];
    }
    /// Methods by which the class has any rule, where neither the set nor the coupon asks for an exam: one of
    /// these must have been made then. Empty where one is asked for.
    const std::vector<Exam> &one_of_any(std::size_t class_index) const { return one_of_any_[class_index]; }
    ClassBits all_classes() const { return all_classes_; }

    struct Scope {
        Settled asked, held;
    };
    std::vector<Scope> scope;      ///< of each part of the set's scope
    std::vector<Settled> required; ///< whether each required exam is needed here
    std::vector<Settled> gaps;     ///< whether each gap bears on such a coupon

    /// Rules by index that are looked at once a coupon, whatever was found.
    std::vector<std::size_t> combining, of_coupon, to_be_measured, only_with;
    /// Of a rule that others combine, the share of its limit that is borderline; empty: no rule combines any.
    std::vector<std::optional<Exact>> borderline;

    /// The type whose size is held against the longest leg, if that is known.
    std::optional<TypeId> fillet_size;
    /// Whether what is said of its magnetism fits its metal; nothing where not both are told.
    std::optional<bool> metal_agrees;
    /// On a tube, and nobody said how its seam runs.
    bool seam_untold = false;
    /// Joint and metal, where nobody read what the set covers and nobody told them.
    Missing untold;

private:
    void bind_rule(std::size_t index);
    void bind_coupon();
    std::vector<Exam> methods_judged(std::size_t class_index) const;

    ClassBits all_classes_;
    std::vector<std::vector<Exam>> one_of_any_;
    std::vector<BoundRule> rules_;
    std::vector<BoundLimit> limits_;
};

} // namespace beadbook
