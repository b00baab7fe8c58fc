#pragma once

#include "judge/coupon.hpp"
#include "qualify/plan.hpp"

#include <string>
#include <vector>

namespace beadbook {

/// An examination that a coupon needs: one of these, and who asks it.
struct AskedExam {
    std::vector<std::string> one_of; ///< methods by their short names, or "mechanical"
    Authority from;
    std::vector<std::string> because; ///< what of the coupon brings it, as the criteria say it
    std::vector<std::string> lacks;   ///< what the coupon does not tell; it may then not be asked at all
    bool called_for = false;          ///< by the drawing, beyond the criteria; `from` is empty
};

/// What the criteria require of a coupon in one class. On metal that is known not to be magnetic MT is no
/// choice where there is another.
std::vector<AskedExam> required_exams(const CriteriaSet &set, std::size_t class_index, const Coupon &coupon);

/// What the drawing calls for beyond the criteria, as an examination of its own.
AskedExam called_for(Exam method);

/// What is to be minded of a planned coupon's examinations.
enum class ExamCaution : std::uint8_t {
    partly_magnetic,     ///< some of its work is magnetic, some is not
    partly_unsaid,       ///< of some of its work it is not said whether it is magnetic, of some it is
    not_magnetic,        ///< none of its work is
    classes_not_ordered, ///< so the class with the most examinations is not known to be the strictest
    fillet,              ///< is not radiographed: the thickness varies across the image
};

/// What the criteria say of a planned coupon itself, so that they accept none, whatever is found on it.
struct NeverAccepted {
    std::string title, says;          ///< of the rule
    std::vector<std::string> because; ///< what of the coupon brings it, as the criteria say it
    Authority from;
};

/// A coupon to weld with the examinations that it needs.
struct PlannedTest {
    PlannedCoupon coupon;
    /// Strictest of its jobs that the rules accept a test weld by; empty: none is named.
    std::string class_id = {};
    /// Strictest of its jobs, where the rules accept no test weld by that.
    std::string asked_class = {};
    std::vector<AskedExam> exams = {};
    std::vector<ExamCaution> cautions = {};
    std::vector<NeverAccepted> never_accepted = {}; ///< while its mechanical tests have not passed
    std::string after_failure = {}; ///< what the rules ask of it, as the welder failed such a test
    int must_pass = 1;              ///< so many of it
};

/// By the criteria's required examinations in the strictest class of the coupon's jobs, and by the rules'
/// own for the test. `set` may be null.
PlannedTest examinations_for(const Work &work, const PlannedCoupon &coupon, const CriteriaSet *set);

} // namespace beadbook
