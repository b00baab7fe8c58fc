#pragma once

#include "facts/shortcoming.hpp"
#include "operations/catalogue.hpp"
#include "operations/done.hpp"
#include "operations/required_exams.hpp"
#include "operations/source.hpp"
#include "qualify/validity.hpp"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace beadbook {

struct PlanRequest {
    Source work;       ///< the shop's work (criteria/welder/README.md)
    std::string rules; ///< for welders, instead of those that the work names; may be empty
    std::string
        criteria; ///< that coupons are examined by, instead of those that the work names; may be empty
};

/// What the shop welds. Files that it names lie beside it. Throws DataError with every mistake.
Work read_work(Catalogue &catalogue, const Source &source, const std::string &rules = "");

/// A qualification that the welder has, as far as planning looks at it.
struct HeldTest {
    int number = 0; ///< among the welder's
    std::shared_ptr<const RangeRules> rules;
    Weld test;
    Unit unit = Unit::inch; ///< that the test was written in
    Validity validity;
    std::vector<VariableRange> range;
    std::vector<Aside> aside = {}; ///< that it rests on
    bool carried = false;          ///< in, by a paper from elsewhere
    int renewed_by = 0;            ///< coupons that a retest asks of a renewal; 0: none failed
};

/// One variable that keeps a test from covering a weld, with all that the test allows of it.
struct Shortfall {
    VariableCover cover;
    VariableRange allows;
};

/// Work that no coupon covers, and why the nearest one does not.
struct UncoveredWork {
    std::string job;
    Weld work; ///< one weld of it
    std::optional<Weld> nearest;
    std::vector<Shortfall> because; ///< of the nearest
};

/// Work that is planned for, though no coupon could cover it for certain.
struct UncertainWork {
    std::string job;
    Job::Sizes sizes;                    ///< that it spans
    const UnreadTrait *unread = nullptr; ///< of the rules: no limit of these was read
};

/// Work that what is held does not cover, and why the nearest qualification does not.
struct MissedWork {
    std::string job;
    Weld work;      ///< one weld of it
    int number = 0; ///< of the nearest qualification
    std::vector<Shortfall> because;
};

/// Whether the welder may do one job, by what is held.
struct JobAllowed {
    std::string job;
    Truth allowed = Truth::no;
    std::vector<int> by; ///< numbers of qualifications that allow it
    struct Renewal {
        int number = 0;  ///< of a lapsed qualification
        int coupons = 1; ///< that renew it, and all of its process by the same rules
    };
    std::vector<Renewal> renewals;   ///< with these it is allowed, so no test is asked for
    std::vector<Lack> lacks;         ///< allowed is unknown for want of these
    std::vector<std::string> unread; ///< and for want of what the rules' text would have to say
    std::vector<int> doubted;        ///< and until the doubt about these is settled
};

/// The fewest coupons for the work, each with its examinations.
struct PlanResult {
    Work work;
    std::shared_ptr<const CriteriaSet> criteria; ///< that the coupons are examined by; may be null
    std::vector<PlannedTest> tests;
    std::vector<UncertainWork> uncertain;
    std::vector<HeldTest> held;         ///< by the work's rules, valid or not
    std::vector<JobAllowed> jobs;       ///< one a job, by what is held and valid
    std::vector<std::string> held_jobs; ///< covered by what is held and valid
    std::vector<MissedWork> missed;     ///< the other jobs, if anything is held
    std::vector<UncoveredWork> uncovered;
    std::size_t candidates = 0; ///< kinds of coupon that were weighed
    bool minimal = true;        ///< proven: no fewer coupons do
    std::size_t at_least = 0;   ///< proven: no fewer than this do

    /// Whether all work is covered, once the coupons pass: if it is known what accepts them.
    Truth covers_all() const;
    /// Whether all jobs are allowed: one that is not decides.
    Truth allows_all() const;
    /// Ids of some jobs, by index.
    std::vector<std::string> ids(const std::vector<std::size_t> &jobs) const;
};

/// What is held counts where it is valid and by the work's rules. No coupon is planned for a job that the
/// renewal of a lapsed qualification gives back.
Done<PlanResult> plan_work(Catalogue &catalogue, const PlanRequest &request,
                           const std::vector<HeldTest> &held = {});

} // namespace beadbook
