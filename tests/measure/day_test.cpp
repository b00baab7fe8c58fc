#include "catch.hpp"
#include "measure/day.hpp"
#include "measure/parse.hpp"

#include <cstdlib>

using namespace beadbook;

namespace {

std::string after(const std::string &day, const std::string &period) {
    return print(parse_day(day) + parse_period(period));
}

/// Sets the time zone while it lives.
class Zone {
public:
    explicit Zone(const char *name) {
        setenv("TZ", name, 1);
        tzset();
    }
    ~Zone() {
        unsetenv("TZ");
        tzset();
    }
    Zone(const Zone &) = delete;
    Zone &operator=(const Zone &) = delete;
};

} // namespace

TEST_CASE("a month later is the same day, or the last one of a shorter month") {
    CHECK(after("2026-08-31", "6 months") == "2027-02-28");
    CHECK(after("2023-08-31", "6 months") == "2024-02-29");
    CHECK(after("2026-08-30", "6 months") == "2027-02-28");
    CHECK(after("2026-03-31", "1 month") == "2026-04-30");
    CHECK(after("2026-11-25", "2 years") == "2028-11-25");
    CHECK(after("2024-02-29", "1 year") == "2025-02-28");
    CHECK(after("2024-02-29", "4 years") == "2028-02-29");
    CHECK(after("2026-12-31", "2 months") == "2027-02-28");
    CHECK(after("2026-11-25", "40 days") == "2027-01-04");
    CHECK(print(parse_day("2025-02-28") - parse_period("6 months")) == "2024-08-28");
    CHECK(print(parse_day("2026-01-31") - parse_period("2 months")) == "2025-11-30");
}

TEST_CASE("days and periods that are none are refused") {
    for (const char *bad : {"2026-02-30", "2025-02-29", "2026-13-01", "2026-1-1", "26-01-01", "tomorrow", "",
                            "2026-11-25x", "2026-11- 5", "2026-+1-05", "1899-12-31", "2201-01-01"})
        CHECK_THROWS_AS(parse_day(bad), InputError);
    for (const char *bad :
         {"6", "months", "0 months", "-6 months", "6 moons", "six months", "6 months more", "99999 days", ""})
        CHECK_THROWS_AS(parse_period(bad), InputError);
    CHECK(print(parse_day(" 2024-02-29 ")) == "2024-02-29");
}

TEST_CASE("today is the day of the place, not of Greenwich") {
    const std::time_t moment = 1'795'649'400; // 2026-11-25T23:30:00Z
    {
        const Zone zone("UTC0");
        CHECK(print(local_day(moment)) == "2026-11-25");
    }
    {
        const Zone zone("EAST-2"); // two hours ahead of UTC
        CHECK(print(local_day(moment)) == "2026-11-26");
    }
    {
        const Zone zone("WEST+9");
        CHECK(print(local_day(moment)) == "2026-11-25");
        CHECK(print(local_day(moment - 16 * 3600)) == "2026-11-24");
    }
}

TEST_CASE("a week belongs to the year of its Thursday") {
    // ISO 8601, from memory: weeks begin on Monday, 2020 and 2026 have 53.
    for (const auto &[day, week] : {std::pair{"2026-11-25", "2026-W48"},
                                    {"2026-11-23", "2026-W48"},
                                    {"2026-11-22", "2026-W47"},
                                    {"2021-01-03", "2020-W53"},
                                    {"2021-01-04", "2021-W01"},
                                    {"2024-12-30", "2025-W01"},
                                    {"2024-12-29", "2024-W52"},
                                    {"2026-01-01", "2026-W01"},
                                    {"2027-01-01", "2026-W53"},
                                    {"1900-01-01", "1900-W01"}})
        CHECK(print_week(parse_day(day)) == week);
}

TEST_CASE("weeks between two weeks, over the end of a year of 52 and of 53") {
    CHECK(weeks_between("2026-W48", "2026-W48") == 0);
    CHECK(weeks_between("2026-W53", "2027-W01") == 1);
    CHECK(weeks_between("2025-W52", "2026-W01") == 1);
    CHECK(weeks_between("2026-W10", "2026-W36") == 26);
    CHECK(weeks_between("2027-W01", "2026-W53") == -1);
    for (Day day = parse_day("2019-12-20"); day < parse_day("2028-01-20"); day += std::chrono::days{1})
        REQUIRE(weeks_between(print_week(day), print_week(day + std::chrono::days{21})) == 3);
}
