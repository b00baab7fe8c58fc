#pragma once

#include "criteria/load.hpp"
#include "operations/outside.hpp"
#include "qualify/range_rules.hpp"
#include "records/ledger.hpp"
#include "technique/practice.hpp"

#include <map>
#include <memory>
#include <string>
#include <vector>

namespace beadbook {

/// Criteria sets, rules for welders and practices: by shipped name, by file, or by the hash of a text that a
/// record keeps. Each is read once.
class Catalogue {
public:
    explicit Catalogue(const Outside &outside) : outside_(outside) {}

    /// A shipped one by name, or a file. Throws DataError: no such name (with the nearest), or every mistake
    /// of the file.
    std::shared_ptr<const CriteriaSet> criteria(const std::string &name);
    std::shared_ptr<const RangeRules> rules(const std::string &name);
    std::shared_ptr<const Practice> practice(const std::string &name);

    /// By the text that the record keeps under the hash; null if it is missing or no longer loads.
    std::shared_ptr<const CriteriaSet> kept_criteria(Ledger &ledger, const std::string &hash);
    std::shared_ptr<const RangeRules> kept_rules(Ledger &ledger, const std::string &hash);
    std::shared_ptr<const Practice> kept_practice(Ledger &ledger, const std::string &hash);

    /// The shipped set that a set of one's own would be taken for by its name, and is not: it is refused
    /// wherever it would be used. Empty if there is none.
    static std::string built_in_like(const CriteriaSet &set);

    const Outside &outside() const { return outside_; }

private:
    template <class T>
    using Shelf = std::map<std::string, std::shared_ptr<const T>>;

    const Outside &outside_;
    Shelf<CriteriaSet> criteria_, criteria_by_hash_;
    Shelf<RangeRules> rules_, rules_by_hash_;
    Shelf<Practice> practices_, practices_by_hash_;
};

/// Bases of a set: a shipped one, or a file in the folder of the one that names it.
BaseText bases_beside(const Outside &outside, const std::string &file);

/// Every mistake of a file that could not be taken, as one refusal: `what` is the kind of file.
DataError mistakes_in(std::string_view what, const std::string &file, const std::string &text,
                      const std::vector<Issue> &issues);

} // namespace beadbook
