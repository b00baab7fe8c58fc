#pragma once

#include "operations/boundary_values.hpp"
#include "operations/trying.hpp"

#include <algorithm>

namespace beadbook {

/// A value beside a limit, and what the judge says of the rule then.
struct BoundaryTry {
    enum class Found : std::uint8_t { within, outside, not_heard };
    Exact value;
    bool rejects = false; ///< by the limit as it is written
    Found found = Found::not_heard;
    bool agrees() const { return found == (rejects ? Found::outside : Found::within); }
};

/// One limit of one class for one coupon, with a value just under it, at it and just over it.
struct BoundaryCase {
    std::size_t rule = 0, class_index = 0;
    Coupon coupon;
    std::vector<Quantity> varied; ///< what tells this coupon from the rule's others
    std::optional<Fact> word;     ///< the same, where it is a word
    TypeId type = 0;
    Exam exam = Exam::VT;
    Exact limit;
    std::vector<BoundaryTry> tries;
    bool agrees() const {
        return std::all_of(tries.begin(), tries.end(), [](const BoundaryTry &one) { return one.agrees(); });
    }
};

/// A limit for which none was made, or none with a value or word that its rule names, and why.
struct NoBoundary {
    enum class Why : std::uint8_t { of_others, joined, no_coupon, no_find, too_many, arithmetic, blank };
    std::size_t rule = 0, class_index = 0;
    Why why = Why::no_coupon;
    std::optional<NamedPoint> named;
};

/// What the rules of a set say just under, at and just over each of their limits: made from the rules, to be
/// read beside the standard, and tried by the judge.
struct Boundaries {
    std::shared_ptr<const CriteriaSet> set;
    std::vector<BoundaryCase> cases;
    /// Windows of sums and counts: `limit` is how long one is, and a try so far apart lie finds that are
    /// together just over the rule's limit. Of lengths, from the beginning of the first to the end of the
    /// last, as of what the window's end cuts the part inside is added; else between the two, as all of it
    /// is.
    std::vector<BoundaryCase> windows;
    std::vector<NoBoundary> none;
    std::optional<TriedCases> written; ///< the worked cases beside a shipped set: what they leave untried
    std::size_t disagreeing() const {
        const auto otherwise = [](const BoundaryCase &one) { return !one.agrees(); };
        return static_cast<std::size_t>(std::count_if(cases.begin(), cases.end(), otherwise) +
                                        std::count_if(windows.begin(), windows.end(), otherwise));
    }
};

/// Of a shipped set or a file, called so, with what is filled in. Throws DataError as Catalogue::criteria.
Boundaries boundaries_of(Catalogue &catalogue, const std::string &set_name,
                         std::shared_ptr<const CriteriaSet> set);
Boundaries boundaries_of(std::shared_ptr<const CriteriaSet> set);

} // namespace beadbook
