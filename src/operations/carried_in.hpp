#pragma once

#include "operations/graded_tests.hpp"

namespace beadbook {

/// What a retest lacks by the count of its rules; nothing if it is done.
std::optional<Shortcoming> retest_lack(const GradedTests::Retest &retest);

/// That what was held in its process was revoked after a test was welded.
Shortcoming revoked_lack(const WelderEvent &revoked);

/// What the record says against a test that was welded elsewhere and comes with a paper: what its welder
/// failed here asks for a retest of it as of any other, and what was revoked here is not held again by it.
/// `by` is the entry by which it was carried in; absent: it is about to be.
std::vector<Shortcoming> carried_lacks(const GradedTests &tests, const CouponRecord &test, const Weld &weld,
                                       const RangeRules &rules, std::optional<std::int64_t> by = {});

/// The paper that a qualification was carried in with. Throws StoreError: it is no more, or was changed.
Ledger::Document needed_paper(Ledger &ledger, const QualificationRecord &carried);

} // namespace beadbook
