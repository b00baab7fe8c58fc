#pragma once

#include "judge/coupon.hpp"

namespace beadbook {

/// How well a method finds one kind of imperfection on one coupon, and why.
struct Finds {
    using Grade = Sight::Grade;
    Exam method = Exam::VT;
    Grade grade = Grade::no;
    std::string why;
};

/// All methods for one type of imperfection. What the coupon does not tell (magnetic, joint) is named
/// in the reason.
std::vector<Finds> finds(const Vocabulary &vocabulary, TypeId type, const Coupon &coupon);

} // namespace beadbook
