#pragma once

#include "operations/evidence.hpp"

namespace beadbook {

/// What became of coupons that proved something of a welder; each is folded once.
class Fates {
public:
    Fates(Office &office, const std::string &welder) : office_(office), welder_(welder) {}

    struct Fate {
        std::string why;    ///< empty if it still proves it
        bool doubt = false; ///< not undone, but its grade must be given again
        bool unreadable = false;
        std::optional<Day> since;
        std::int64_t described = 0; ///< the entry that says what was welded

        std::int64_t newest_reason = 0; ///< entry about a find that keeps it from an accept

        /// A doubt that a person set aside, with the reason on record, is settled; not of what was found
        /// after that entry.
        bool bears(const std::vector<Shortcoming> &set_aside, std::int64_t entry) const;
    };
    const Fate &of(const std::string &coupon);

    /// Renewals and extensions that count no more, by entry, and why: the gate is asked again about each.
    std::map<std::int64_t, std::string> undone(const WelderState &welder);
    struct Refused {
        std::string why;        ///< empty: for nothing
        bool by_reason = false; ///< a reason would set it aside
    };
    /// Asks the gate again, by which its coupon qualified or its paper was carried in: what it would be
    /// refused for today, beyond what was set aside then. A grade that is to be given again is told
    /// otherwise.
    Refused refused_today(const WelderState &welder, const QualificationRecord &record,
                          const RangeRules &rules);

    /// What settles the doubt of one whose coupon is described otherwise since, as the gate would take it
    /// now:
    /// "; if it is so, ...".
    std::string anew_words(const WelderState &welder, const QualificationRecord &record,
                           const RangeRules &rules);

    /// The coupon that a proof is of, and those that passed with it after a failed one.
    static std::vector<std::string> coupons_of(const Evidence &proof);

    /// Made when they are first asked for.
    const GradedTests &tests(const WelderState &welder);

private:
    std::string refused_today(const WelderState &welder, const WelderEvent &event);
    /// All that stands in the way by now, and was neither set aside by that entry nor is told elsewhere, in
    /// sentences. A grade against the verdict was set aside for what had been found by then. `coupon` is
    /// meant where a shortcoming names none.
    std::string in_the_way(const std::vector<Shortcoming> &lacks, const std::string &coupon,
                           const std::vector<Shortcoming> &aside, std::int64_t entry,
                           const RangeRules &rules);

    Office &office_;
    std::string welder_;
    std::map<std::string, Fate> fates_;
    std::optional<GradedTests> tests_; ///< made when they are first asked for
};

} // namespace beadbook
