#include "records/csv.hpp"

#include "measure/refusal.hpp"

#include <csv.h>

namespace beadbook {
namespace {

struct Reading {
    std::vector<std::vector<std::string>> rows;
    std::vector<std::string> row;
};

void cell_done(void *bytes, std::size_t size, void *data) {
    static_cast<Reading *>(data)->row.emplace_back(static_cast<const char *>(bytes), size);
}

void row_done(int, void *data) {
    auto *reading = static_cast<Reading *>(data);
    reading->rows.push_back(std::move(reading->row));
    reading->row.clear();
}

} // namespace

std::vector<std::vector<std::string>> read_csv(const std::string &text) {
    csv_parser parser;
    if (csv_init(&parser, CSV_STRICT | CSV_STRICT_FINI) != 0) throw std::bad_alloc();
    Reading reading;
    const std::size_t begin =
        text.starts_with("\xEF\xBB\xBF") ? 3 : 0; // the mark that spreadsheets put in front
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
    for (const auto &cell : cells) {
        if (!out.empty() || &cell != &cells.front()) out += ',';
        const bool plain = cell.find_first_of(",\"\r\n") == std::string::npos &&
                           (cell.empty() || (cell.front() != ' ' && cell.back() != ' '));
        if (plain) {
            out += cell;
            continue;
        }
        std::string quoted(csv_write(nullptr, 0, cell.data(), cell.size()), '\0');
        csv_write(quoted.data(), quoted.size(), cell.data(), cell.size());
        out += quoted;
    }
    return out + "\r\n";
}

} // namespace beadbook
