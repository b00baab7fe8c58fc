#pragma once

#include "facts/coupon_record.hpp"
#include "facts/shortcoming.hpp"
#include "facts/stamp.hpp"
#include "measure/day.hpp"
#include "measure/refusal.hpp"
#include "qualify/range.hpp"
#include "qualify/validity.hpp"

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace beadbook {

/// A welder: the mark (stencil) is the name in the record.
struct WelderRecord {
    std::string mark, name, employer, note;
    std::vector<std::string> sure = {}; ///< what somebody set aside as meant so (facts/plausibility.hpp)
    friend bool operator==(const WelderRecord &, const WelderRecord &) = default;
};

/// One examination that a qualification rests on, as it was then.
struct EvidenceExam {
    std::string method, date, examiner, level, procedure, incomplete;
    bool level_as_typed = false; ///< nobody on record vouched for the level then; not known of older entries
};

/// What a coupon proved when it qualified its welder, or renewed or extended what the welder held.
struct Evidence {
    std::string coupon;                           ///< its mark
    std::string criteria, edition, criteria_hash; ///< that the coupon was last judged by; may be empty
    std::string verdict;                          ///< of the graded class; empty if it was never judged
    std::string class_id, graded_by, graded_at, remark;
    bool against_verdict = false;
    std::string mechanical;
    std::vector<EvidenceExam> exams;
    std::vector<std::string> coupons;  ///< that passed, where the rules asked several
    std::optional<AfterFailure> after; ///< what had failed before
    std::string retest_after;          ///< the same as an older program kept it, in a sentence
};

/// One part of a range as it was granted: which rule, and the numbers and words that it came to.
struct GrantedPart {
    std::string rule;
    bool any = false;
    std::vector<std::string> words;
    std::vector<std::pair<Compare, Exact>> edges;
    std::vector<std::string> lacks;
    friend bool operator==(const GrantedPart &, const GrantedPart &) = default;
};
/// One variable's.
struct GrantedRange {
    std::string variable, work;
    std::vector<GrantedPart> parts;
    friend bool operator==(const GrantedRange &, const GrantedRange &) = default;
};

/// What a test qualified: from a graded coupon, or carried in with a document.
struct QualificationRecord {
    int number = 0; ///< among the welder's, from 1
    std::string rules, rules_hash, way;
    std::string rules_file; ///< that they were read from; empty: shipped, or granted by an older program
    CouponRecord test;      ///< as welded; its id is the coupon's, or "carried-in"
    std::size_t part = 0;   ///< which of the test's processes
    Day welded;
    std::string document;                ///< SHA-256 of the paper that it was carried in with
    std::string override_why;            ///< why something was set aside
    std::vector<Shortcoming> overridden; ///< what
    std::optional<Evidence> evidence;
    std::vector<GrantedRange> range; ///< as it was worked out
    int form = 2;                    ///< 1: stored by an older program, its range without numbers

    bool carried() const { return !document.empty(); }
    std::string process() const;
};

/// The process that it is held in; empty if that cannot be read.
std::string process_of(const QualificationRecord &held);

/// Anything else that was written about a welder.
struct WelderEvent {
    std::int64_t seq = 0;
    std::string kind; ///< use, training, renewal, extension, revocation
    Day day;
    std::string process;                 ///< use, training, renewal
    std::string rules;                   ///< renewal: the rule set
    int qualification = 0;               ///< extension, revocation: its number
    std::string text;                    ///< the work, the training, the evidence or the reason
    std::vector<Evidence> evidence;      ///< renewal, extension: of the coupons that it rests on
    std::string override_why;            ///< why something was set aside
    std::vector<Shortcoming> overridden; ///< what
    Stamp stamp;
    std::string not_before =
        {}; ///< the latest time of the welder's entries up to it, if its own clock was behind
};

/// The day on which it was entered, if that was a later one than its own.
std::optional<Day> entered_later(const WelderEvent &event);

/// A revocation that was taken back.
struct RevocationGone {
    WelderEvent event;
    std::string why;        ///< it was taken back
    QualificationRecord of; ///< whether or not that stands
};

/// A welder as the record stands today.
struct WelderState {
    WelderRecord record;
    std::int64_t record_seq = 0;
    std::vector<QualificationRecord> qualifications;
    std::map<int, Stamp> granted;        ///< by number: who and when
    std::map<int, std::string> hashes;   ///< by number: the entry's hash in the chain
    std::map<int, std::int64_t> entries; ///< of each, by its number in the record
    std::vector<WelderEvent> events;
    int last_number = 0; ///< retracted ones too
    std::vector<RevocationGone> revocations_gone;

    const QualificationRecord *qualification(int number) const;
    /// That there is none of that number, and which there are.
    Refusal no_such(int number) const;
};

/// What a range comes to, in the form that is kept.
std::vector<GrantedRange> granted(const std::vector<VariableRange> &range);

} // namespace beadbook
