#include "measure/parse.hpp"

#include "measure/text.hpp"

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

struct Read {
    std::string typed; ///< as typed, with the unit that was meant
    Exact value;
};

/// A bare number in the unit that was meant.
std::optional<UnitWord> unit_meant(Dimension wanted, std::optional<Unit> unit) {
    if (wanted == Dimension::number) return UnitWord{};
    if (wanted == Dimension::angle) return unit_called("deg");
    if (!unit) return std::nullopt;
    if (wanted == Dimension::length) return unit_called(name_of(*unit));
    if (wanted == Dimension::area) return unit_called(*unit == Unit::inch ? "in2" : "mm2");
    return std::nullopt;
}

Read read_value(std::string_view text, Dimension wanted, std::optional<Unit> unit) {
    const std::string expected =
        "; expected " + std::string(name_of(wanted)) + " such as " + std::string(example_of(wanted));
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
        word = unit_meant(wanted, unit);
        if (!word) throw InputError("'" + shown(text) + "' has no unit" + expected, at);
        if (!word->word.empty()) typed += " " + std::string(word->word);
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
    return {std::move(typed), value};
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

Typed parse_typed(std::string_view whole_text, Dimension wanted, std::optional<Unit> unit) {
    const std::string_view text = trimmed(whole_text);
    Read read = read_value(text, wanted, unit);
    if (kept_whole(wanted) && !read.value.is_whole())
        throw InputError("'" + shown(text) +
                         "' is finer than can be kept exactly (one nanometre); write it to " +
                         "the nearest 0.0001 in or 0.001 mm");
    return {std::move(read.typed), read.value};
}

bool is_bare_number(std::string_view whole_text) {
    const std::string_view text = trimmed(whole_text);
    std::size_t at = 0;
    try {
        return scan_number(text, at) && at == text.size();
    } catch (const InputError &) {
        return false; // no number that can be taken: whoever reads it says why
    }
}

std::optional<Unit> unit_written(std::string_view whole_text) {
    const std::string_view text = trimmed(whole_text);
    std::size_t at = 0;
    if (!scan_number(text, at)) return std::nullopt;
    const auto word = scan_unit(text, at, {Dimension::length});
    return word && at == text.size() ? word->family : std::nullopt;
}

Typed parse_measured(std::string_view whole_text, Dimension wanted, std::optional<Unit> unit) {
    const std::string text(trimmed(whole_text));
    const bool needs_unit = wanted == Dimension::length || wanted == Dimension::area;
    if (!unit && needs_unit && is_bare_number(text)) {
        const std::string square = wanted == Dimension::area ? "2" : "";
        throw InputError("'" + shown(text) + "' has no unit, and nothing fixes the coupon's: " + text +
                         " in" + square + " or " + text + " mm" + square + "? write the unit");
    }
    return parse_typed(text, wanted, unit);
}

Exact parse_amount(std::string_view text, Dimension wanted, std::optional<Unit> unit) {
    return read_value(trimmed(text), wanted, unit).value;
}

Length parse_length(std::string_view text, std::optional<Unit> unit) {
    return {static_cast<std::int64_t>(parse_typed(text, Dimension::length, unit).value.num())};
}

} // namespace beadbook
