#pragma once

#include "judge/judgement.hpp"

#include <random>

namespace beadbook::test {

/// One random coupon with everything that the judge is told of it.
struct RandomCase {
    Coupon coupon;
    std::vector<ExamDone> exams;
    std::vector<Indication> indications;
};

/// A coupon with nothing missing: every fact, place and measure known, all exams done. Places and sizes are
/// whole 64ths of an inch and lie close together, so that limits, gaps and windows are often met exactly.
RandomCase random_case(std::mt19937 &random, const CriteriaSet &set);

/// The same with some data taken away. Where the set tells linear from rounded by length and width these two
/// stay: without them the type says which it is, and that is a default, not missing data.
RandomCase with_holes(RandomCase full, const CriteriaSet &set, std::mt19937 &random);

/// So many random coupons are tried: BEADBOOK_RANDOM_COUPONS, or as many as usual.
std::size_t coupons_to_try(std::size_t usual);

/// A criteria set of the demonstration by its file name.
std::shared_ptr<const CriteriaSet> demo_set();

/// Every shipped set and the demonstration's.
std::vector<std::shared_ptr<const CriteriaSet>> all_sets();

std::vector<Verdict> verdicts_of(const Judgement &judgement);
std::vector<Verdict> verdicts_of(const CriteriaSet &set, const RandomCase &c);
/// For a failing property: the coupon in words.
std::string described(const RandomCase &c);

} // namespace beadbook::test
