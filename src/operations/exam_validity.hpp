#pragma once

#include "operations/office.hpp"
#include "technique/exam_check.hpp"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace beadbook {

/// One exam of a coupon, held against its practice.
struct ExamValidity {
    ExamRecord exam;
    std::shared_ptr<const Practice> practice; ///< by the text kept with the exam; null if there is none
    std::optional<ExamCheck> check;           ///< absent without the practice's text

    bool judged() const { return !exam.practice.empty(); }
    /// Without a practice, or without its text, nothing can be said.
    Truth valid() const { return check ? check->valid : Truth::unknown; }
};

struct CouponValidity {
    std::string coupon;
    std::vector<ExamValidity> exams;
    Truth all = Truth::yes; ///< of each; unknown if there is none
};

/// Whether a coupon's exams were valid by their practices, each condition with its reason. Throws DataError:
/// there is no such coupon.
CouponValidity exam_validity(Office &office, const std::string &coupon);

} // namespace beadbook
