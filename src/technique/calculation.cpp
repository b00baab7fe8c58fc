#include "technique/calculation.hpp"

#include "measure/text.hpp"

#include <algorithm>

namespace beadbook::technique {
namespace {

std::string kinds_text(const CalculationInput &input) {
    if (!input.words.empty()) return listed(input.words, "or");
    std::vector<std::string> names;
    for (const Dimension kind : input.kinds) names.emplace_back(name_of(kind));
    return listed(names, "or");
}

Amount read_input(const CalculationInput &input, const std::string &text) {
    for (std::size_t k = 0; k < input.kinds.size(); ++k) {
        try {
            return {input.kinds[k], parse_amount(text, input.kinds[k])};
        } catch (const InputError &e) {
            if (k + 1 == input.kinds.size())
                throw InputError(
                    input.name + ": " +
                    (k == 0 ? e.what() : "'" + shown(text) + "'; expected " + kinds_text(input)));
        }
    }
    throw InputError(input.name + ": '" + shown(text) + "'");
}

} // namespace

Unit CalculationInputs::unit() const {
    for (const auto &[name, amount] : amounts)
        if (amount.kind == Dimension::length) {
            const std::string &text = typed.at(name);
            std::size_t at = 0;
            scan_number(text, at);
            const auto unit = scan_unit(text, at);
            if (unit && unit->family == Unit::millimetre) return Unit::millimetre;
        }
    return Unit::inch;
}

const Calculation *calculation(std::string_view name) {
    const auto &all = calculations();
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const Calculation &c) { return c.name == name; });
    return found == all.end() ? nullptr : &*found;
}

Computed compute(const Calculation &c, const std::vector<std::string> &words) {
    Computed out;
    std::vector<std::string> names;
    for (const auto &input : c.inputs) names.push_back(input.name);
    for (const auto &word : words) {
        const std::size_t equals = word.find('=');
        const std::string name = word.substr(0, equals);
        const auto known = std::find(names.begin(), names.end(), name);
        if (equals == std::string::npos || known == names.end())
            throw InputError("'" + shown(word) + "': write name=value with " + listed(names, "or") +
                             did_you_mean(name, names));
        if (!out.inputs.typed.emplace(name, std::string(trimmed(word.substr(equals + 1)))).second)
            throw InputError(name + " is given twice");
    }
    for (const auto &input : c.inputs) {
        if (!out.inputs.has(input.name)) {
            if (input.optional) continue;
            if (input.otherwise.empty())
                throw InputError(input.name + " is missing: " + kinds_text(input) + ", " + input.help);
            out.inputs.typed[input.name] = input.otherwise;
        }
        const std::string &text = out.inputs.word(input.name);
        if (input.words.empty())
            out.inputs.amounts[input.name] = read_input(input, text);
        else if (std::find(input.words.begin(), input.words.end(), text) == input.words.end())
            throw InputError(input.name + ": '" + shown(text) + "'; expected " + kinds_text(input) +
                             did_you_mean(text, input.words));
    }
    // An amount of zero makes every formula here meaningless.
    for (const auto &[name, amount] : out.inputs.amounts)
        if (amount.value == Exact(0) && name != "gap") throw InputError(name + " is zero");
    out.results = c.run(out.inputs);
    return out;
}

} // namespace beadbook::technique
