#pragma once

#include <chrono>
#include <ctime>
#include <string>
#include <string_view>

namespace beadbook {

/// A day of the calendar, without a time zone: the day that people write on the form.
using Day = std::chrono::sys_days;

/// 2026-11-25; the years 1900 to 2200. Throws InputError: not a day of the calendar (2026-02-30).
Day parse_day(std::string_view text);
std::string print(Day day);

/// 2026-W48: the week by ISO 8601, which begins on Monday and belongs to the year of its Thursday.
std::string print_week(Day day);
/// How many weeks lie between two that print_week printed: 1 from 2026-W53 to 2027-W01.
int weeks_between(const std::string &from, const std::string &to);

/// The calendar day of a moment where this computer is (its TZ).
Day local_day(std::time_t moment);

/// A stretch of calendar time as standards write it: 6 months, 3 years, 90 days.
struct Period {
    int months = 0;
    int days = 0;
    std::string text; ///< as written
};

/// `6 months`, `2 years`, `30 days`. Throws InputError.
Period parse_period(std::string_view text);

/// The same day of a later month; where that month is shorter, its last day: 2026-08-31 + 6 months is
/// 2027-02-28. A period that begins on a day is kept through that day of the end, and over on the next.
Day operator+(Day day, const Period &period);
Day operator-(Day day, const Period &period);

} // namespace beadbook
