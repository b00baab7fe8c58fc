#include "measure/unit.hpp"

#include <algorithm>
#include <stdexcept>
#include <vector>

namespace beadbook {
namespace {

/// Spellings of one unit.
void add(std::vector<UnitWord> &out, std::initializer_list<std::string_view> words, UnitWord unit) {
    for (const std::string_view word : words) {
        unit.word = word;
        out.push_back(unit);
    }
}

UnitWord of(Dimension d, const Exact &scale) { return {"", d, scale, 0, {}}; }
UnitWord of(Dimension d, const Exact &scale, Unit family, const Exact &offset = 0) {
    return {"", d, scale, offset, family};
}

void add_sizes(std::vector<UnitWord> &out) {
    const Exact inch = nm_per_inch, mm = nm_per_mm;
    const auto length = [&](std::initializer_list<std::string_view> words, const Exact &scale, Unit family) {
        add(out, words, of(Dimension::length, scale, family));
    };
    length({"in", "inch", "inches", "\"", "IN"}, inch, Unit::inch);
    length({"thou", "mil", "mils"}, nm_per_inch / 1000, Unit::inch);
    length({"ft", "'"}, inch * Exact(12), Unit::inch);
    length({"mm", "MM"}, mm, Unit::millimetre);
    length({"cm"}, mm * Exact(10), Unit::millimetre);
    length({"m"}, mm * Exact(1000), Unit::millimetre);
    length({"um", "\u00b5m", "\u03bcm"}, 1000, Unit::millimetre); // micro sign, Greek letter
    add(out, {"in2", "in²", "sq in"}, of(Dimension::area, inch * inch, Unit::inch));
    add(out, {"mm2", "mm²", "sq mm"}, of(Dimension::area, mm * mm, Unit::millimetre));
    add(out, {"deg", "degrees", "°"}, of(Dimension::angle, 1'000'000));
    add(out, {"F", "deg F", "°F"}, of(Dimension::temperature, 1'000'000, Unit::inch));
    add(out, {"C", "deg C", "°C"}, of(Dimension::temperature, 1'800'000, Unit::millimetre, 32'000'000));
    add(out, {"%"}, of(Dimension::number, Exact::fraction(1, 100)));
}

void add_conditions(std::vector<UnitWord> &out) {
    const Exact inch = nm_per_inch, mm = nm_per_mm;
    // One foot-candle is one lumen on a square foot; one oersted, a gauss in air, is 1000/(4 pi) A/m.
    const Exact foot_candle = Exact::fraction(100'000'000, 9'290'304);
    const Exact gauss = Exact::fraction(795'774'715, 10'000'000);
    add(out, {"s", "second", "seconds"}, of(Dimension::time, 1));
    add(out, {"min", "minute", "minutes"}, of(Dimension::time, 60));
    add(out, {"h", "hour", "hours"}, of(Dimension::time, 3600));
    add(out, {"d", "day", "days"}, of(Dimension::time, 86'400));
    add(out, {"y", "year", "years"}, of(Dimension::time, Exact(36'525) * Exact(864))); // 365.25 days
    add(out, {"A"}, of(Dimension::current, 1));
    add(out, {"kA"}, of(Dimension::current, 1000));
    add(out, {"A/in"}, of(Dimension::current_per_length, Exact(1) / inch, Unit::inch));
    add(out, {"A/mm"}, of(Dimension::current_per_length, Exact(1) / mm, Unit::millimetre));
    add(out, {"lx", "lux"}, of(Dimension::light, 1, Unit::millimetre));
    add(out, {"fc"}, of(Dimension::light, foot_candle, Unit::inch));
    add(out, {"uW/cm2", "\u00b5W/cm2", "\u03bcW/cm2"}, of(Dimension::irradiance, 1));
    add(out, {"mW/cm2"}, of(Dimension::irradiance, 1000));
    add(out, {"W/m2"}, of(Dimension::irradiance, 100));
    add(out, {"g"}, of(Dimension::weight, 1, Unit::millimetre));
    add(out, {"kg"}, of(Dimension::weight, 1000, Unit::millimetre));
    add(out, {"lb"}, of(Dimension::weight, Exact::fraction(45'359'237, 100'000), Unit::inch));
    add(out, {"G"}, of(Dimension::field, gauss));
    add(out, {"mT"}, of(Dimension::field, gauss * Exact(10)));
    add(out, {"A/m"}, of(Dimension::field, 1));
    add(out, {"kA/m"}, of(Dimension::field, 1000));
    add(out, {"mL", "mL/100mL", "ml/100ml"}, of(Dimension::concentration, 1));
    add(out, {"Ci"}, of(Dimension::activity, 1));
    add(out, {"GBq"}, of(Dimension::activity, Exact::fraction(1, 37)));
    add(out, {"R/h"}, of(Dimension::radiation, 1));
    add(out, {"mR/h"}, of(Dimension::radiation, Exact::fraction(1, 1000)));
    add(out, {"uSv/h", "\u00b5Sv/h", "\u03bcSv/h"}, of(Dimension::dose_rate, 1));
    add(out, {"mSv/h"}, of(Dimension::dose_rate, 1000));
}

/// Longest spelling first, so that "inches" is not read as "in", nor "A/in" as "A".
const std::vector<UnitWord> &units() {
    static const std::vector<UnitWord> table = [] {
        std::vector<UnitWord> out;
        add_sizes(out);
        add_conditions(out);
        std::stable_sort(out.begin(), out.end(),
                         [](const UnitWord &a, const UnitWord &b) { return a.word.size() > b.word.size(); });
        return out;
    }();
    return table;
}

bool letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_'; }

/// The x of 5mmx1mm, between two numbers.
bool parts_numbers(std::string_view text, std::size_t at) {
    if (text[at] != 'x') return false;
    const std::size_t next = text.find_first_not_of(' ', at + 1);
    return next != text.npos && (text[next] == '.' || (text[next] >= '0' && text[next] <= '9'));
}

bool word_goes_on(std::string_view word, std::string_view text, std::size_t end) {
    return end < text.size() && letter(word.back()) && !parts_numbers(text, end) &&
           (letter(text[end]) || (text[end] >= '0' && text[end] <= '9'));
}

} // namespace

std::optional<UnitWord> scan_unit(std::string_view text, std::size_t &at,
                                  std::initializer_list<Dimension> only) {
    std::size_t i = at;
    while (i < text.size() && text[i] == ' ') ++i;
    for (const auto &unit : units()) {
        if (only.size() > 0 && std::find(only.begin(), only.end(), unit.dimension) == only.end()) continue;
        const std::size_t end = i + unit.word.size();
        if (text.substr(i, unit.word.size()) != unit.word || word_goes_on(unit.word, text, end)) continue;
        at = end;
        return unit;
    }
    return std::nullopt;
}

const UnitWord &unit_called(std::string_view word) {
    const auto found =
        std::find_if(units().begin(), units().end(), [&](const UnitWord &u) { return u.word == word; });
    if (found == units().end()) throw std::logic_error("no unit is written " + std::string(word));
    return *found;
}

} // namespace beadbook
