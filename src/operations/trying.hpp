#pragma once

#include "facts/worked_case.hpp"
#include "operations/catalogue.hpp"
#include "operations/source.hpp"

namespace beadbook {

/// One worked case, judged.
struct TriedCase {
    WorkedCase worked;
    Judgement judgement;
    std::vector<std::string> classes; ///< whose verdict is another than expected
    bool other_rule = false;          ///< the rule that should decide it has no part in it
    bool holds() const { return classes.empty() && !other_rule; }
};

/// A limit of one class that no case tries from both sides.
struct UntriedLimit {
    std::string rule, class_id;
    bool within = false, over = false; ///< which side was tried
};

struct TriedCases {
    std::string file;
    std::shared_ptr<const CriteriaSet> set;
    std::vector<TriedCase> cases;
    std::vector<std::string> never_decisive; ///< rules that keep no case from being accepted
    std::vector<UntriedLimit> untried;
    std::size_t failed() const;
};

/// A criteria set was named where its worked cases are meant.
struct SetForCases : DataError {
    using DataError::DataError;
};

/// Judges the worked cases of a file, or those shipped beside a set by its name. Throws DataError: there are
/// none, or every mistake of the file.
TriedCases try_cases(Catalogue &catalogue, const Source &source);
/// Of all sets that have some.
std::vector<TriedCases> try_all_cases(Catalogue &catalogue);

} // namespace beadbook
