#pragma once

#include "judge/bound_set.hpp"
#include "judge/item.hpp"
#include "judge/judgement.hpp"

#include <limits>
#include <span>

namespace beadbook {

/// The first engine that asks for what decides before what it would decide about, and for the measurement of
/// the side that a rule speaks of.
constexpr int first_to_ask_in_order = 4;

/// An item that a rule speaks of, found by an exam: ordered by rule, exam and item, so one number.
class Candidate {
public:
    Candidate(std::uint16_t rule, Exam exam, std::uint32_t item)
        : key_(std::uint64_t{rule} << 48 | std::uint64_t{static_cast<std::uint8_t>(exam)} << 32 | item) {}
    std::uint16_t rule() const { return static_cast<std::uint16_t>(key_ >> 48); }
    Exam exam() const { return static_cast<Exam>(key_ >> 32 & 0xff); }
    std::uint32_t item() const { return static_cast<std::uint32_t>(key_); }
    bool of_same_rule_and_exam(Candidate other) const { return key_ >> 32 == other.key_ >> 32; }
    friend auto operator<=>(Candidate, Candidate) = default;

private:
    std::uint64_t key_;
};
using Candidates = boost::container::small_vector<Candidate, 64>;

/// Whether a rule that names several methods looks at the finds of each by themselves, or at those of all.
enum class Methods : std::uint8_t { apart, together };

/// What all rule checks of one judgement share: the input, and the classes' findings as they grow.
class Evaluation {
public:
    Evaluation(const BoundSet &bound, const std::vector<Indication> &indications, std::vector<Item> items,
               Methods methods = Methods::apart);

    const BoundSet &bound;
    const CriteriaSet &set;
    const Coupon &coupon;
    const std::vector<Indication> &indications;
    const std::vector<Item> items;
    const Methods methods;
    const int engine;     ///< whose verdicts are asked for
    bool outside = false; ///< the set does not cover the coupon
    std::vector<ClassJudgement> classes;

    /// What is known of some parts of a joined item; null: engines before that did not ask.
    const LeastKnown *least_of(const Item &item) const {
        return engine >= first_with_bounds ? &item.least : nullptr;
    }

    /// Numbers of the indications behind items, ascending.
    std::vector<int> numbers_of(std::span<const std::uint32_t> of_items) const;

    /// A new finding of a class, to be filled in.
    Finding &add(std::size_t class_index, Verdict effect) {
        if (effect != Verdict::accept) open_ &= ~(std::uint32_t{1} << class_index);
        auto &findings = classes[class_index].findings;
        if (findings.empty()) findings.reserve(4);
        Finding &out = findings.emplace_back();
        out.effect = effect;
        return out;
    }
    void add(std::size_t class_index, Finding finding) {
        Finding &out = add(class_index, finding.effect);
        out = std::move(finding);
    }

    /// A measure that kept its limit, with their ratio: remembered if it is the nearest miss so far.
    void kept(std::size_t class_index, std::size_t rule, const Exact &measured, const Exact &limit,
              double ratio, std::span<const std::uint32_t> of_items, const std::optional<Span> &place) {
        if (ratio >= nearest_[class_index].ratio)
            take_nearest(class_index, rule, measured, limit, ratio, of_items, place);
    }

