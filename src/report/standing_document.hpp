#pragma once

#include "operations/qualifying_many.hpp"
#include "operations/welders.hpp"
#include "report/document.hpp"

namespace beadbook {

struct Enrolled {
    WelderRecord welder;
};
struct EnrolledMany {
    std::vector<WelderRecord> welders;
};
struct WelderChanged {
    WelderRecord welder;
};

Document document_of(const Enrolled &done);
Document document_of(const EnrolledMany &done);
Document document_of(const WelderChanged &done);
Document document_of(const ProcessLogged &done);
Document document_of(const Retracted &done);

/// One welder: what is held, how it stands and until when, and what was logged.
Document document_of(const WelderStanding &standing);
/// All welders, a line for each qualification.
Document document_of(const std::vector<WelderStanding> &all);
Document document_of(const DueList &due);

Document document_of(const Granted &granted);
/// Each coupon with what it granted, or what it lacks.
Document document_of(const QualifiedMany &done);
/// A renewal, an extension or a revocation.
Document document_of(const StandingChange &change);

/// "valid" in its tone.
Words state_words(Validity::State state);
/// The same of a qualification, marked if it rests on an override: "valid (by override)".
Words held_words(const HeldQualification &held);
/// The same where no reason stands behind it: "valid, with a caution".
Words held_in_a_cell(const HeldQualification &held);
/// "#2 GTAW by asme-ix: valid, holds through 2027-05-02".
Words standing_words(const HeldQualification &held);
/// " (by override)" and the like, behind the state of what rests on it; else empty.
std::string resting_words(const std::vector<Aside> &aside, const Validity &validity);
/// ", entered on 2026-11-25" of what was entered later than it happened.
std::string entered_words(const WelderEvent &event);
/// What was taken back of coupons, an item each.
void add_gone(Document &doc, const std::vector<WelderStanding::Gone> &all);
/// What rules ask after a test that failed: "next by asme-ix: 2 coupons of its kind must pass, or training
/// and then 1".
Bullet next_bullet(const NextRetest &next);
/// Tests that failed; and what was said of the welder and is said no more, an item each.
void add_failed(Document &doc, const std::vector<WelderStanding::Failed> &all);
/// Coupons that may have failed, as nobody judged what they show.
void add_not_judged(Document &doc, const std::vector<WelderStanding::NotJudged> &all);
void add_struck(Document &doc, const std::vector<StruckOut> &all);
/// What was set aside, each with its reason.
std::vector<Bullet> aside_bullets(const std::vector<Aside> &all, const RangeRules *rules);
/// "renew it: 2 coupons", "use the process and log it, or it ends on 2028-11-01".
std::string to_do_text(const NextStep &step);
/// The same with its day, while there is one: "by 2027-05-02 use the process and log it".
std::string next_words(const HeldQualification &held);

} // namespace beadbook
