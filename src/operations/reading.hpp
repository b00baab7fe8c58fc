#pragma once

#include "criteria/lint.hpp"
#include "operations/catalogue.hpp"
#include "operations/source.hpp"
#include "technique/known_conditions.hpp"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace beadbook {

/// All that are shipped, in alphabetical order.
std::vector<std::shared_ptr<const CriteriaSet>> all_criteria(Catalogue &catalogue);
std::vector<std::shared_ptr<const RangeRules>> all_rules(Catalogue &catalogue);
std::vector<std::shared_ptr<const Practice>> all_practices(Catalogue &catalogue);

/// A file that was read for its author: what it holds, and every mistake and doubt. Mistakes are the answer
/// here and no refusal.
template <class T>
struct Checked {
    std::string name, text;         ///< as it was read; the issues point into the text
    std::shared_ptr<const T> value; ///< null if there are errors
    std::vector<Issue> issues;
};

struct CheckedCriteria : Checked<CriteriaSet> {
    /// Types of imperfection that no rule speaks of: what would always be "cannot say". Worked out on demand.
    std::optional<std::vector<Uncovered>> coverage;
};

/// A shipped one by name, else a file or text. Throws DataError: it cannot be read.
CheckedCriteria check_criteria(Catalogue &catalogue, const Source &source, bool coverage = false);
Checked<RangeRules> check_rules(Catalogue &catalogue, const Source &source);
Checked<Practice> check_practice(Catalogue &catalogue, const Source &source);

/// The JSON Schema that editors use for one kind of file: criteria, cases, rules, practice, work. Throws
/// DataError: there is no such kind.
std::string editor_schema(const std::string &kind);

/// The words for imperfections, and the technique conditions that exams may record.
const Vocabulary &imperfection_types();
const std::vector<ConditionInfo> &known_conditions();

} // namespace beadbook
