#pragma once

#include "qualify/cells.hpp"
#include "qualify/set_cover.hpp"

#include <map>

namespace beadbook {

/// What one variable says of tests against needs. It looks at few traits on either side, so there are few
/// different tests and few different works for it, and each pair is worked out once.
class CoverTable {
public:
    CoverTable(const RangeRules &rules, const Variable &variable, const std::vector<Job> &jobs);

    /// Traits of the test, and of the work, that the variable looks at.
    const std::vector<Trait> &test_traits() const { return test_traits_; }
    const std::vector<Trait> &work_traits() const { return work_traits_; }

    void set_needs(const std::vector<Need> &needs);
    /// Needs that the test covers as far as this variable goes, or of which no test could say.
    const Bits &row(const Weld &test);

private:
    const RangeRules &rules_;
    const Variable &variable_;
    const std::vector<Job> &jobs_;
    std::vector<Trait> test_traits_, work_traits_;
    std::vector<Weld> works_;          ///< as the variable sees them, each once
    std::vector<std::size_t> work_of_; ///< by need
    std::vector<bool> open_;           ///< by need: it spans sizes of which no limit was read
    std::map<std::string, Bits> rows_; ///< by what it sees of the test
};

} // namespace beadbook
