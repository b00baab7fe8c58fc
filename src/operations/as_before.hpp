#pragma once

#include "operations/office.hpp"

#include <set>

namespace beadbook {

/// What an exam takes from the last one of the same examiner and method.
struct AsBefore {
    std::shared_ptr<const Practice> practice; ///< its own, if the exam names none; may be null
    std::vector<std::string> notes;
};

/// Fills in what the exam leaves out: practice, conditions, equipment, procedure, and the level of an
/// examiner of whom nothing is on record. What is read or measured each time is not taken, nor what the
/// record of the examiner and the equipment tells (on_record.hpp). Throws Refusal: no examiner; no such exam
/// (field "as-before"); the practice's text is not in this record.
AsBefore fill_as_before(Office &office, ExamRecord &exam, bool names_practice);

/// Conditions that calibrations of the equipment answered: they are asked anew of the record.
std::set<std::string> answered_by_calibration(const std::vector<EquipmentUsed> &equipment);

/// A practice by the text that the record keeps or that is shipped; null if it is neither.
std::shared_ptr<const Practice> practice_known(Office &office, const ExamRecord &exam);

} // namespace beadbook
