#pragma once

#include "operations/comparing.hpp"
#include "operations/limit_relation.hpp"

#include <map>

namespace beadbook {

/// The measure of rules that allow or forbid.
inline constexpr std::string_view any_occurrence = "any occurrence";

/// A rule as one side of a comparison sees it.
struct ComparedRule {
    std::size_t index = 0;
    std::string measure;              ///< what is measured and how, in the program's own names
    std::vector<std::string> needs;   ///< conditions on finds and on facts that are not told; sorted
    std::vector<std::string> told;    ///< the same, as written
    std::vector<Condition> of_coupon; ///< those on facts of the coupon
    bool on_finds = true;             ///< not of the coupon itself or of other rules
};

/// One class of one set, at any thickness.
class ComparedSide {
public:
    /// `facts` is a coupon of some thickness: what it does not tell stays a condition.
    ComparedSide(const CriteriaSet &set, std::size_t class_index, const Coupon &facts, Unit unit);

    const CriteriaSet &set() const { return set_; }
    std::size_t class_index() const { return class_; }
    const ComparedRule &rule(std::size_t index) const { return rules_[index]; }
    const Limit &limit(std::size_t index) const { return set_.rules[index].limits[class_]; }
    /// Rules for a type found by an exam that are for this class, by index.
    std::vector<std::size_t> rules_for(TypeId type, Exam exam) const;
    /// Gaps for it, by index.
    std::vector<std::size_t> gaps_for(TypeId type, Exam exam) const;

    /// What these rules and gaps say of the thing at the thickness of the coupon: the strictest of them.
    /// `coupons`: as it may be where the conditions of the thing hold; never empty.
    SaidOfThing said(const std::string &measure, const std::vector<std::string> &needs,
                     const std::vector<std::size_t> &rules, const std::vector<std::size_t> &gaps,
                     const std::vector<Coupon> &coupons) const;
    /// The number of what was said, if the facts tell it.
    std::optional<Exact> number(const SaidOfThing &said, const Coupon &coupon) const;

    /// Thicknesses at which one of these rules and gaps, or the scope, begins, ends or bends; nm, with those
    /// beside a fraction. Unordered.
    std::vector<std::int64_t> edges(const std::vector<std::size_t> &rules,
                                    const std::vector<std::size_t> &gaps, const Coupon &facts) const;

private:
    /// A number that hangs on a blank of this class is blank.
    SaidOfThing::Kind kind_at(std::size_t index, const Coupon &coupon) const;
    SaidOfThing stricter_of(const SaidOfThing &a, const SaidOfThing &b, const Coupon &coupon) const;

    const CriteriaSet &set_;
    std::size_t class_;
    Unit unit_;
    std::vector<ComparedRule> rules_;
};

} // namespace beadbook
