#pragma once

#include "operations/computing.hpp"
#include "operations/exam_validity.hpp"
#include "operations/finding.hpp"
#include "report/document.hpp"

namespace beadbook {

/// Whether a coupon's exams were valid, each condition with its reason.
Document document_of(const CouponValidity &validity);
/// What is required of a coupon, and which method finds what on it.
Document document_of(const MethodsResult &methods);

/// The technicians' calculations at a glance, what one of them takes, and one worked out.
Document document_of(const CalculationList &list);
Document document_of(const CalculationWanted &wanted);
Document document_of(const Calculated &calculated);

/// "valid", "not valid", "cannot say"; "not judged" of an exam that names no practice.
std::string_view validity_words(const ExamValidity &exam);
/// "finds it", "partly", "cannot".
std::string_view grade_words(Finds::Grade grade);
/// Of one input: its kinds or words, and what stands in if it is not given.
std::string otherwise_words(const technique::CalculationInput &input);

} // namespace beadbook
