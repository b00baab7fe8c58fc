#pragma once

#include "facts/coupon_record.hpp"
#include "judge/judgement.hpp"

#include <functional>
#include <map>
#include <memory>

namespace beadbook {

/// One coupon with its finds and the verdicts that a person worked out from the standard.
struct WorkedCase {
    std::string id;
    std::string source; ///< who says so: clause or table, or "follows from the printed number"
    CouponRecord coupon;
    std::vector<ExamDone> exams;
    bool exams_said = false; ///< or all methods, because the case says nothing
    std::vector<Indication> indications;
    std::map<std::string, Verdict> expected; ///< by class
    std::shared_ptr<const CriteriaSet> set;  ///< of the file, with the blanks that the case fills
    std::string decided_by;                  ///< the rule that keeps it from being accepted; may be empty
};

/// The worked cases beside a criteria set (criteria/cases/SET.yaml; its language stands in
/// criteria/README.md).
struct WorkedCases {
    std::shared_ptr<const CriteriaSet> set;
    std::vector<WorkedCase> cases;
};

struct LoadedCases {
    std::optional<WorkedCases> cases; ///< if there was no error
    std::vector<Issue> issues;
};

/// Opens the set by the name that stands in the file; its refusals become issues.
using SetByName = std::function<std::shared_ptr<const CriteriaSet>(const std::string &)>;

LoadedCases load_worked_cases(const std::string &text, const SetByName &open);

} // namespace beadbook
