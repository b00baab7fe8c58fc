#pragma once

#include "facts/coupon_state.hpp"

#include <map>
#include <string>
#include <vector>

/// The exchange format as tables of a spreadsheet (records/README.md): the same names as columns, and empty
/// cells for what is absent.
namespace beadbook::codec {

enum class Sheet { coupons, exams, indications };

/// One row of a file, by column.
struct SheetRow {
    std::size_t number = 0;                   ///< in the file, from 1; the first names the columns
    std::string fault;                        ///< why it cannot be read; empty if it can
    std::map<std::string, std::string> cells; ///< that are not empty, or say something by being so

    std::string cell(const std::string &column) const;
};

/// Throws DataError: no CSV, or columns that are unknown, doubled or missing. A row that does not fit has its
/// fault.
std::vector<SheetRow> read_sheet(Sheet sheet, const std::string &text);

// What a row says. They throw Refusal.
std::map<std::string, std::string> coupon_fields_of(const SheetRow &row);
std::vector<std::string> sure_of(const SheetRow &row);
ExamRecord exam_of(const SheetRow &row);
IndicationRecord indication_of(const SheetRow &row, const WeldLine &line, std::optional<Unit> unit);

/// The first row of a table, and the rows of a coupon.
std::string sheet_head(Sheet sheet);
std::string sheet_rows(Sheet sheet, const CouponState &coupon);

} // namespace beadbook::codec
