#pragma once

#include "operations/ending.hpp"
#include "operations/next_retest.hpp"
#include "operations/struck_out.hpp"
#include "operations/writing.hpp"
#include "records/taken_back.hpp"

namespace beadbook {

/// One qualification with all that follows from it: its rules as they were, its range, and how it stands.
struct HeldQualification {
    std::string mark;
    QualificationRecord record;
    std::shared_ptr<const RangeRules> rules;
    Weld weld;
    std::vector<VariableRange> range; ///< points into the rules
    Validity validity;
    Validity fate = {}; ///< of its test, whatever the time: valid, in doubt or no longer proved
    std::optional<Day> registered =
        {};                        ///< when its coupon came on record, if after the weld and others are held
    std::vector<Aside> aside = {}; ///< that it rests on: its own, and those of renewals and extensions
    std::string unreadable = {};   ///< why its test cannot be read, so that nothing is known of the weld
    int renewed_by = 0; ///< coupons that a retest of a failed renewal asks; 0: none failed, or not lapsed
    std::optional<AfterFailure> renewed_after = {}; ///< the failure that asks for so many
    int retested_by =
        0; ///< coupons that must pass after one of its kind failed, where it must be tested again

    const ValidityWay &way() const;
};
/// "#2 GTAW by asme-ix".
std::string title_of(const HeldQualification &held);

/// Whether it was granted for a test that this coupon is of.
bool rests_on(const HeldQualification &held, const std::string &coupon);

/// The welder's qualifications on a day, by the rules' text that each was granted by. Throws StoreError if
/// such a text is missing.
std::vector<HeldQualification> held_by(Office &office, const std::string &mark, Day on);
std::vector<HeldQualification> held_by(Office &office, const WelderState &welder, Day on);
/// One of them. Throws Refusal if there is none of that number.
HeldQualification held_by(Office &office, const WelderState &welder, int number, Day on);

/// The rules that a renewal or an extension went by, among what is held; null if they are none of these.
const RangeRules *rules_of(const WelderEvent &event, const std::vector<HeldQualification> &held);

/// A welder, what was logged, and how what is held stands on a day.
struct WelderStanding {
    WelderState welder;
    std::vector<HeldQualification> held;
    /// Renewals and extensions that count no more, by entry, and why: a coupon of theirs was graded failed
    /// since.
    std::map<std::int64_t, std::string> undone;
    Day on;
    struct Failed {
        std::string coupon, process;
        std::optional<Day> welded;
        std::vector<std::string> by; ///< methods, or mechanical
        std::vector<NextRetest> next = {};
        std::string passed_since = {}; ///< by whom it was graded passed all the same, and why
        /// "iso-5817, class B", by which it failed, where rules that the welder is to be qualified by take no
        /// test by it, or it is judged by others now.
        std::string criteria = {};
        std::string judged_now = {}; ///< the latter
        /// What rules for welders accept a test in its process by, where nobody can say which are meant.
        struct Accepts {
            std::string rules;
            std::vector<std::string> by; ///< "aws-d1.1-visual, class welder test"
        };
        std::vector<Accepts> others = {};
    };
    /// Test coupons that failed, in the order registered; told of one welder, not in a list of all.
    std::vector<Failed> failed = {};
    struct NotJudged {
        std::string coupon, process;
        std::optional<Day> welded;
        std::vector<std::string> shows; ///< types of what was found
    };
    /// Coupons that may have failed, as nobody judged what they show; told of one welder as well.
    std::vector<NotJudged> not_judged = {};
    struct ToQualify {
        std::string coupon;
        std::vector<std::string> rules;
    };
    /// Tests that passed and that nothing rests on yet; told of one welder as well.
    std::vector<ToQualify> to_qualify = {};
    struct Gone {
        std::string coupon;
        std::vector<TakenBack> what; ///< finds and exams with finds that are no more, a reject that went
    };
    /// Of the welder's coupons, whether graded or not; told of one welder as well.
    std::vector<Gone> gone = {};
    std::vector<StruckOut> struck = {}; ///< told of one welder as well
};
WelderStanding standing_of(Office &office, const std::string &mark, std::optional<Day> on = {});
/// What is held, with what counts of it: all that an entry to come is held against.
WelderStanding standing_of(Office &office, WelderState welder, Day on);
std::vector<WelderStanding> standing_of_all(Office &office, std::optional<Day> on = {});

/// What a qualification that ends, or has ended, asks for.
enum class ToDo : std::uint8_t {
    use,    ///< the process, and log it
    extend, ///< or test again
    renew,  ///< by so many coupons
    test,   ///< again
    settle, ///< look at the coupon that it rests on, and grade or qualify it again
};
/// The next day that matters to a qualification, and what must happen until then.
struct NextStep {
    ToDo to_do = ToDo::test;
    std::optional<Day> by;        ///< the last day on which it counts; past, if it is over; absent: at once
    int coupons = 0;              ///< of a renewal, or of a test after one failed; 0: not told
    std::optional<Day> otherwise; ///< a use that is missed ends it on that later day only
    friend bool operator==(const NextStep &, const NextStep &) = default;
};
/// Nothing for one that has no end or is not begun.
std::optional<NextStep> next_step(const HeldQualification &held);

struct DueQualification : NextStep {
    HeldQualification held;
    std::int64_t days_left = 0;            ///< negative: over for so many
    std::vector<std::string> at_hand = {}; ///< coupons that it may go by
};
struct DueList {
    Day on, through;
    std::optional<Day> next = {};        ///< the first one after that on which something is due
    std::string next_of = {};            ///< "#1 GTAW by asme-ix of L1"; the person or the serial number
    std::vector<DueQualification> items; ///< what ends first comes first
    std::vector<Ending> endings = {};    ///< of people and equipment
};
/// Qualifications that end or whose use counts no more within so many days, by whatever rules, and those that
/// are over, revoked ones and those that nothing proves any more too. Throws Refusal (field "days"): not 1 to
/// 36500.
DueList due(Office &office, int days = 60, std::optional<Day> on = {});

/// The day on which something happened: the one given, else today. Throws Refusal if it is to come.
Day past_day(const Outside &outside, std::optional<Day> given);
/// Writes an event about a welder and gives it back as it is on record. Throws DataError if there is no such
/// welder.
WelderEvent add_event(Writing &writing, const std::string &mark, WelderEvent event);

/// What was written about one qualification, and how that stands today.
struct StandingChange {
    WelderEvent event;
    HeldQualification now;
};

struct RevokeRequest {
    std::string mark;
    int number = 0;
    std::optional<Day> day; ///< else today
    std::string why;
};
/// Revokes a qualification for a reason to doubt the skill.
Done<StandingChange> revoke(Writing &writing, const RevokeRequest &request);

struct ExtendRequest {
    std::string mark;
    int number = 0;
    std::optional<Day> day;           ///< else today
    std::vector<std::string> welds;   ///< of the work, as read_examined_weld takes them
    std::vector<std::string> coupons; ///< of the record, which pass the gate of evidence.hpp
    std::string override_why;
};
/// Extends a qualification by examined welds, where its rules allow that. Throws Refusal: they do not; it is
/// not valid; a text that does not state an accepted weld; too few welds, too old, given twice or used for an
/// extension before; what the gate refuses.
Done<StandingChange> extend(Writing &writing, const ExtendRequest &request);

} // namespace beadbook
