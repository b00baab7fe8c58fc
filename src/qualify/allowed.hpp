#pragma once

#include "qualify/range.hpp"
#include "qualify/work.hpp"

namespace beadbook {

using TestRange = std::vector<VariableRange>;

/// Whether what a welder holds lets one job be done, whole.
struct JobAnswer {
    Truth allowed = Truth::no;         ///< by what holds today; missing data never allows
    std::vector<std::size_t> by;       ///< what holds and is used for it
    std::vector<std::size_t> renewals; ///< of what can be renewed; with these it is allowed
    std::vector<Lack> lacks;           ///< allowed is unknown for want of these
    std::vector<std::size_t> doubted;  ///< allowed is unknown until the doubt about these is settled
};

/// What a welder holds by the rules of the work.
struct HeldRanges {
    std::vector<TestRange> valid;
    std::vector<TestRange> renewable = {}; ///< lapsed, and a renewal brings them back
    std::vector<TestRange> doubted = {};   ///< neither proven nor refused
};

/// One answer a job. Several that hold may allow one job together. Where nothing holds, all is a plain no.
/// Throws InputError if the work falls into too many cases.
std::vector<JobAnswer> answers_of(const std::vector<Job> &jobs, const HeldRanges &held);

} // namespace beadbook
