#pragma once

#include "measure/day.hpp"
#include "records/entry.hpp"

#include <optional>
#include <set>
#include <string>
#include <vector>

namespace beadbook {

/// When it was seen that a test had failed: the day of an examination, and the entry that said first what it
/// found. On one day the entries tell what came first.
struct FailureSeen {
    Day day{};
    std::int64_t entry = 0;
};

/// By the first of these exams that was put on record, or of all by these methods where none is named; its
/// latest day that was ever told, since what is entered or said otherwise later moves nothing back to before
/// a retest. Nothing if there is none.
std::optional<FailureSeen> failure_seen(const std::vector<Entry> &history, const std::set<int> &exams,
                                        const std::vector<std::string> &methods);

/// The entry that first told on which day a coupon was welded; 0: none.
std::int64_t weld_day_told(const std::vector<Entry> &history);

} // namespace beadbook
