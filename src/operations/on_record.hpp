#pragma once

#include "facts/plausibility.hpp"
#include "operations/office.hpp"

namespace beadbook {

/// What the records of people and equipment say of an exam that is being entered.
struct OnRecord {
    std::vector<Unlikely>
        against; ///< the examiner is not entitled: an id of why_not_entitled, and the reading; or is nobody
                 ///< on record, but nearly somebody: "another examiner", by which the exam still counts
    std::vector<std::string> notes; ///< what was filled in, and doubts
    bool knows_examiner = false;
};

/// Fills in from the record what the exam leaves out: of its examiner the name as it is on record, level,
/// certificate and vision test; of its equipment what was on record that day, and the conditions that its
/// calibrations answer. Throws Refusal where the exam says otherwise than the record, naming both.
/// `practice` is what the exam goes by, null if nothing: where it is silent on vision tests, one of more than
/// a year before speaks against the examiner, by common practice.
OnRecord fill_from_record(Office &office, ExamRecord &exam, const Practice *practice);

/// Whether somebody on record holds a certificate that was in force that day for the exam's method, of its
/// level at least. Else the level stands as it was typed.
bool level_on_record(Office &office, const ExamRecord &exam);

/// The day of the examiner's last vision test on record before an exam that took none over, so that it was
/// entered after it; empty: it took one over, or there is none.
std::string vision_entered_later(Office &office, const ExamRecord &exam);

/// Whether a condition is told by the record of the examiner: level, certificate, vision, vision test.
bool is_of_examiner(const std::string &condition);

} // namespace beadbook
