#pragma once

#include "criteria/model.hpp"
#include "facts/exam_record.hpp"
#include "facts/log_line.hpp"
#include "language/issue.hpp"

#include <span>

namespace beadbook {

/// What holds of anything that somebody would believe at first sight. Where it does not hold the entry is
/// asked about; no verdict goes by it.
struct PlausibilityRule {
    enum class About : std::uint8_t { coupon, exam, indication };
    std::string id;
    About about = About::coupon;
    std::vector<Condition> when; ///< all must hold, else the rule has nothing to say
    Condition expect;
    std::string why;
    Standing standing;
};

/// A rule that an entry does not keep, with the numbers as they were read.
struct Unlikely {
    std::string rule;    ///< its id
    std::string reading; ///< "depth 5 in, thicker member 0.065 in: ..."
    friend bool operator==(const Unlikely &, const Unlikely &) = default;
};

/// All such rules, read once from criteria/plausible.yaml, which is built into the program. Missing data is
/// never unlikely.
class Plausibility {
public:
    static const Plausibility &shipped();
    /// Reads the file's format; mistakes go to `issues`.
    static Plausibility read(const std::string &text, Issues &issues);

    const std::vector<PlausibilityRule> &rules() const { return rules_; }

    std::vector<Unlikely> of(const CouponRecord &coupon, Day today) const;
    std::vector<Unlikely> of(const CouponRecord &coupon, const ExamRecord &exam, Day today,
                             std::optional<Day> registered = {}) const;
    /// `method` is the exam that found it; `others` are finds of the coupon that it is held against, itself
    /// perhaps among them.
    std::vector<Unlikely> of(const CouponRecord &coupon, const IndicationRecord &indication, Exam method,
                             std::span<const IndicationRecord> others = {}, const TypedAs &typed = {}) const;

private:
    std::vector<PlausibilityRule> rules_;
};

/// Refuses what nobody would believe at first sight: the same request is taken once somebody says that it is
/// meant so (field "sure").
struct Unsure : Refusal {
    explicit Unsure(const std::string &what) : Refusal(refused(what).give("sure")) {}
};

/// The rules that `found` breaks, to be kept with the entry. Throws Unsure with those that neither `sure` nor
/// the list of rules set aside before covers.
std::vector<std::string> set_aside_by(const std::vector<Unlikely> &found, bool sure,
                                      const std::vector<std::string> &before = {});
/// Whether that was set aside.
bool is_meant(const std::vector<std::string> &sure, std::string_view rule);
/// The question of one such reading.
std::string question_of(const Unlikely &unlikely);

} // namespace beadbook
