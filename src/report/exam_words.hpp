#pragma once

#include "operations/required_exams.hpp"

#include <string>

namespace beadbook {

/// "VT", "RT or mechanical tests (bend, fracture or section)".
std::string exams_words(std::vector<std::string> one_of);

/// By which rule, and what of the coupon brings it: "5.3, read; because joint is groove".
std::string why_words(const AskedExam &exam);

/// "finished by A. Field on 2026-11-20", and who brought that in if it was somebody else, and
/// why; "not finished".
std::string finished_words(const ExamRecord &exam);

/// "SET accepts no such coupon, whatever is found, while L under 6 in: ...".
std::string never_accepted_words(const NeverAccepted &one, const CriteriaSet &set);
std::string caution_words(ExamCaution caution, const CriteriaSet *set);

} // namespace beadbook
