#include "measure/parse.hpp"

#include "measure/text.hpp"

#include <array>
#include <limits>

namespace beadbook {
namespace {

bool digit(std::string_view s, std::size_t i) { return i < s.size() && s[i] >= '0' && s[i] <= '9'; }

/// Eighteen digits always fit; more is a slip of the hand.
constexpr std::size_t most_digits = 15;

std::int64_t scan_digits(std::string_view s, std::size_t &at) {
    const std::size_t begin = at;
    std::int64_t value = 0;
    while (digit(s, at)) {
        if (at - begin == most_digits) throw InputError("a number has too many digits", begin);
        value = value * 10 + (s[at++] - '0');
    }
    return value;
}

/// The `/16` of a fraction; `at` stands on the slash.
Exact scan_denominator(std::string_view s, std::size_t &at, std::int64_t numerator) {
    const std::size_t slash = at++;
    const std::int64_t below = scan_digits(s, at);
    if (below == 0) throw InputError("a fraction cannot have 0 below the line", slash);
    return Exact::fraction(numerator, below);
}

bool fraction_at(std::string_view s, std::size_t at) {
    while (digit(s, at)) ++at;
    return at < s.size() && s[at] == '/' && digit(s, at + 1);
}

struct UnitSpelling {
    std::string_view word;
    UnitWord unit;
};

const auto &spellings() {
    static const auto table = [] {
        const Exact inch = nm_per_inch;
        const Exact mm = nm_per_mm;
        const auto in_family = [](Exact scale) { return UnitWord{Dimension::length, scale, 0, Unit::inch}; };
        const auto mm_family = [](Exact scale) {
            return UnitWord{Dimension::length, scale, 0, Unit::millimetre};
        };
        const UnitWord in2{Dimension::area, inch * inch, 0, Unit::inch};
        const UnitWord mm2{Dimension::area, mm * mm, 0, Unit::millimetre};
        const UnitWord degree{Dimension::angle, 1'000'000, 0, std::nullopt};
        const UnitWord percent{Dimension::number, Exact::fraction(1, 100), 0, std::nullopt};
        const UnitWord fahrenheit{Dimension::temperature, 1'000'000, 0, std::nullopt};
        const UnitWord celsius{Dimension::temperature, 1'800'000, 32'000'000, std::nullopt};
        // Longest spelling first, so that "inches" is not read as "in".
        return std::array<UnitSpelling, 30>{{
            {"degrees", degree},
            {"inches", in_family(inch)},
            {"sq in", in2},
            {"sq mm", mm2},
            {"deg C", celsius},
            {"deg F", fahrenheit},
            {"inch", in_family(inch)},
            {"thou", in_family(nm_per_inch / 1000)},
            {"mils", in_family(nm_per_inch / 1000)},
            {"mil", in_family(nm_per_inch / 1000)},
            {"in2", in2},
            {"in²", in2},
            {"mm2", mm2},
            {"mm²", mm2},
            {"deg", degree},
            {"°C", celsius},
            {"°F", fahrenheit},
            {"mm", mm_family(mm)},
            {"cm", mm_family(10 * nm_per_mm)},
            {"um", mm_family(1000)},
            {"µm", mm_family(1000)},
            {"in", in_family(inch)},
            {"ft", in_family(12 * nm_per_inch)},
            {"m", mm_family(1000 * nm_per_mm)},
            {"°", degree},
            {"\"", in_family(inch)},
            {"'", in_family(12 * nm_per_inch)},
            {"%", percent},
            {"F", fahrenheit},
            {"C", celsius},
        }};
    }();
    return table;
}

bool word_goes_on(std::string_view word, std::string_view text, std::size_t end) {
    if (end >= text.size()) return false;
    const auto is_letter = [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_';
    };
    return is_letter(word.back()) && (is_letter(text[end]) || digit(text, end));
}

Exact largest(Dimension d) {
    const Exact length = longest_length.nm;
    switch (d) {
    case Dimension::length: return length;
    case Dimension::area: return Exact(9'000'000) * nm_per_mm * nm_per_mm; // nine square metres
    case Dimension::angle: return 360'000'000;
    case Dimension::temperature: return 10'000'000'000;
    case Dimension::number: break;
    }
    return 1'000'000'000;
}

std::string example_of(Dimension d) {
    switch (d) {
    case Dimension::length: return "0.045 in, 3/16 in, 1-1/2 in or 1.2 mm";
    case Dimension::area: return "0.004 in2 or 2.5 mm2";
    case Dimension::angle: return "105 deg";
    case Dimension::temperature: return "350 F or 180 C";
    case Dimension::number: break;
    }
    return "12 or 40 %";
}

} // namespace

std::optional<Exact> scan_number(std::string_view s, std::size_t &at) {
    std::size_t i = at;
    if (!digit(s, i) && !(i < s.size() && s[i] == '.' && digit(s, i + 1))) return std::nullopt;
    const std::int64_t whole = scan_digits(s, i);
    if (i < s.size() && s[i] == '.') {
        const std::size_t point = ++i;
        const std::int64_t below = scan_digits(s, i);
        std::int64_t scale = 1;
        for (std::size_t k = point; k < i; ++k) scale *= 10;
        at = i;
        return Exact(whole) + Exact::fraction(below, scale);
    }
    if (i < s.size() && s[i] == '/' && digit(s, i + 1)) {
        const Exact value = scan_denominator(s, i, whole);
        at = i;
        return value;
    }
    // 1-1/2 and 2 3/4: the part behind must be a fraction, or the number ends here.
    if (i + 1 < s.size() && (s[i] == '-' || s[i] == ' ') && digit(s, i + 1) && fraction_at(s, i + 1)) {
        ++i;
        const std::size_t part = i;
        const std::int64_t above = scan_digits(s, i);
        const Exact below = scan_denominator(s, i, above);
        if (below >= Exact(1)) throw InputError("the fraction of a mixed number is 1 or more", part);
        at = i;
        return Exact(whole) + below;
    }
    at = i;
    return Exact(whole);
}

std::optional<UnitWord> scan_unit(std::string_view s, std::size_t &at) {
    std::size_t i = at;
    while (i < s.size() && s[i] == ' ') ++i;
    for (const auto &[word, unit] : spellings()) {
        if (s.substr(i, word.size()) == word && !word_goes_on(word, s, i + word.size())) {
            at = i + word.size();
            return unit;
        }
    }
    return std::nullopt;
}

Typed parse_typed(std::string_view whole_text, Dimension wanted, std::optional<Unit> unit) {
    const std::string_view text = trimmed(whole_text);
    const std::string expected =
        std::string("; expected ") + std::string(name_of(wanted)) + " such as " + example_of(wanted);
    if (text.empty()) throw InputError("nothing given" + expected);
    const bool below_zero = text.front() == '-';
    if (below_zero && wanted != Dimension::temperature)
        throw InputError("'" + shown(text) + "' is negative" + expected);
    std::size_t at = below_zero ? 1 : 0;
    const auto number = scan_number(text, at);
    if (!number) throw InputError("'" + shown(text) + "' does not begin with a number" + expected);
    if (at < text.size() && text[at] == ',')
        throw InputError("'" + shown(text) + "' has a comma; write a decimal point", at);
    const std::size_t unit_at = at;
    auto word = scan_unit(text, at);
    std::string typed(text);
    if (!word && at == text.size()) {
        if (wanted == Dimension::number) {
            word = UnitWord{Dimension::number, 1, 0, std::nullopt};
        } else if (wanted == Dimension::angle) {
            word = UnitWord{Dimension::angle, 1'000'000, 0, std::nullopt};
            typed += " deg";
        } else if (wanted == Dimension::temperature || !unit) {
            throw InputError("'" + shown(text) + "' has no unit" + expected, at);
        } else {
            const std::string suffix =
                std::string(" ") + std::string(name_of(*unit)) + (wanted == Dimension::area ? "2" : "");
            typed += suffix;
            std::size_t zero = 0;
            word = scan_unit(suffix, zero);
        }
    }
    if (!word || at != text.size())
        throw InputError("'" + shown(text.substr(word ? at : unit_at)) + "' in '" + shown(text) +
                             "' is not understood" + expected,
                         word ? at : unit_at);
    if (word->dimension != wanted)
        throw InputError("'" + shown(text) + "' is " + std::string(name_of(word->dimension)) + expected,
                         unit_at);
    Exact value;
    try {
        value = *number * (below_zero ? Exact(-1) : Exact(1)) * word->scale + word->offset;
    } catch (const OutOfRange &) {
        throw InputError("'" + shown(text) + "' is finer or larger than can be kept exactly" + expected);
    }
    if (value > largest(wanted)) throw InputError("'" + shown(text) + "' is far too large" + expected);
    if (wanted != Dimension::number && !value.is_whole())
        throw InputError("'" + shown(text) +
                         "' is finer than can be kept exactly (one nanometre); write it to " +
                         "the nearest 0.0001 in or 0.001 mm");
    return {std::move(typed), value};
}

Length parse_length(std::string_view text, std::optional<Unit> unit) {
    return {static_cast<std::int64_t>(parse_typed(text, Dimension::length, unit).value.num())};
}

} // namespace beadbook
