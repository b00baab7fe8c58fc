#pragma once

#include "qualify/retest.hpp"

#include <optional>
#include <string>
#include <vector>

namespace beadbook {

/// What rules for welders ask of a test beyond the evidence, by kind, ids and numbers. Its sentence is made
/// when it is told (operations/shortcoming_words.hpp), so that what is stored holds none.
struct Shortcoming {
    enum class Kind : std::uint8_t {
        told,           ///< a sentence of an older program
        grade,          ///< is to be given again
        verdict,        ///< taken afresh, is no accept, though a person graded it passed
        purpose,        ///< it was a practice coupon when it was first examined
        not_examined,   ///< nothing that counts is on record, and the rules name no examination
        exam,           ///< that the rules ask: none that counts is on record
        same_exam,      ///< a retest was not examined by the methods that the failed coupon failed by
        retest,         ///< more coupons after one that failed
        retest_unknown, ///< one failed, and what the rules ask then is not known here
        failed_day,     ///< of a coupon that failed the day of its weld is not on record
        failed_kind,    ///< whether a coupon that failed was a test of this kind cannot be said
        failed_whose,   ///< whether a coupon that failed was this welder's cannot be said
        unreadable,     ///< a coupon of the welder cannot be read, so whether it failed cannot be said
        coupons,        ///< fewer than a renewal takes
        training,       ///< one failed after the retest that the rules allow at once, and none is on record
        by_machine,     ///< a machine led the torch, and the rules speak of a welder's hand
        entered_late,   ///< dated before a failure of its kind, and entered after it
        accepted_by,   ///< it was graded by other criteria, or another class, than the rules accept a test by
        described,     ///< it is described otherwise since it was graded
        turned,        ///< it was rejected as it was described before
        revoked,       ///< what was held in its process was revoked after it was welded
        revives,       ///< entered for an earlier day, it revives what was over by then
        late_training, ///< the training that a retest goes by was entered only after that was graded
        nameless,      ///< the welder is enrolled without a name, so may be enrolled under another mark too
        renamed,       ///< the welder is called quite otherwise since the test came on record
        employer,      ///< it holds with the same employer, and the welder has another one since then
        not_after,     ///< a retest was welded before it was seen that the test had failed
        unjudged,      ///< a coupon shows what nobody judged, so whether it failed cannot be said
    };
    Kind kind = Kind::told;
    std::string coupon;                ///< that it is about, where that is not the only one given
    std::string process;               ///< of a test with several; not stored
    std::string rule;                  ///< exam: its id in the rules
    std::vector<std::string> lacks;    ///< same_exam: methods; failed_kind: traits; failed_whose: the name,
                                       ///< or the mark and its name then;
                                       ///< described, turned: fields;
                                       ///< revives: what it is, of which day, and days of others that its
                                       ///< reason stands for; late_training: the day;
                                       ///< nameless: the mark; not_after: what failed;
                                       ///< unjudged: types of what it shows
    std::optional<AfterFailure> after; ///< retest, retest_unknown, same_exam, late_training,
                                       ///< coupons
    int asked = 0, given = 0;          ///< retest, coupons
    std::string class_id, was, now;    ///< grade, verdict: of the class; `was` is empty if none was kept;
                                       ///< renamed, employer: then and now
    std::string criteria; ///< accepted_by: the set that it was graded by, with class_id; turned: rejected by
    std::string by, on, remark; ///< verdict: who graded it passed, when, in which words; revoked: when, why;
                                ///< revives: when, with `was` how it stood; late_training: when;
                                ///< not_after: when it was seen, with `was` the day of the weld;
                                ///< turned: as it was told by the record that the coupon comes from
    std::string text;           ///< told: the sentence; unreadable: why, which is not stored
};
/// Of what failed before a test, or may have.
bool is_of_retest(Shortcoming::Kind kind);
/// Told by the state of the grade; or of another coupon that cannot be read, or a revocation of another
/// qualification, which leave this one as it was.
bool is_told_otherwise(Shortcoming::Kind kind);
/// Whether what lacks now was set aside with a reason before.
bool is_aside(const Shortcoming &lack, const std::vector<Shortcoming> &aside);

/// What was set aside for a qualification, at its grant or later, and why.
struct Aside {
    std::string at; ///< "renewal", "extension"; empty: when it was granted
    std::optional<Day> day;
    std::vector<Shortcoming> what;
    std::string why;
};

/// As it is stored: "retest unknown".
std::string_view id_of(Shortcoming::Kind kind);
/// Nothing if there is no such kind.
std::optional<Shortcoming::Kind> shortcoming_named(std::string_view id);

} // namespace beadbook
