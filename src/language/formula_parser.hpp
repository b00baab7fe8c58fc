#pragma once

#include "language/names.hpp"
#include "language/scanner.hpp"

namespace beadbook {

/// Grammar (blanks separate words; every operation is dimension-checked):
///   formula   = term { (+ | -) term }
///   term      = factor { (x | *) factor | / factor }
///   factor    = NUMBER [UNIT [or NUMBER UNIT]] | QUANTITY | FORMULA | ( formula )
///             | lesser of formula and formula {and formula} | greater of ...
///             | table NAME | limit of RULE | blank NAME
/// `1/16 in or 1.6 mm` is one value that a standard prints in both units.
/// Throws InputError with the column of the mistake.
Formula parse_formula(const std::string &text, const Names &names);

/// Reads a formula in the middle of a text, as conditions do.
class FormulaParser {
public:
    FormulaParser(Scanner &scanner, const Names &names) : s_(scanner), names_(names) {}

    /// The formula that stands here, with its text and the names that it uses. `or_asked` are words and days
    /// that could stand here instead, for the message.
    Formula formula(bool or_asked = false);
    /// The longest name of the table that stands here; nothing is taken if none does.
    const Name *name();

private:
    Formula sum();
    Formula term();
    Formula factor();
    Formula choice(Formula::Op op);
    Formula constant(const Exact &number, std::size_t begin);
    std::optional<Formula> twin(const Exact &first, const UnitWord &unit);
    Formula table();
    Formula limit_of();
    Formula blank();
    std::optional<Formula> named();
    Formula finished(Formula f, std::size_t begin) const;
    Dimension product(const Formula &a, const Formula &b, std::size_t at) const;
    Dimension quotient(const Formula &a, const Formula &b, std::size_t at) const;
    void same(const Formula &a, const Formula &b, std::size_t at, std::string_view what) const;
    [[noreturn]] void unknown(std::size_t begin) const;

    Scanner &s_;
    const Names &names_;
    std::optional<std::size_t> asked_at_; ///< where a word or day could stand too
    int depth_ = 0;
};

} // namespace beadbook
