#pragma once

#include "operations/qualifying.hpp"
#include "operations/selection.hpp"

namespace beadbook {

struct QualifyManyRequest {
    std::vector<std::string> marks; ///< none: all that are selected
    Selection of;
    std::string rules, way; ///< as of QualifyRequest
    RuleWords words;        ///< of each
};

/// Many welders qualified at once, each by his coupon.
struct QualifiedMany {
    struct One {
        std::string coupon;
        Granted granted;
    };
    /// Does not qualify: what it would be refused with by itself.
    struct Lacking {
        std::string coupon, welder;
        std::vector<std::string> why;
    };
    struct Passed {
        std::string coupon, why;
    };
    std::string rules;
    std::vector<One> granted;
    std::vector<Lacking> lacking;
    std::vector<Passed> passed_over; ///< qualified so already, or withdrawn and not named
};

/// Asks the gate about each in turn and grants what stands up to it; what lacks something is listed, and
/// stops none of the others. No reason sets anything aside here. Throws Refusal, and nothing may be committed
/// then: rules, a way or words that cannot be taken, of the rules or of any coupon, and a mark that nobody
/// registered.
Done<QualifiedMany> qualify_many(Writing &writing, const QualifyManyRequest &request);

} // namespace beadbook
