#pragma once

#include "operations/judging.hpp"

namespace beadbook {

struct GradeManyRequest {
    bool passed = false;
    std::string remark; ///< of each
    JudgeRequest by;
    Selection of;
};

/// Many grades given at once, each with the judgement that decided it.
struct GradedMany {
    struct One {
        Graded graded;
        Judged judged; ///< with a class sought
        std::string welder;
    };
    struct LeftOut {
        std::string coupon, why;
    };
    bool passed = false;
    std::vector<One> graded;
    std::vector<LeftOut> left_out; ///< withdrawn, or graded so already
};

/// Grades all that are selected, or none: passed only what is accepted, failed only what is rejected, and
/// nothing against mechanical tests or another grade that stands, nor passed after it was failed. One by one
/// `grade_coupon` takes more. Throws Refusal, which names every coupon that cannot be graded so.
Done<GradedMany> grade_many(Writing &writing, const GradeManyRequest &request);
/// The same of these alone, by their marks: one that is not among those selected refuses all.
Done<GradedMany> grade_these(Writing &writing, const GradeManyRequest &request,
                             const std::vector<std::string> &marks);

} // namespace beadbook
