#pragma once

#include "operations/selecting.hpp"

#include <string>

namespace beadbook {

/// What was worked out, as tables for a spreadsheet: numbers without their unit, which has a column of its
/// own. They cannot be imported: a verdict is worked out anew, never taken.
enum class ResultTable : std::uint8_t { verdicts, findings, grades };

/// The first row of a table. All columns of findings and verdicts stand in records/README.md.
std::string csv_head(ResultTable table);
/// The rows of a coupon: a class each, a finding of a class each, or its grade. A withdrawn one has a row
/// that says so among the verdicts, and its grade. Throws StoreError.
std::string csv_rows(ResultTable table, CouponAtHand &coupon);

} // namespace beadbook
