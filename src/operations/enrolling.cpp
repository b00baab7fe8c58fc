#include "operations/enrolling.hpp"

#include "measure/text.hpp"
#include "operations/faults.hpp"
#include "operations/welder_meant.hpp"
#include "records/csv.hpp"

#include <algorithm>

namespace beadbook {
namespace {

const std::vector<std::string> table_columns{"mark", "name", "employer", "note"};

std::vector<std::string> checked_head(const std::vector<std::string> &row, const std::string &file) {
    std::vector<std::string> head;
    for (const auto &cell : row) {
        std::string column = word_among(trimmed(cell), table_columns);
        if (column.empty())
            throw refused(file + ": row 1: unknown column '" + shown(trimmed(cell)) + "'; expected " +
                          listed(table_columns, "or") +
                          did_you_mean(std::string(trimmed(cell)), table_columns));
        if (std::find(head.begin(), head.end(), column) != head.end())
            throw refused(file + ": row 1: column '" + column + "' stands twice");
        head.push_back(std::move(column));
    }
    if (std::find(head.begin(), head.end(), "mark") == head.end())
        throw refused(file + ": row 1: there is no column 'mark'");
    return head;
}

WelderRequest welder_in(const std::vector<std::string> &head, const std::vector<std::string> &row) {
    if (row.size() > head.size())
        throw refused(counted(row.size(), "cell") + ", and " + counted(head.size(), "column") +
                      "; a comma inside a cell needs quotes");
    WelderRequest out;
    for (std::size_t i = 0; i < row.size(); ++i) {
        const std::string cell(trimmed(row[i]));
        if (head[i] == "mark") out.mark = cell;
        if (cell.empty()) continue;
        if (head[i] == "name") out.name = cell;
        if (head[i] == "employer") out.employer = cell;
        if (head[i] == "note") out.note = cell;
    }
    if (out.mark.empty()) throw refused("there is no mark");
    return out;
}

bool is_blank(const std::vector<std::string> &row) {
    return std::all_of(row.begin(), row.end(), [](const auto &cell) { return trimmed(cell).empty(); });
}

} // namespace

Done<std::vector<WelderRecord>> enrol_all(Writing &writing, const WelderTable &table) {
    const char delimiter = csv_delimiter(table.text);
    const auto rows = read_csv(table.text, delimiter);
    if (rows.empty()) throw refused(table.name + ": it is empty; the first row names the columns");
    const auto head = checked_head(rows.front(), table.name);
    Done<std::vector<WelderRecord>> out;
    if (delimiter != ',')
        out.notes.push_back(table.name + ": its cells are read as parted by " +
                            (delimiter == ';' ? "semicolons" : "tabs"));
    Faults faults(rows.size());
    WeldersMeant enrolled(writing.book());
    for (std::size_t i = 1; i < rows.size(); ++i) {
        if (is_blank(rows[i])) continue;
        try {
            WelderRequest request = welder_in(head, rows[i]);
            request.sure = table.sure;
            check_welder_mark(request.mark);
            const auto same = [&](const WelderRecord &one) { return one.mark == request.mark; };
            if (std::any_of(out.value.begin(), out.value.end(), same))
                throw refused("welder " + request.mark + " stands above already");
            if (writing.book().knows_welder(request.mark))
                throw refused("welder " + request.mark + " is registered already; leave the row out");
            out.value.push_back(enrol(writing, request, enrolled).value);
        } catch (const Refusal &e) {
            if (e.kind() == Refusal::Kind::record) throw;
            faults.add([&] { return table.name + ": row " + std::to_string(i + 1); }, e.what(),
                       e.missing() ? e.field() : "");
        }
    }
    faults.check(counted(faults.count(), "row"));
    if (out.value.empty()) throw refused(table.name + ": there is no welder below the first row");
    return out;
}

} // namespace beadbook
