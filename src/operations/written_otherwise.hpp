#pragma once

#include "criteria/model.hpp"

#include <string>
#include <vector>

namespace beadbook {

/// What of a set as a whole bears on its verdicts, and is no limit.
struct WrittenOtherwise {
    std::string what;          ///< "linear", "quantity T", "gap", "must be measured"
    std::string first, second; ///< as each says it; empty: it does not
    friend bool operator==(const WrittenOtherwise &, const WrittenOtherwise &) = default;
};

/// When a find is linear, which quantities the names stand for, gaps, and what must be measured: where the
/// sets say it differently.
std::vector<WrittenOtherwise> written_otherwise(const CriteriaSet &first, const CriteriaSet &second);

} // namespace beadbook
