#include "operations/computing.hpp"

#include "measure/text.hpp"

namespace beadbook {

CalculationList all_calculations() { return {&technique::calculations()}; }

CalculationWanted calculation_wanted(const std::string &name) {
    if (const auto *found = technique::calculation(name)) return {found};
    std::vector<std::string> names;
    for (const auto &one : technique::calculations()) names.push_back(one.name);
    throw Refusal(Refusal::Kind::request,
                  "there is no calculation '" + shown(name) + "'" + did_you_mean(name, names))
        .at("calculation");
}

Calculated calculate(const std::string &name, const std::vector<std::string> &inputs) {
    const auto *calculation = calculation_wanted(name).calculation;
    return {calculation, technique::compute(*calculation, inputs)};
}

} // namespace beadbook
