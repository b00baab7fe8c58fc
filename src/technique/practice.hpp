#pragma once

#include "criteria/model.hpp"
#include "technique/condition.hpp"

#include <memory>

namespace beadbook {

/// A number that a practice asks for: factors multiplied, such as `90 A/in x spacing`.
struct AmountTerm {
    enum class Op : std::uint8_t { product, least, greatest };
    struct Factor {
        Amount amount;         ///< if `condition` is empty
        std::string condition; ///< a recorded condition or a size of the coupon
    };
    Op op = Op::product;
    std::vector<Factor> factors;
    std::vector<AmountTerm> terms; ///< of least and greatest
    Dimension kind = Dimension::number;
    std::string text;
};

/// What is asked of one condition, or of a fact or size of the coupon.
struct ConditionTest {
    enum class Kind : std::uint8_t {
        words,    ///< one of them
        band,     ///< an amount within edges
        not_past, ///< a day on or after the exam's
        within,   ///< a day at most a period before the exam
    };
    struct Edge {
        Compare compare = Compare::at_most;
        AmountTerm term;
    };
    std::string subject;
    Kind kind = Kind::words;
    std::vector<std::string> words;
    std::vector<Edge> edges;
    Period period;
    std::string text; ///< as the author wrote it
};

/// One line of a practice: where `when` holds, `must` has to.
struct PracticeRule {
    std::string id, clause, reading;
    Standing standing;
    std::vector<ConditionTest> when;
    ConditionTest must;
    std::string repeat;   ///< what to do when it does not hold
    bool warning = false; ///< told, but the exam stays valid
};

/// One practice for one method: immutable once loaded.
struct Practice {
    std::string name, title, edition, source, notes;
    Exam method = Exam::VT;
    std::vector<PracticeRule> rules;
    std::vector<std::string> gaps;
    std::string text, hash;
};

struct LoadedPractice {
    std::shared_ptr<const Practice> practice;
    std::vector<Issue> issues;
};

/// Reads one practice (language: criteria/technique/README.md). Collects all mistakes.
LoadedPractice load_practice(const std::string &text);
/// A shipped one by name; throws std::out_of_range.
std::shared_ptr<const Practice> shipped_practice(const std::string &name);
std::vector<std::string> shipped_practice_names();

} // namespace beadbook
