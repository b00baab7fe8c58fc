#pragma once

#include "operations/grading_many.hpp"
#include "report/judgement_document.hpp"

namespace beadbook {

/// What decided the class sought: the first reason against it, or what came nearest to a limit.
std::string deciding_words(const Judged &judged);

/// Each coupon that was graded with what decided, and those that were left out.
Document document_of(const GradedMany &done);

} // namespace beadbook
