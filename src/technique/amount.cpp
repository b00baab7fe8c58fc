#include "technique/amount.hpp"

#include "measure/text.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <vector>

namespace beadbook {
namespace {

struct Spelling {
    std::string_view word;
    AmountKind kind;
    Exact scale;
    Exact offset = 0;
};

const std::vector<Spelling> &spellings() {
    using K = AmountKind;
    static const std::vector<Spelling> table = [] {
        // One foot-candle is one lumen on a square foot; one oersted, a gauss in air, is 1000/(4 pi) A/m.
        const Exact fc = Exact::fraction(100'000'000, 9'290'304);
        const Exact gauss = Exact::fraction(795'774'715, 10'000'000);
        const Exact inch = nm_per_inch, mm = nm_per_mm;
        std::vector<Spelling> out{
            {"A/in", K::current_per_length, Exact(1) / inch},
            {"A/mm", K::current_per_length, Exact(1) / mm},
            {"inches", K::length, inch},
            {"inch", K::length, inch},
            {"in", K::length, inch},
            {"\"", K::length, inch},
            {"mm", K::length, mm},
            {"cm", K::length, mm * Exact(10)},
            {"ft", K::length, inch * Exact(12)},
            {"thou", K::length, inch / Exact(1000)},
            {"mL/100mL", K::concentration, 1},
            {"ml/100ml", K::concentration, 1},
            {"mL", K::concentration, 1},
            {"m", K::length, mm * Exact(1000)},
            {"minutes", K::time, 60},
            {"min", K::time, 60},
            {"seconds", K::time, 1},
            {"s", K::time, 1},
            {"hours", K::time, 3600},
            {"h", K::time, 3600},
            {"deg F", K::temperature, 1'000'000},
            {"F", K::temperature, 1'000'000},
            {"deg C", K::temperature, 1'800'000, 32'000'000},
            {"C", K::temperature, 1'800'000, 32'000'000},
            {"degrees", K::angle, 1'000'000},
            {"deg", K::angle, 1'000'000},
            {"A", K::current, 1},
            {"kA", K::current, 1000},
            {"lx", K::light, 1},
            {"lux", K::light, 1},
            {"fc", K::light, fc},
            {"uW/cm2", K::irradiance, 1},
            {"mW/cm2", K::irradiance, 1000},
            {"W/m2", K::irradiance, 100},
            {"lb", K::weight, Exact::fraction(45'359'237, 100'000)},
            {"kg", K::weight, 1000},
            {"G", K::field, gauss},
            {"A/m", K::field, 1},
            {"kA/m", K::field, 1000},
            {"mT", K::field, gauss * Exact(10)},
            {"%", K::percent, 1},
            {"days", K::time, 86'400},
            {"d", K::time, 86'400},
            {"years", K::time, Exact(36'525) * Exact(864)}, // 365.25 days
            {"y", K::time, Exact(36'525) * Exact(864)},
            {"Ci", K::activity, 1},
            {"GBq", K::activity, Exact::fraction(1, 37)},
            {"R/h", K::radiation, 1},
            {"mR/h", K::radiation, Exact::fraction(1, 1000)},
            {"uSv/h", K::dose_rate, 1},
            {"mSv/h", K::dose_rate, 1000},
        };
        std::stable_sort(out.begin(), out.end(),
                         [](const Spelling &a, const Spelling &b) { return a.word.size() > b.word.size(); });
        return out;
    }();
    return table;
}

bool wordy(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '/';
}

const Spelling *scan_spelling(std::string_view text, std::size_t &at) {
    std::size_t i = at;
    while (i < text.size() && text[i] == ' ') ++i;
    for (const auto &s : spellings()) {
        const std::size_t end = i + s.word.size();
        if (text.substr(i, s.word.size()) != s.word) continue;
        if (end < text.size() && wordy(text[end]) && wordy(s.word.back())) continue;
        at = end;
        return &s;
    }
    return nullptr;
}

const Spelling &usual(AmountKind kind) {
    const std::string_view words[] = {"",       "in", "min", "F",        "deg", "A",  "A/in", "fc",
                                      "uW/cm2", "lb", "G",   "mL/100mL", "%",   "Ci", "R/h",  "uSv/h"};
    const std::string_view word = words[static_cast<std::size_t>(kind)];
    return *std::find_if(spellings().begin(), spellings().end(),
                         [&](const Spelling &s) { return s.word == word; });
}

} // namespace

std::string_view name_of(AmountKind kind) {
    constexpr std::string_view names[] = {"a number",
                                          "a length",
                                          "a time",
                                          "a temperature",
                                          "an angle",
                                          "a current",
                                          "a current per length",
                                          "an amount of light",
                                          "an irradiance",
                                          "a weight",
                                          "a field strength",
                                          "a concentration",
                                          "a percentage",
                                          "an activity",
                                          "an exposure rate",
                                          "a dose rate"};
    return names[static_cast<std::size_t>(kind)];
}

std::optional<Amount> scan_amount(std::string_view text, std::size_t &at) {
    std::size_t i = at;
    const bool below_zero = i < text.size() && text[i] == '-';
    if (below_zero) ++i;
    auto number = scan_number(text, i);
    if (!number) return std::nullopt;
    if (below_zero) number = *number * Exact(-1);
    at = i;
    if (const Spelling *unit = scan_spelling(text, at))
        return Amount{unit->kind, *number * unit->scale + unit->offset};
    return Amount{AmountKind::number, *number};
}

Amount parse_amount(std::string_view whole, AmountKind wanted, std::optional<Unit> unit) {
    const std::string_view text = trimmed(whole);
    const std::string expected =
        "; expected " + std::string(name_of(wanted)) +
        (wanted == AmountKind::number
             ? ""
             : " such as " + print(Amount{wanted, usual(wanted).scale * Exact(10) + usual(wanted).offset}));
    std::size_t at = 0;
    std::optional<Amount> out;
    try {
        out = scan_amount(text, at);
    } catch (const OutOfRange &) {
        throw InputError("'" + shown(text) + "' is too large");
    }
    if (!out) throw InputError("'" + shown(text) + "' does not begin with a number" + expected);
    if (at != text.size())
        throw InputError(
            "'" + shown(text.substr(at)) + "' in '" + shown(text) + "' is not understood" + expected, at);
    if (out->kind == AmountKind::number && wanted == AmountKind::length && unit)
        return {wanted, out->value * Exact(*unit == Unit::inch ? nm_per_inch : nm_per_mm)};
    if (out->kind == AmountKind::number && wanted != AmountKind::number)
        throw InputError("'" + shown(text) + "' has no unit" + expected, at);
    if (out->kind != wanted)
        throw InputError("'" + shown(text) + "' is " + std::string(name_of(out->kind)) + expected);
    if (out->value < Exact(0) && wanted != AmountKind::temperature)
        throw InputError("'" + shown(text) + "' is negative" + expected);
    return *out;
}

std::string print(const Amount &amount) {
    double value = amount.value.to_double();
    std::string unit;
    if (amount.kind != AmountKind::number) {
        const Spelling &s = usual(amount.kind);
        value = ((amount.value - s.offset) / s.scale).to_double();
        unit = (s.word == "%" ? "" : " ") + std::string(s.word);
    }
    char text[48];
    std::snprintf(text, sizeof text, "%.6g", value);
    return text + unit;
}

} // namespace beadbook
