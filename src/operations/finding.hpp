#pragma once

#include "facts/coupon_record.hpp"
#include "operations/catalogue.hpp"
#include "operations/done.hpp"
#include "operations/required_exams.hpp"
#include "technique/finds.hpp"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace beadbook {

/// What each method sees of one type of imperfection.
struct MethodsFor {
    std::string imperfection;
    std::vector<Finds> methods;
};

/// What the coupon's criteria require in its class.
struct RequiredInClass {
    std::shared_ptr<const CriteriaSet> criteria;
    std::string class_id;
    std::vector<AskedExam> exams;
};

struct MethodsResult {
    std::optional<RequiredInClass> required; ///< if the coupon names its criteria and class
    std::vector<AskedExam> called_for;       ///< by the drawing, beyond the criteria
    std::vector<MethodsFor> imperfections;
};

/// Which methods find which imperfections on a coupon, on record or described. `look_for` names types of
/// imperfection; none: those that an exam is usually done for. Throws Refusal: no such type.
Done<MethodsResult> methods_for(Catalogue &catalogue, const CouponRecord &coupon,
                                const std::vector<std::string> &look_for = {});

} // namespace beadbook
