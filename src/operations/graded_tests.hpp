#pragma once

#include "facts/shortcoming.hpp"
#include "operations/failure_seen.hpp"
#include "operations/office.hpp"
#include "operations/rule_words.hpp"
#include "operations/welder_names.hpp"
#include "qualify/retest.hpp"

#include <map>
#include <set>

namespace beadbook {

/// Methods and "mechanical" by which a coupon could pass one of the rules' examinations.
bool examined_by(const std::string &exam, const CouponState &coupon);

/// Whether the coupon was a test when it was first examined or graded: what its purpose is called later
/// changes nothing of what it showed.
bool was_test(const std::vector<Entry> &history);

/// As facts/coupon_weld.hpp. Throws DataError that names the coupon: its process cannot be read.
std::vector<Weld> welds_named(const CouponRecord &coupon);

/// The tests of one welder that passed or failed, each folded once, and the welder's training: what retest
/// rules look at. A coupon that its criteria reject has failed, whether or not somebody graded it, unless an
/// override took the grade for its verdict; a pass by other criteria clears it only if they accept it, and
/// for rules that accept a test by these. One that is to be graded again has not passed. A coupon that
/// cannot be read may have failed. One that failed under a name that the welder ever had, before he was
/// enrolled say, is his as well; one under a name that may be his may have been.
class GradedTests {
public:
    GradedTests(Office &office, const WelderState &welder);

    struct Test {
        CouponState coupon;
        std::optional<Day> day; ///< of the weld
        bool passed = false;
        std::vector<Weld> welds;
        std::vector<std::string> failed_by;       ///< as failed_by.hpp
        std::optional<FailureSeen> seen = {};     ///< failed: by an exam of it
        std::int64_t shown_by = 0;                ///< entry by which a failure showed
        std::int64_t graded_by = 0;               ///< entry that first graded it; 0: none
        std::int64_t begun_by = 0;                ///< its first entry
        std::int64_t day_told = 0;                ///< the entry that told the day first
        std::vector<CouponRecord> described = {}; ///< failed: whatever it was said to be as it failed
        std::string called_then = {}; ///< a name of the welder's, under another's mark (passed_on_name.hpp)
        /// It failed by other criteria than it passed by: it has passed only for those who take these.
        bool failed_by_others = false;
        bool settled = false; ///< somebody's qualification or renewal rests on it
        GradeStanding grade = {};

        /// Whether it passed by what these rules accept a test by; what failed by others, with an accept.
        bool passed_by(const RangeRules &rules) const;
        /// The same where no rules are meant.
        bool passed_at_all() const { return passed && (!failed_by_others || settled); }
        /// When it was seen that it failed, else the day of the weld: training bears on it from the next day
        /// on.
        std::optional<Day> seen_on() const { return seen ? std::optional(seen->day) : day; }
    };
    /// The retest that a coupon belongs to, with it as the last one that passed.
    struct Retest {
        RetestState state;
        std::set<std::string> unfit;      ///< of `state.passed`, and count for nothing: see counts_as_retest
        std::vector<Shortcoming> unknown; ///< coupons that failed and may belong to it; training entered late
        /// How many passed that count: the one way in which they are counted.
        int fit() const;
    };
    /// Looks at tests of the same process, joint, form and position, and at training in the process. Of a
    /// test that is not on record itself `begun_by` is the entry by which it came.
    Retest retest_of(const CouponRecord &coupon, Day welded, const Weld &weld, const RangeRules &rules,
                     std::optional<std::int64_t> begun_by = {}) const;
    const Test *find(const std::string &coupon) const;
    /// What is on record as the retest that a coupon is one of, by these rules: what counted by another of
    /// its coupons is done with, and this one rests on the same; null if there is none.
    const Evidence *retest_on_record(const std::string &coupon, const std::string &process,
                                     const std::string &rules) const;
    /// The newest revocation of what was held in a process that a weld of that day does not follow; null if
    /// there is none.
    const WelderEvent *revoked_since(const std::string &process, Day welded) const;
    const std::vector<Test> &all() const { return tests_; }
    /// Coupons of the welder, none for practice, that show something by which nobody can say whether they
    /// failed (unjudged_finds.hpp): tests that may have.
    const std::vector<Test> &unjudged() const { return unjudged_; }
    /// What failed or may have, one for each description of it: another record that the welder's coupons are
    /// taken to without it is told so.
    std::vector<CarriedFact> failures() const;

private:
    /// Whether one that passed may stand beside a weld after a failure by the exams of what failed before it,
    /// where the rules ask that, and by what the rules accept a test by.
    bool counts_as_retest(const Test &test, const Weld &weld, const RangeRules &rules) const;
    /// Whether one that passed lacks nothing by itself that qualifying by it would ask.
    bool is_whole(const Test &test, const Weld &weld, const RangeRules &rules) const;
    /// Whether one that passed was welded once what failed before it was seen (common practice, no source).
    bool follows_what_failed(const Test &test, const Weld &weld, const RangeRules &rules) const;
    /// Whether one that passed qualified the welder, or renewed what was held, by these rules and would
    /// today: not in doubt, and not because a reason set a retest aside. Only such a one is done with what
    /// failed before it.
    bool closes(const Test &test, const Weld &weld, const RangeRules &rules) const;
    bool would_qualify(const Test &test, const Weld &weld, const RangeRules &rules) const;
    /// Training in the process, by its day, that was entered only after a retest was graded, for a day before
    /// it was welded.
    std::map<Day, const WelderEvent *> late_training(const std::string &process, const Test &retest) const;
    void take(Office &office, const WelderNames &welder, const std::string &id);
    /// Tests that failed on another record and were left out when others of the welder came from it: their
    /// marks are told as those of elsewhere, as another coupon may be called so here.
    void take_beside(Office &office, const WelderNames &welder);
    /// Whether that test came here since, or is told of by itself.
    bool stands_here(const CarriedFact &failed) const;

    Office &office_;
    std::vector<Test> tests_;
    std::vector<Test> perhaps_; ///< that failed under a name which may be, or was, the welder's
    std::vector<Test> unjudged_;
    struct Unreadable {
        std::string why;
        std::optional<Weld> weld; ///< what can be read of it, without its process
        std::optional<CouponRecord> as;
    };
    std::map<std::string, Unreadable> unreadable_; ///< coupons that may have failed
    /// What a coupon counted by: a qualification or a renewal.
    struct Settled {
        std::string rules;
        RuleWords words; ///< of the rules, that the coupon may not hold
        std::vector<Shortcoming> overridden;
    };
    std::map<std::string, std::vector<Settled>> settled_;
    struct RetestOnRecord {
        std::string rules, process;
        Evidence evidence;
    };
    std::vector<RetestOnRecord> retests_;
    mutable std::map<std::string, bool> closes_; ///< asked once: by coupon, process and rules
    std::set<std::string> taken_; ///< coupons whose verdict was set aside, with the reason on record
    std::vector<WelderEvent> training_;
    struct Revoked {
        std::string process; ///< empty: nobody can say any more, so any
        WelderEvent event;
    };
    std::vector<Revoked> revoked_;
};

} // namespace beadbook
