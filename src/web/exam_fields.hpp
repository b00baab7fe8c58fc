#pragma once

#include "operations/examining.hpp"
#include "web/form.hpp"

namespace beadbook {

/// Controls for examiner, practice, equipment and each condition that the method knows; `known` stands in
/// them.
void add_exam_fields(Form &form, Visit &visit, const ExamRecord &known);
/// What such a form says.
ExamRequest exam_request_in(const Visit &visit, const std::string &coupon, Exam method);

} // namespace beadbook