    /// Nothing has been said against the class yet, so what is evaluated belongs to its proof.
    bool open(std::size_t class_index) const { return (open_ >> class_index) & 1u; }
    bool any_open() const { return (open_ & bound.all_classes()) != 0; }
    /// What became of entries before a rule, for the proof: of one class, or of all.
    struct Traced {
        static constexpr std::uint16_t all_classes = 0xffff;
        std::uint16_t rule = 0, class_index = all_classes;
        ProvenEntry::How how = ProvenEntry::How::within;
        bool has_numbers = false;
        std::uint32_t first = 0, size = 0; ///< its entries in traced_entries; none: the whole coupon
        Exact measured, limit;
    };
    /// An entry by the index of its indication, and whether the rule certainly applies and speaks of it.
    struct TracedEntry {
        std::uint32_t entry = 0;
        bool sure = false;
    };
    void trace(const Traced &row) { traces_.push_back(row); }
    /// Where the entries of rows to come are kept.
    boost::container::small_vector<TracedEntry, 32> traced_entries;
    /// Puts those that an item is made of there.
    void list_entries(std::uint32_t item, bool sure) {
        for (const std::size_t m : items[item].members)
            traced_entries.push_back({static_cast<std::uint32_t>(m), sure});
    }
    /// A new finding of a rule that rejects only together with another, kept until both are judged.
    Finding &hold_back(std::size_t rule, std::size_t class_index, Exam exam) {
        return held_back_.emplace_back(HeldBack{rule, class_index, exam, {}}).finding;
    }
    bool holds_back(std::size_t rule, std::size_t class_index, Exam exam) const;
    std::vector<Finding> take_back(std::size_t rule, std::size_t class_index, Exam exam) const;
    /// Takes out the rows of a rule for a class and one exam.
    void untrace(std::size_t rule, std::size_t class_index, Exam exam);
    /// Whether a rule is for this coupon, and what would tell; that it is not is kept for the proof.
    Truth applies(std::size_t rule, Missing &lacks);
    std::span<const Traced> traces() const { return view(traces_); }
    const std::vector<int> &not_applying() const { return not_applying_; }

    /// These classes have a rule that decides about item `i`.
    void cover(std::size_t i, ClassBits by) { covered_[i] |= by; }
    ClassBits not_covered(std::size_t i) const { return bound.all_classes() & ~covered_[i]; }
    /// A rule may speak of item `i`, if what is missing turns out so.
    void may_cover(std::size_t i, Missing hangs_on) { may_cover_[i] |= hangs_on; }
    Missing cover_hangs_on(std::size_t i) const { return may_cover_[i]; }

    /// How near a rule came to its limit in a class, for rules that combine others.
    struct Borderline {
        Truth reached = Truth::no;
        std::vector<std::uint32_t> items;
    };
    void note_borderline(std::size_t rule, std::size_t class_index, const Exact &measured, const Exact &limit,
                         Truth certain, std::span<const std::uint32_t> of_items) {
        if (!bound.borderline.empty() && bound.borderline[rule])
            hold_borderline(rule, class_index, measured, limit, certain, of_items);
    }
    const Borderline &borderline(std::size_t rule, std::size_t class_index) const {
        return borderlines_[rule * set.classes.size() + class_index];
    }

    /// Best so far, written into the classes.
    void settle_nearest();

private:
    void take_nearest(std::size_t class_index, std::size_t rule, const Exact &measured, const Exact &limit,
                      double ratio, std::span<const std::uint32_t> of_items,
                      const std::optional<Span> &place);
    void hold_borderline(std::size_t rule, std::size_t class_index, const Exact &measured, const Exact &limit,
                         Truth certain, std::span<const std::uint32_t> of_items);

    struct Nearest {
        double ratio = -1;
        std::size_t rule = 0;
        Exact measured, limit;
        Few<std::uint32_t> items;
        std::optional<Span> place;
    };
    struct HeldBack {
        std::size_t rule, class_index;
        Exam exam;
        Finding finding;
    };
    std::vector<HeldBack> held_back_;
    std::uint32_t open_ = ~std::uint32_t{0};
    boost::container::small_vector<Traced, 48> traces_;
    std::vector<int> not_applying_;
    boost::container::small_vector<Nearest, 3> nearest_;
    Several<ClassBits> covered_;
    Several<Missing> may_cover_;
    std::vector<Borderline> borderlines_;
};

/// measured / limit for a maximum, limit / measured for a minimum; over 1 is out.
inline double ratio_of(const Exact &measured, const Exact &limit, Compare compare) {
    const bool upper = is_maximum(compare);
    const double above = (upper ? measured : limit).to_double();
    const double below = (upper ? limit : measured).to_double();
    if (below == 0) return above == 0 ? 1 : std::numeric_limits<double>::infinity();
    return above / below;
}

/// The proof of a class that nothing speaks against, from what was evaluated.
Proof proof_from(const Evaluation &evaluation, std::size_t class_index, const std::vector<ExamDone> &exams,
                 std::size_t compared);

/// Judges one rule on the candidates that one exam found, or all exams together; adds findings to every
/// class.
void check_rule(Evaluation &evaluation, std::size_t rule, std::span<const Candidate> candidates);

} // namespace beadbook
