#include "records/codecs/sheet.hpp"

#include "facts/log_line_hints.hpp"
#include "measure/text.hpp"
#include "records/codecs/carried.hpp"
#include "records/codecs/facts.hpp"
#include "records/codecs/located.hpp"
#include "records/codecs/typed.hpp"
#include "records/csv.hpp"

#include <algorithm>

namespace beadbook::codec {
namespace {

std::vector<std::string> coupon_columns() {
    std::vector<std::string> out{"coupon"};
    for (const auto &f : coupon_fields()) out.push_back(f.name);
    out.emplace_back("sure");
    out.emplace_back(carried_key);
    return out;
}

std::vector<std::string> indication_columns() {
    std::vector<std::string> out{"coupon", "exam", "number", "type"};
    for (const auto &key : measure_keys()) out.emplace_back(key.word);
    for (const char *name : {"at", "middle", "end", "across", "left"}) out.emplace_back(name);
    for (std::size_t a = 0; a < attribute_count; ++a) out.emplace_back(info(static_cast<Attribute>(a)).name);
    out.emplace_back("remark");
    out.emplace_back("sure");
    return out;
}

const std::vector<std::string> &columns_of(Sheet sheet) {
    static const std::vector<std::string> coupons = coupon_columns();
    static const std::vector<std::string> exams{
        "coupon",      "exam",        "method",       "date",     "examiner",      "level",
        "procedure",   "incomplete",  "note",         "practice", "practice hash", "found",
        "finished on", "finished by", "finished why", "sure",     "conditions",    "equipment"};
    static const std::vector<std::string> indications = indication_columns();
    return sheet == Sheet::coupons ? coupons : sheet == Sheet::exams ? exams : indications;
}

/// Columns that a table cannot be without.
std::vector<std::string> needed_columns(Sheet sheet) {
    if (sheet == Sheet::coupons) return {"coupon"};
    if (sheet == Sheet::exams) return {"coupon", "exam", "method", "date"};
    return {"coupon", "exam", "type"};
}

/// The nearest column, or all that there are.
std::string what_instead(const std::string &name, const std::vector<std::string> &known) {
    if (name.find_first_of(";\t") != std::string::npos) return "; columns are parted by commas";
    const std::string near = did_you_mean(name, known);
    return near.empty() ? "; expected " + listed(known, "or") : near;
}

void check_head(Sheet sheet, const std::vector<std::string> &head) {
    const auto &known = columns_of(sheet);
    for (const auto &name : head) {
        if (std::find(known.begin(), known.end(), name) == known.end())
            throw DataError("row 1: unknown column '" + shown(name) + "'" + what_instead(name, known));
        if (std::count(head.begin(), head.end(), name) > 1)
            throw DataError("row 1: column '" + name + "' stands twice");
    }
    for (const auto &name : needed_columns(sheet))
        if (std::find(head.begin(), head.end(), name) == head.end())
            throw DataError("row 1: there is no column '" + name + "'");
}

/// Where nothing stands there, nobody finished the exam; without the column it was the examiner.
constexpr const char *who_finished = "finished by";

int whole_in(const SheetRow &row, const std::string &column) {
    const std::string cell = row.cell(column);
    const bool digits =
        cell.size() < 8 && std::all_of(cell.begin(), cell.end(), [](char c) { return c >= '0' && c <= '9'; });
    const int value = digits && !cell.empty() ? std::stoi(cell) : 0;
    if (value == 0 && !cell.empty())
        throw DataError(column + ": '" + shown(cell) + "'; expected a whole number from 1");
    return value;
}

/// As the cell stands in the file, where quotes within quotes are doubled.
constexpr const char *how_conditions_are_written =
    R"(; expected names and values in braces, in the file the cell "{""light"": ""1000 lx""}")";

/// How many an exam found: a number, or a word for none.
int found_in(const SheetRow &row) {
    const std::string cell = row.cell("found");
    if (cell == "0" || says_none(cell)) return 0;
    try {
        return whole_in(row, "found");
    } catch (const DataError &) {
        throw DataError("found: '" + shown(cell) +
                        "'; expected how many the exam found, 0 or none; an empty cell leaves it open");
    }
}

/// Conditions have free names, so they are one cell of JSON.
std::map<std::string, std::string> conditions_in(const std::string &cell) {
    std::map<std::string, std::string> out;
    if (cell.empty()) return out;
    const Located conditions = [&] {
        try {
            return read_located(cell);
        } catch (const Refusal &) {
            throw DataError("found '" + shown(cell) + "', which is no JSON" + how_conditions_are_written);
        }
    }();
    if (conditions.kind != Located::Kind::object)
        throw DataError("found " + conditions.said() + how_conditions_are_written);
    for (const auto &item : conditions.items) {
        if (item.key_given_twice) throw DataError("'" + shown(item.key) + "' stands twice");
        if (item.kind != Located::Kind::text)
            throw DataError(shown(item.key) + ": expected text, found " + item.said());
        out.emplace(checked_text(item.key, "condition"), checked_text(item.text, item.key));
    }
    return out;
}

/// As the export writes it, or serial numbers with semicolons between.
nlohmann::json equipment_in(const std::string &cell) {
    if (cell.starts_with("[")) try {
            read_located(cell); // not nested deeper than what is printed again
            return nlohmann::json::parse(cell);
        } catch (const Refusal &) {
            throw DataError("equipment: '" + shown(cell) + "'; expected serial numbers with ; between");
        }
    nlohmann::json out = nlohmann::json::array();
    for (std::size_t begin = 0; begin < cell.size();) {
        const std::size_t end = std::min(cell.find(';', begin), cell.size());
        out.push_back(std::string(trimmed(std::string_view(cell).substr(begin, end - begin))));
        begin = end + 1;
    }
    return out;
}

/// A cell of a JSON record: the typed text of a measurement, the word or number itself.
std::string cell_of(const nlohmann::json &json, const std::string &key) {
    const auto found = json.find(key);
    if (found == json.end()) return "";
    if (found->is_object()) return found->at("typed").get<std::string>();
    if (found->is_array()) { // rules that were set aside
        std::string words;
        for (const auto &word : *found) words += (words.empty() ? "" : " ") + word.get<std::string>();
        return words;
    }
    return found->is_string()    ? found->get<std::string>()
           : found->is_boolean() ? (found->get<bool>() ? "yes" : "")
                                 : found->dump();
}

} // namespace

std::string SheetRow::cell(const std::string &column) const {
    const auto found = cells.find(column);
    return found == cells.end() ? "" : found->second;
}

std::vector<SheetRow> read_sheet(Sheet sheet, const std::string &text) {
    auto rows = read_csv(text);
    if (rows.empty()) throw DataError("the CSV is empty; its first row names the columns");
    const std::vector<std::string> head = std::move(rows.front());
    check_head(sheet, head);
    std::vector<SheetRow> out;
    for (std::size_t r = 1; r < rows.size(); ++r) {
        if (rows[r].size() == 1 && rows[r].front().empty()) continue;
        SheetRow &row = out.emplace_back();
        row.number = r + 1;
        if (rows[r].size() != head.size()) {
            row.fault = "has " + counted(rows[r].size(), "cell") + ", the first row has " +
                        std::to_string(head.size());
            continue;
        }
        for (std::size_t c = 0; c < head.size(); ++c)
            if (!rows[r][c].empty() || head[c] == who_finished)
                row.cells.emplace(head[c], std::move(rows[r][c]));
        if (row.cell("coupon").empty()) row.fault = "the row names no coupon";
    }
    return out;
}

std::map<std::string, std::string> coupon_fields_of(const SheetRow &row) {
    auto out = row.cells;
    out.erase("coupon");
    out.erase("sure");
    out.erase(carried_key);
    return out;
}

std::vector<std::string> sure_of(const SheetRow &row) {
    std::vector<std::string> out;
    const std::string cell = row.cell("sure");
    for (const auto word : words_of(cell)) out.emplace_back(word);
    return out;
}

ExamRecord exam_of(const SheetRow &row) {
    nlohmann::json json = nlohmann::json::object();
    for (const auto &[column, cell] : row.cells)
        if (column != "coupon" && column != "exam" && column != "found" && column != "conditions" &&
            column != "sure" && column != "equipment")
            json[column] = cell;
    json["sure"] = sure_of(row);
    if (const std::string cell = row.cell("equipment"); !cell.empty()) json["equipment"] = equipment_in(cell);
    const int number = whole_in(row, "exam");
    if (number == 0) throw DataError("the row has no exam number");
    json["number"] = number;
    if (!row.cell("found").empty()) json["found"] = found_in(row);
    ExamRecord out = exam_from(json);
    try {
        out.conditions = conditions_in(row.cell("conditions"));
    } catch (const DataError &e) {
        throw DataError(std::string("conditions: ") + e.what());
    }
    return out;
}

IndicationRecord indication_of(const SheetRow &row, const WeldLine &line, std::optional<Unit> unit) {
    nlohmann::json json = nlohmann::json::object();
    for (const auto &[column, cell] : row.cells) {
        if (column == "coupon" || column == "sure") continue;
        if (column == "left") {
            if (cell != "yes") throw DataError("left: '" + shown(cell) + "'; expected yes or nothing");
            json["left"] = true;
        } else if (column == "number" || column == "exam") {
            json[column] = whole_in(row, column);
        } else {
            json[column] = cell;
        }
    }
    json["sure"] = sure_of(row);
    IndicationRecord out = indication_from(json, line, unit);
    check_place_said(out);
    return out;
}

std::string sheet_head(Sheet sheet) { return write_csv_row(columns_of(sheet)); }

std::string sheet_rows(Sheet sheet, const CouponState &c) {
    std::string out;
    if (sheet == Sheet::coupons) {
        std::vector<std::string> row{c.record.id};
        for (const auto &f : coupon_fields()) row.push_back(c.record.get(f.name));
        row.push_back(cell_of(json_of(c.record), "sure"));
        row.push_back(carried_cell(c.record.before));
        return write_csv_row(row);
    }
    const auto &columns = columns_of(sheet);
    const auto add = [&](const nlohmann::json &json) {
        std::vector<std::string> row{c.record.id};
        for (std::size_t k = 1; k < columns.size(); ++k) row.push_back(cell_of(json, columns[k]));
        out += write_csv_row(row);
    };
    if (sheet == Sheet::indications)
        for (const auto &i : c.indications) add(json_of(i));
    else
        for (const auto &e : c.exams) {
            nlohmann::json json = json_of(e);
            json["exam"] = e.number;
            if (!e.conditions.empty()) json["conditions"] = nlohmann::json(e.conditions).dump();
            if (!e.equipment.empty()) json["equipment"] = json["equipment"].dump();
            add(json);
        }
    return out;
}

} // namespace beadbook::codec
