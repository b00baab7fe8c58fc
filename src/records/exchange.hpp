#pragma once

#include "records/book.hpp"

namespace beadbook {

/// What was measured, in a form that other programs read and that can be read back unchanged: coupons, exams
/// and indications as they stand. Verdicts are derived again; grades and history stay with the record.
nlohmann::json exchange_json(const CouponState &coupon);
nlohmann::json exchange_json(Book &book);

/// Which table of a spreadsheet.
enum class Sheet { coupons, exams, indications };
std::string exchange_csv(Book &book, Sheet sheet);

/// Takes everything or nothing; must run inside a transaction. Names every bad coupon or row (at most 20).
/// Returns what was taken, in words. Throws DataError.
std::string import_json(Book &book, const std::string &text, const Stamp &stamp);
std::string import_csv(Book &book, Sheet sheet, const std::string &text, const Stamp &stamp);

} // namespace beadbook
