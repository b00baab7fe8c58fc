#pragma once

#include "qualify/range.hpp"
#include "qualify/work.hpp"

namespace beadbook {

/// One weld of a job: single words and sizes.
struct Need {
    std::size_t job = 0;
    Weld work;
};

/// Values of each trait that candidate coupons take.
struct TestValues {
    std::array<std::vector<std::string>, word_traits> words;
    std::array<std::vector<Exact>, trait_count> sizes;
};

/// Sizes at which what one rule or variable says changes, and the work for which that matters.
struct EdgeGroup {
    std::vector<const WeldFilter *> work; ///< all of these
    Trait trait = Trait::thickness;
    std::vector<Exact> edges; ///< ascending
};

/// Whether some weld of the job could be of the kind, as far as words tell.
bool possible(const WeldFilter &filter, const Job &job);

/// All edges of the candidates' ranges and of the scopes of rules and variables.
std::vector<EdgeGroup> edges_of(const RangeRules &rules, const TestValues &values);
/// Those of ranges that a welder holds already.
std::vector<EdgeGroup> edges_of(const std::vector<std::vector<VariableRange>> &held);

/// Cuts the jobs into welds that no edge runs through. Only `traits` are looked at; the rest is left out.
/// Throws InputError when there are too many.
std::vector<Need> needs_of(const std::vector<Job> &jobs, const std::vector<EdgeGroup> &edges,
                           const std::vector<Trait> &traits);

} // namespace beadbook
