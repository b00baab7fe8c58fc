#pragma once

#include "criteria/extend.hpp"
#include "criteria/model.hpp"

#include <memory>

namespace beadbook {

/// The outcome of reading a criteria file: a set if there was no error, and every issue found.
struct Loaded {
    std::shared_ptr<const CriteriaSet> set;
    std::shared_ptr<const CriteriaSet> kept; ///< also where there are late errors alone
    std::vector<Issue> issues;
};

/// Reads and compiles one criteria set (language: criteria/README.md). Collects all mistakes, never throws
/// on the author's. `base` brings the text of a set that it extends.
Loaded load_criteria(const std::string &text, const Vocabulary &vocabulary = Vocabulary::shipped(),
                     const BaseText &base = shipped_base);

/// The same of a text that was checked before it came here: the tests do it for what is built in, and a
/// record keeps none that was refused. Its doubts (criteria/lint.hpp), which take most of the time, are not
/// looked for.
Loaded load_checked_criteria(const std::string &text);

/// A shipped set by name, which is read once and then kept as long as the program runs; throws
/// std::out_of_range if there is none.
std::shared_ptr<const CriteriaSet> shipped_criteria(const std::string &name);

} // namespace beadbook
