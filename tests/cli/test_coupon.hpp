#pragma once

#include "run.hpp"

#include <map>

namespace beadbook::test {

/// A coupon of welder L1, a girth weld by GTAW in 6G that its criteria accept, examined with VT, MT and RT on
/// the day it was welded, and graded. `more` gives other options of 'register', or the same otherwise.
inline void test_coupon(const Program &run, const std::string &id, const std::string &welded,
                        const std::string &grade = "passed",
                        const std::map<std::string, std::string> &more = {}) {
    std::map<std::string, std::string> given{
        {"--criteria", "asme-ix-tests"}, {"--class", "test coupon"}, {"--welder", "L1"},
        {"--joint", "groove"},           {"--form", "tube"},         {"--seam", "girth"},
        {"--diameter", "2.5in"},         {"--thickness", "0.15in"},  {"--weld-thickness", "0.15in"},
        {"--magnetic", "yes"},           {"--material", "steel"},    {"--welded", welded},
        {"--process", "GTAW"},           {"--position", "6G"},       {"--metal-group", "P1"},
        {"--filler-group", "F6"},        {"--backing", "without"},   {"--progression", "up"}};
    for (const auto &[option, value] : more) given[option] = value;
    const std::string today = "2026-11-25"; // an examination is never to come
    std::vector<std::string> words{"register", id};
    // A weld of tomorrow is said only afterwards: nobody examines it before it is there.
    const bool to_come = welded > today;
    if (to_come) given.erase("--welded");
    for (const auto &[option, value] : given) words.insert(words.end(), {option, value});
    run.ok(words);
    for (const char *exam : {"VT", "MT", "RT"})
        run.ok({"exam", id, exam, "--examiner", "A. Field", "--level", "II", "--found", "none", "--date",
                std::min(welded, today)});
    std::vector<std::string> graded{"grade", id, grade};
    if (grade == "failed") graded.insert(graded.end(), {"--remark", "bends opened"});
    run.ok(graded);
    if (to_come) run.ok({"change", id, "--welded", welded, "--why", "a slip"});
}

} // namespace beadbook::test
