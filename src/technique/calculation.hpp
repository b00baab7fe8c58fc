#pragma once

#include "measure/parse.hpp"

#include <functional>
#include <map>
#include <string>
#include <vector>

namespace beadbook::technique {

/// One number that a calculation takes.
struct CalculationInput {
    std::string name;
    std::vector<Dimension> kinds; ///< any of these
    std::string help;
    std::string otherwise; ///< value if it is not given; empty: needed, unless optional
    bool optional = false;
    std::vector<std::string> words; ///< a word instead of an amount
};

/// One result, ready to read.
struct CalculationResult {
    std::string name, text;
};

/// One number that was put in.
struct Amount {
    Dimension kind = Dimension::number;
    Exact value; ///< in the base unit of the kind
};

/// What was put in, as typed and read.
class CalculationInputs {
public:
    std::map<std::string, std::string> typed;
    std::map<std::string, Amount> amounts;

    bool has(const std::string &name) const { return typed.contains(name); }
    const std::string &word(const std::string &name) const { return typed.at(name); }
    /// In the base unit of its kind.
    double number(const std::string &name) const { return amounts.at(name).value.to_double(); }
    Unit unit() const; ///< that lengths were typed in; inches if none was
};

struct Calculation {
    std::string name, title;
    std::string formula; ///< as people write it
    std::string source;  ///< document and clause, and the standing
    std::vector<CalculationInput> inputs;
    std::function<std::vector<CalculationResult>(const CalculationInputs &)> run;
    std::string example; ///< words of a call
};
const std::vector<Calculation> &calculations();
const Calculation *calculation(std::string_view name);

/// Reads `name=value` words for a calculation and runs it. Throws InputError: unknown name, wrong kind,
/// missing, or numbers for which the rule does not hold.
struct Computed {
    CalculationInputs inputs;
    std::vector<CalculationResult> results;
};
Computed compute(const Calculation &calculation, const std::vector<std::string> &words);

} // namespace beadbook::technique
