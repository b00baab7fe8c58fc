#pragma once

#include <string>
#include <vector>

namespace beadbook {

/// RFC 4180, through libcsv: quotes, doubled quotes, line breaks inside quotes, CRLF or LF.
/// Throws DataError for a quote that is out of place or not closed.
std::vector<std::vector<std::string>> read_csv(const std::string &text, char delimiter = ',');

/// What parts the cells of the first line: a semicolon or a tab where it holds such and no comma, as
/// spreadsheets of many countries write them; else a comma.
char csv_delimiter(const std::string &text);

/// A cell that a spreadsheet would run as a formula (it begins with = + - @, and is no plain number) gets a
/// quote (') in front, which read_csv takes off again.
std::string write_csv_row(const std::vector<std::string> &cells);

} // namespace beadbook
