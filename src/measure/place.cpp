#include "measure/place.hpp"

#include "measure/print.hpp"
#include "measure/text.hpp"

#include <cctype>

namespace beadbook {
namespace {

/// Twelve-hour clock reading as a share of the whole turn.
std::optional<Exact> clock_share(std::string_view text) {
    std::size_t at = 0;
    const auto hour = scan_number(text, at);
    if (!hour || !hour->is_whole()) return std::nullopt;
    const std::string_view rest = text.substr(at);
    Exact minute = 0;
    if (!rest.empty() && behind_clock_word(text, at) == text.size()) {
        // whole hours
    } else if (!rest.empty() && rest.front() == ':') {
        std::size_t tail = 1;
        const auto typed = scan_number(rest, tail);
        if (!typed || tail != rest.size() || tail != 3 || *typed >= Exact(60))
            throw InputError("'" + shown(text) + "' is not a clock position; write it like 3:30");
        minute = *typed;
    } else {
        return std::nullopt;
    }
    if (*hour > Exact(12)) throw InputError("'" + shown(text) + "' is not on a clock of twelve hours");
    const Exact hours = *hour + minute / Exact(60);
    const Exact turns = hours / Exact(12);
    return turns >= Exact(1) ? turns - Exact(1) : turns;
}

/// `6 oclock` as the trade writes it.
std::string hour_written(std::string_view text) {
    const std::size_t hour = text.find_first_not_of("0123456789");
    const bool typed_so = text.ends_with("o'clock") || behind_clock_word(text, hour) == hour;
    return std::string(text.substr(0, typed_so ? text.npos : hour)) + (typed_so ? "" : " o'clock");
}

struct Hour {
    int hour = 0, minute = 0;
};
int number_of(std::string_view digits) {
    int out = 0;
    for (const char c : digits) out = c < '0' || c > '9' ? 1000 : out * 10 + (c - '0');
    return out;
}

/// Minutes by what stands behind the point: 3.30, and 3.5 as half past.
int minute_of(std::string_view part) {
    if (part == "5" || part == "50") return 30;
    return part.size() == 2 ? number_of(part) : 1000;
}

/// `6`, `3.30` and `3.5` round a tube: a distance or an hour. The datum is the same by both. Of hundredths
/// only the quarters of an hour are doubted: nobody means minutes by 3.27, nor a quarter past by 3.25.
std::optional<Hour> may_be_an_hour(std::string_view text) {
    const std::size_t point = text.find('.');
    const std::string_view whole = text.substr(0, point);
    const std::string_view part = point == text.npos ? "00" : text.substr(point + 1);
    if (whole.empty() || whole.size() > 2) return std::nullopt;
    const Hour out{number_of(whole), minute_of(part)};
    const bool on_clock = out.hour >= 1 && out.hour <= 12 && out.minute < 60 && out.minute % 15 == 0;
    return on_clock ? std::optional(out) : std::nullopt;
}

[[noreturn]] void ask_which_reading(const std::string &text, Hour read, const WeldLine &weld,
                                    std::optional<Unit> unit) {
    const Unit shown_in = unit.value_or(Unit::inch);
    const std::string minutes = (read.minute < 10 ? ":0" : ":") + std::to_string(read.minute);
    const std::string clock = std::to_string(read.hour) + minutes;
    std::string hour = read.minute == 0 ? std::to_string(read.hour) + " o'clock" : clock;
    if (weld.length) {
        const Exact share =
            Exact(std::int64_t{read.hour % 12} * 60 + read.minute) / Exact(std::int64_t{12} * 60);
        const Exact along = Exact::whole((share * Exact(weld.length->nm)).rounded());
        hour += " (" + print(along, Dimension::length, shown_in) + " from the datum)";
    }
    const std::string distance =
        unit ? text + " " + std::string(name_of(*unit)) : text + " in, " + text + " mm";
    throw InputError("'" + text + "' on a weld that closes on itself: " + distance + " or " + hour +
                     "? write '" + text + " " + std::string(name_of(shown_in)) + "' or '" + clock + "'");
}

} // namespace

std::size_t behind_clock_word(std::string_view text, std::size_t at) {
    if (at > text.size()) return at;
    std::size_t look = at;
    while (look < text.size() && text[look] == ' ') ++look;
    for (const std::string_view word : {"o'clock", "oclock", "o\u2019clock"}) {
        const std::size_t end = look + word.size();
        if (!same_word(text.substr(look, word.size()), word)) continue;
        if (end == text.size() || !std::isalnum(static_cast<unsigned char>(text[end]))) return end;
    }
    return at;
}

Length circumference(Length od) {
    // pi to 18 digits: the error stays far below a nanometre for any tube under ten kilometres across.
    const Exact pi = Exact::fraction(3'141'592'653'589'793'238, 1'000'000'000'000'000'000);
    return {static_cast<std::int64_t>((pi * Exact(od.nm)).rounded())};
}

Typed parse_place(std::string_view whole_text, const WeldLine &weld, std::optional<Unit> unit) {
    const std::string_view text = trimmed(whole_text);
    std::optional<Exact> share = clock_share(text);
    if (!share) {
        std::size_t at = 0;
        if (const auto number = scan_number(text, at)) {
            const auto word = scan_unit(text, at);
            if (word && word->dimension == Dimension::angle && at == text.size()) {
                share = *number / Exact(360);
                if (*share >= Exact(1)) throw InputError("'" + shown(text) + "' is a full turn or more");
            }
        }
    }
    if (share) {
        if (!weld.closed)
            throw InputError(
                "'" + shown(text) +
                "' is a place round a tube, and nobody said that this weld goes round one (seam: girth); "
                "say that, or give a distance");
        if (!weld.length)
            throw InputError("'" + shown(text) + "' needs the tube's outside diameter or the weld's length");
        return {hour_written(text), Exact::whole((*share * Exact(weld.length->nm)).rounded())};
    }
    if (const auto read = weld.closed ? may_be_an_hour(text) : std::nullopt)
        ask_which_reading(std::string(text), *read, weld, unit);
    Typed place = parse_measured(text, Dimension::length, unit);
    if (weld.length && place.value > Exact(weld.length->nm))
        throw InputError("'" + shown(text) + "' is off the weld, which is " +
                         print(weld.length->nm, Dimension::length,
                               unit_written(place.text).value_or(unit.value_or(Unit::inch))) +
                         " long");
    return place;
}

} // namespace beadbook
