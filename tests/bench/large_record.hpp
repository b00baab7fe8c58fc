#pragma once

#include <string>

namespace beadbook::bench {

/// Runs the program with the words as a shell reads them, its output thrown away; false if it failed.
bool program(const std::string &words);

/// Fills the record that BEADBOOK_BOOK names with C-1..C-n, by the program's own exchange format: coupons of
/// one class, each with exams and so many finds, written out as lines, multiplied and imported some at a
/// time. Welders L0..L499, cohorts class-0..class-39; every fourth coupon still waits for exams. Prints why,
/// and is false, if it failed.
bool fill_record(const std::string &folder, int coupons, int finds_each = 1);

} // namespace beadbook::bench
