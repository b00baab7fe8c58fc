#pragma once

#include <boost/dynamic_bitset.hpp>
#include <chrono>
#include <functional>
#include <string>
#include <vector>

namespace beadbook {

using Bits = boost::dynamic_bitset<>;

/// Choose as few of the sets as will do, so that each element has one that holds it.
struct CoverProblem {
    std::size_t sets = 0;
    std::vector<Bits> holders; ///< by element: the sets that hold it, at least one

    /// By set: the elements that it holds.
    std::vector<Bits> contents() const;
    /// Whether these sets, by index and each once, hold every element.
    bool covered_by(const std::vector<std::size_t> &chosen) const;
};

/// What a solver found. It is not trusted: the sets are checked, and what it claims is held against what is
/// known.
struct CoverAnswer {
    std::vector<std::size_t> chosen; ///< empty: it found none
    std::size_t at_least = 0;        ///< no fewer sets do, it says; as many as chosen if it says proven
    std::string note;                ///< a sentence on what went wrong, if anything did
};

/// Whoever can solve what is too hard here, within the time given. Throws nothing: a failure is an answer
/// without sets, with a note.
using CoverSolver = std::function<CoverAnswer(const CoverProblem &, std::chrono::milliseconds)>;

} // namespace beadbook
