#pragma once

#include "criteria/model.hpp"
#include "facts/coupon_record.hpp"
#include "operations/written_otherwise.hpp"

namespace beadbook {

/// Which classes of two sets are to be held side by side.
struct CompareRequest {
    std::string class_id, as_class; ///< of the first and of the second; may be empty
    CouponRecord coupon;            ///< what else is known of it; its unit is the one that is printed
};

/// What one side says of a thing that is measured, over a stretch of thickness.
struct SaidOfThing {
    enum class Kind : std::uint8_t {
        value,    ///< a number, or one that follows from facts or from the find
        none,     ///< any occurrence rejects
        free,     ///< no limit
        ask,      ///< a person decides
        not_said, ///< the standard is silent, or it was not read
        measured, ///< of one that is allowed or not whatever it measures: a limit of something measured
        no_row,   ///< its table ends before such a thickness, or begins after it
        blank,    ///< a number that only the owner's copy has, and nobody filled in
        gap,      ///< a part of the standard that the set does not hold
        narrower, ///< only by rules with further conditions
        no_rule,  ///< no rule for this thing
        outside,  ///< the set is not for such a thickness
    };
    Kind kind = Kind::no_rule;
    std::size_t rule = 0;          ///< index in the set; value to blank
    std::optional<Exact> from, to; ///< the number at both ends of the stretch, where the facts tell it
    std::vector<std::size_t> also; ///< further rules, stricter for some finds
    /// Whether `rule` says it.
    bool by_a_rule() const { return kind <= Kind::blank; }
};

enum class CompareOutcome : std::uint8_t {
    equal,
    stricter, ///< the first lets less through, whatever the find
    looser,
    never_looser,   ///< stricter for some finds or facts that are not told, equal for others
    never_stricter, ///< the other way round
    either,         ///< stricter for some, looser for others
    only_first,     ///< the other side has no such limit
    only_second,
    open, ///< cannot be told: one side leaves it to a person, is silent, or its limits multiply quantities
};
std::string_view name_of(CompareOutcome outcome);

/// Thicknesses with one outcome by the same rules, both ends included; whole nanometres.
struct ThicknessStretch {
    std::int64_t from = 1;
    std::optional<std::int64_t> to; ///< none: as far as it was looked at, 1 m
    SaidOfThing first, second;
    CompareOutcome outcome = CompareOutcome::open;
};

/// One thing that is measured of some types, by one examination.
struct ComparedThing {
    Exam exam = Exam::VT;
    TypeSet types;
    bool of_second = false; ///< `rule` is a rule of the second set
    std::size_t rule = 0;   ///< a rule that measures it, for its words
    /// On finds, and on facts of the coupon that are not told; as written.
    std::vector<std::string> conditions;
    std::vector<ThicknessStretch> stretches; ///< ascending; where neither side speaks is left out

    /// All are equal in this unit, and not where the work is measured in the other one.
    bool differs_in_other_unit = false;

    bool all_equal() const;
};

/// What stands in one of them and not in the other, by index.
struct OnlyInOne {
    std::vector<std::size_t> first, second;
    bool any() const { return !first.empty() || !second.empty(); }
};

/// One class of the first set beside one of the second.
struct ComparedClasses {
    std::size_t first = 0, second = 0; ///< by index in the sets
    std::vector<ComparedThing> things; ///< by exam, then in the order of the rules
    /// Types that rules of one side only speak of, by exam.
    std::array<TypeSet, exam_count> only_first, only_second;
    OnlyInOne rules; ///< rules on the coupon itself and on several others together, compared as written
    OnlyInOne scope, required, relevance, merges; ///< compared as written
};

struct ComparedSets {
    std::shared_ptr<const CriteriaSet> first, second;
    CouponRecord coupon;
    Unit unit = Unit::inch; ///< in which the work is measured, and this is printed
    std::vector<ComparedClasses> classes;
    std::vector<WrittenOtherwise> otherwise; ///< of the sets as a whole
};

/// Holds each limit of one class against the other's, worked out as the judge does, at the usual
/// thicknesses and wherever a rule changes; an outcome's edge is found to the nanometre. Both members are as
/// thick as that, and welded through. A class that is not named is the one of the same name, else the only
/// one; with none named, all of the same name in turn. The sets may be one. Throws Refusal at "class",
/// "as-class" or a thickness that is told.
ComparedSets compare_sets(std::shared_ptr<const CriteriaSet> first, std::shared_ptr<const CriteriaSet> second,
                          const CompareRequest &request);

/// The same of two sets that are at hand, and two of their classes by index; in this unit alone.
ComparedClasses compare_classes(const CriteriaSet &first, std::size_t class_of_first,
                                const CriteriaSet &second, std::size_t class_of_second, const Coupon &coupon,
                                Unit unit);

} // namespace beadbook
