#pragma once

#include "technique/calculation.hpp"

#include <string>
#include <vector>

namespace beadbook {

/// The technicians' arithmetic: settings and estimates; no verdict rests on them.
struct CalculationList {
    const std::vector<technique::Calculation> *all = nullptr;
};
CalculationList all_calculations();

/// One of them, and what it takes.
struct CalculationWanted {
    const technique::Calculation *calculation = nullptr;
};
/// Throws Refusal, with the nearest name: there is none.
CalculationWanted calculation_wanted(const std::string &name);

/// One worked out. Throws Refusal: no such calculation, or an input that cannot be taken.
struct Calculated {
    const technique::Calculation *calculation = nullptr;
    technique::Computed computed;
};
Calculated calculate(const std::string &name, const std::vector<std::string> &inputs);

} // namespace beadbook
