#pragma once

#include "random_case.hpp"

namespace beadbook::test {

/// What the naive evaluator judges: a find, or several that a clause of the set makes one.
struct Thing {
    TypeId type = 0;
    std::vector<TypeId> types;
    Exam exam = Exam::VT;
    std::int64_t from = 0, to = 0, across_from = 0, across_to = 0;
    Environment::Values measures;
    std::array<std::uint8_t, attribute_count> words{};
    Shape shape = Shape::unknown;
    bool has_linear = false;
    Exact narrowest;
    std::vector<Environment::Values> parts; ///< of each indication in it
    std::vector<int> numbers;
};

/// Of what several methods found each imperfection once: from the largest on, what is held against all of
/// another method that are kept.
std::vector<Thing> naive_once(const Rule &rule, const RandomCase &c, std::vector<Thing> found);

/// Two methods found them, and one rule that sums, counts or spaces speaks of both.
bool naive_side_by_side(const CriteriaSet &set, const Indication &a, const Indication &b);

} // namespace beadbook::test
