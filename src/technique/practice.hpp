#pragma once

#include "criteria/model.hpp"
#include "technique/known_conditions.hpp"

#include <memory>

namespace beadbook {

/// One line of a practice: where all of `when` hold, `must` has to.
struct PracticeRule {
    std::string id, clause, reading;
    Standing standing;
    std::vector<Condition> when;
    Condition must;
    std::string repeat;   ///< what to do when it does not hold
    bool warning = false; ///< told, but the exam stays valid
};

/// What the document asks and this file does not hold. Where all of `when` hold, an exam cannot be called
/// valid by it; a `harmless` one bears on no exam, and says why.
struct PracticeGap {
    std::string what;
    std::vector<Condition> when;
    std::string harmless;
};

/// One practice for one method: immutable once loaded.
struct Practice {
    std::string name, title, edition, source, notes;
    Exam method = Exam::VT;
    std::vector<PracticeRule> rules;
    std::vector<PracticeGap> gaps;
    std::string text, hash;
};

struct LoadedPractice {
    std::shared_ptr<const Practice> practice;
    std::shared_ptr<const Practice> kept; ///< also where there are late errors alone
    std::vector<Issue> issues;
};

/// Reads one practice (language: criteria/technique/README.md). Collects all mistakes.
LoadedPractice load_practice(const std::string &text);
/// A shipped one by name; throws std::out_of_range.
std::shared_ptr<const Practice> shipped_practice(const std::string &name);
const std::vector<std::string> &shipped_practice_names();

} // namespace beadbook
