#include "measure/day.hpp"

#include "measure/parse.hpp"
#include "measure/text.hpp"

#include <cstdio>

namespace beadbook {
namespace {

using namespace std::chrono;

Day shifted(Day day, int by_months, int by_days) {
    const year_month_day from(day);
    const year_month month = year_month{from.year(), from.month()} + months{by_months};
    const year_month_day_last end(month.year(), month_day_last(month.month()));
    return sys_days(month / std::min(from.day(), end.day())) + days{by_days};
}

/// The Monday of a week as it is printed.
Day monday_of(const std::string &week) {
    // The fourth of January lies in the first week of its year.
    const Day fourth = sys_days(year{std::stoi(week.substr(0, 4))} / January / 4);
    return fourth - (weekday(fourth) - Monday) + weeks{std::stoi(week.substr(6)) - 1};
}

} // namespace

Day parse_day(std::string_view given) {
    const std::string text(trimmed(given));
    int y = 0, m = 0, d = 0, used = 0;
    const bool shape = text.size() == 10 &&
                       std::sscanf(text.c_str(), "%4d-%2d-%2d%n", &y, &m, &d, &used) == 3 && used == 10 &&
                       text[4] == '-' && text[7] == '-' &&
                       text.find_first_not_of("0123456789-") == std::string::npos;
    const year_month_day date{year{y}, month{static_cast<unsigned>(m)}, day{static_cast<unsigned>(d)}};
    if (!shape || !date.ok() || y < 1900 || y > 2200)
        throw InputError("'" + shown(text) + "' is no day of the calendar; write it like 2026-11-25");
    return date;
}

std::string print(Day day) {
    const year_month_day date(day);
    char text[16];
    std::snprintf(text, sizeof text, "%04d-%02u-%02u", static_cast<int>(date.year()),
                  static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()));
    return text;
}

std::string print_week(Day day) {
    const Day thursday = day - (weekday(day) - Monday) + days{3};
    const year of = year_month_day(thursday).year();
    const auto week = (thursday - sys_days(of / January / 1)).count() / 7 + 1;
    char text[16];
    std::snprintf(text, sizeof text, "%04d-W%02d", static_cast<int>(of), static_cast<int>(week));
    return text;
}

int weeks_between(const std::string &from, const std::string &to) {
    return static_cast<int>((monday_of(to) - monday_of(from)).count() / 7);
}

Day local_day(std::time_t moment) {
    std::tm parts{};
    localtime_r(&moment, &parts);
    return year{parts.tm_year + 1900} / month{static_cast<unsigned>(parts.tm_mon + 1)} /
           day{static_cast<unsigned>(parts.tm_mday)};
}

Period parse_period(std::string_view given) {
    const auto words = words_of(given);
    const InputError wrong("'" + shown(given) +
                           "' is no period; expected such as 6 months, 2 years or 30 days");
    if (words.size() != 2 || words[0].size() > 4 ||
        words[0].find_first_not_of("0123456789") != std::string_view::npos)
        throw wrong;
    const int number = std::stoi(std::string(words[0]));
    const std::string_view unit = words[1];
    if (number == 0) throw wrong;
    Period out;
    out.text = std::string(words[0]) + " " + std::string(unit);
    if (unit == "month" || unit == "months")
        out.months = number;
    else if (unit == "year" || unit == "years")
        out.months = 12 * number;
    else if (unit == "day" || unit == "days")
        out.days = number;
    else
        throw wrong;
    return out;
}

Day operator+(Day day, const Period &p) { return shifted(day, p.months, p.days); }
Day operator-(Day day, const Period &p) { return shifted(day, -p.months, -p.days); }

} // namespace beadbook
