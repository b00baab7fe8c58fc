#pragma once

#include "judge/evaluation.hpp"

namespace beadbook {

/// Examinations that the set or the drawing asks for, and those that were begun and are not finished.
void check_required_exams(Evaluation &evaluation, const std::vector<ExamDone> &exams);

/// Dimensions that must be on record for the class to be accepted at all.
void check_measured(Evaluation &evaluation, const std::vector<ExamDone> &exams);

} // namespace beadbook
