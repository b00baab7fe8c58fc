#include "records/csv.hpp"

#include "measure/refusal.hpp"

#include <algorithm>
#include <csv.h>
#include <string_view>

namespace beadbook {
namespace {

struct Reading {
    std::vector<std::vector<std::string>> rows;
    std::vector<std::string> row;
};

/// The mark that spreadsheets put in front of a file.
constexpr std::string_view file_mark = "\xEF\xBB\xBF";

/// What a spreadsheet takes for a formula and would run, but for a plain number.
bool looks_like_formula(std::string_view cell) {
    if (cell.empty() || std::string_view("=+-@\t\r").find(cell.front()) == std::string_view::npos)
        return false;
    const std::string_view rest = cell.substr(1);
    const bool number = (cell.front() == '-' || cell.front() == '+') && !rest.empty() &&
                        rest.front() != '.' &&
                        rest.find_first_not_of("0123456789.") == std::string_view::npos;
    return !number;
}

/// Behind the quotes that were put in front of it.
std::string_view behind_quotes(std::string_view cell) {
    return cell.substr(std::min(cell.find_first_not_of('\''), cell.size()));
}

void cell_done(void *bytes, std::size_t size, void *data) {
    std::string_view cell(static_cast<const char *>(bytes), size);
    if (cell.starts_with('\'') && looks_like_formula(behind_quotes(cell))) cell.remove_prefix(1);
    static_cast<Reading *>(data)->row.emplace_back(cell);
}

void row_done(int, void *data) {
    auto *reading = static_cast<Reading *>(data);
    reading->rows.push_back(std::move(reading->row));
    reading->row.clear();
}

} // namespace

char csv_delimiter(const std::string &text) {
    const std::string_view first = std::string_view(text).substr(0, text.find('\n'));
    if (first.find(',') != std::string_view::npos) return ',';
    for (const char one : {';', '\t'})
        if (first.find(one) != std::string_view::npos) return one;
    return ',';
}

std::vector<std::vector<std::string>> read_csv(const std::string &text, char delimiter) {
    csv_parser parser;
    if (csv_init(&parser, CSV_STRICT | CSV_STRICT_FINI) != 0) throw std::bad_alloc();
    csv_set_delim(&parser, static_cast<unsigned char>(delimiter));
    Reading reading;
    const std::size_t begin = text.starts_with(file_mark) ? file_mark.size() : 0;
    const std::size_t size = text.size() - begin;
    bool fine = csv_parse(&parser, text.data() + begin, size, cell_done, row_done, &reading) == size;
    fine = csv_fini(&parser, cell_done, row_done, &reading) == 0 && fine;
    csv_free(&parser);
    if (!fine)
        throw DataError("the CSV is broken in row " + std::to_string(reading.rows.size() + 1) +
                        ": a quote is out of place or not closed");
    return std::move(reading.rows);
}

std::string write_csv_row(const std::vector<std::string> &cells) {
    std::string out;
    for (const auto &given : cells) {
        if (!out.empty() || &given != &cells.front()) out += ',';
        // A quote in front makes it text to a spreadsheet; also where there is one, so that reading takes one
        // off.
        const std::string cell = (looks_like_formula(behind_quotes(given)) ? "'" : "") + given;
        const bool plain = cell.find_first_of(",;\t\"\r\n") == std::string::npos &&
                           !cell.starts_with(file_mark) &&
                           (cell.empty() || (cell.front() != ' ' && cell.back() != ' '));
        if (plain) {
            out += cell;
            continue;
        }
        std::string quoted(csv_write(nullptr, 0, cell.data(), cell.size()), '\0');
        csv_write(quoted.data(), quoted.size(), cell.data(), cell.size());
        out += quoted;
    }
    if (out.empty() && !cells.empty()) out = "\"\""; // an empty line is no row
    return out + "\r\n";
}

} // namespace beadbook
