#include "records/exchange.hpp"

#include "measure/text.hpp"
#include "records/csv.hpp"

#include <algorithm>
#include <functional>

namespace beadbook {
namespace {

constexpr int exchange_version = 1;

/// Collects the mistakes of a file, so that one run shows them all.
class Faults {
public:
    template <class F>
    void guard(const std::string &where, F f) {
        try {
            f();
        } catch (const DataError &e) {
            add(where, e.what());
        } catch (const InputError &e) {
            add(where, e.what());
        }
    }
    void check(std::string_view what) const {
        if (count_ == 0) return;
        const std::string rest = count_ > 20 ? "\nand " + std::to_string(count_ - 20) + " more" : "";
        throw DataError(std::to_string(count_) + " " + std::string(what) + (count_ == 1 ? "" : "s") +
                        " cannot be taken, nothing was stored:" + text_ + rest);
    }

private:
    void add(const std::string &where, const std::string &what) {
        if (++count_ <= 20) text_ += "\n" + where + ": " + what;
    }
    std::string text_;
    int count_ = 0;
};

const std::vector<std::string> &exam_columns() {
    static const std::vector<std::string> c{"coupon",   "exam",     "method",        "date",
                                            "examiner", "level",    "procedure",     "incomplete",
                                            "note",     "practice", "practice hash", "conditions"};
    return c;
}

const std::vector<std::string> &indication_columns() {
    static const std::vector<std::string> c = [] {
        std::vector<std::string> out{"coupon", "exam", "number", "type"};
        for (const auto &key : measure_keys()) out.emplace_back(key.word);
        for (const char *name : {"at", "middle", "end", "across", "left"}) out.emplace_back(name);
        for (std::size_t a = 0; a < attribute_count; ++a)
            out.emplace_back(info(static_cast<Attribute>(a)).name);
        out.emplace_back("remark");
        return out;
    }();
    return c;
}

std::vector<std::string> coupon_columns() {
    std::vector<std::string> out{"coupon"};
    for (const auto &f : coupon_fields()) out.push_back(f.name);
    return out;
}

std::vector<std::string> columns_of(Sheet sheet) {
    return sheet == Sheet::coupons ? coupon_columns()
           : sheet == Sheet::exams ? exam_columns()
                                   : indication_columns();
}

/// A cell of a JSON record: the typed text of a measurement, the word or number itself.
std::string cell(const nlohmann::json &json, const std::string &key) {
    if (!json.contains(key)) return "";
    const auto &value = json[key];
    if (value.is_object() && value.contains("typed")) return value["typed"].get<std::string>();
    return value.is_string()    ? value.get<std::string>()
           : value.is_boolean() ? (value.get<bool>() ? "yes" : "")
                                : value.dump();
}

std::vector<std::string> exam_row(const std::string &coupon, const ExamRecord &e) {
    const nlohmann::json json = e.to_json();
    std::vector<std::string> row{coupon, std::to_string(e.number)};
    for (std::size_t i = 2; i + 1 < exam_columns().size(); ++i) row.push_back(cell(json, exam_columns()[i]));
    // Conditions have free names, so they stay one cell of JSON.
    row.push_back(e.conditions.empty() ? "" : nlohmann::json(e.conditions).dump());
    return row;
}

std::vector<std::string> indication_row(const std::string &coupon, const IndicationRecord &i) {
    const nlohmann::json json = i.to_json();
    std::vector<std::string> row{coupon};
    for (std::size_t k = 1; k < indication_columns().size(); ++k)
        row.push_back(cell(json, indication_columns()[k]));
    return row;
}

/// A row as a JSON record: empty cells are absent, whole numbers where the record has numbers.
nlohmann::json row_json(const std::vector<std::string> &columns, const std::vector<std::string> &row) {
    nlohmann::json out = nlohmann::json::object();
    for (std::size_t i = 0; i < columns.size(); ++i) {
        if (row[i].empty()) continue;
        if (columns[i] == "left") {
            if (row[i] != "yes") throw DataError("left: '" + shown(row[i]) + "'; expected yes or nothing");
            out["left"] = true;
        } else if (columns[i] == "number" || columns[i] == "exam") {
            const bool digits = row[i].size() < 8 && std::all_of(row[i].begin(), row[i].end(),
                                                                 [](char c) { return c >= '0' && c <= '9'; });
            if (!digits) throw DataError(columns[i] + ": '" + shown(row[i]) + "'; expected a whole number");
            out[columns[i]] = std::stoi(row[i]);
        } else if (columns[i] == "conditions") {
            out["conditions"] = nlohmann::json::parse(row[i], nullptr, false);
        } else {
            out[columns[i]] = row[i];
        }
    }
    return out;
}

void take_coupon(Book &book, const nlohmann::json &json, const Stamp &stamp) {
    const CouponRecord coupon = CouponRecord::from_json(json);
    book.register_coupon(coupon, stamp);
    const Coupon facts = coupon.facts();
    for (const auto &exam_json : json.value("exams", nlohmann::json::array())) {
        const int exam = book.add_exam(coupon.id, ExamRecord::from_json(exam_json), stamp);
        std::vector<IndicationRecord> found;
        for (const auto &one : exam_json.value("indications", nlohmann::json::array()))
            found.push_back(IndicationRecord::from_json(one, facts.line, coupon.unit()));
        book.add_indications(coupon.id, exam, std::move(found), stamp);
    }
}

void take_row(Book &book, Sheet sheet, const nlohmann::json &row, const Stamp &stamp) {
    const std::string coupon = row.value("coupon", "");
    if (coupon.empty()) throw DataError("the row names no coupon");
    if (sheet == Sheet::coupons) {
        nlohmann::json fields = row;
        fields.erase("coupon");
        book.register_coupon(CouponRecord::from_json({{"id", coupon}, {"fields", fields}}), stamp);
        return;
    }
    if (!row.contains("exam")) throw DataError("the row has no exam number");
    nlohmann::json body = row;
    body.erase("coupon");
    if (sheet == Sheet::exams) {
        body["number"] = body["exam"];
        body.erase("exam");
        const ExamRecord exam = ExamRecord::from_json(body);
        if (book.coupon(coupon).last_exam >= exam.number)
            throw DataError("coupon " + coupon + " has used exam number " + std::to_string(exam.number) +
                            " already");
        book.add_exam(coupon, exam, stamp);
    } else {
        const CouponState state = book.coupon(coupon);
        const auto i = IndicationRecord::from_json(body, state.record.facts().line, state.record.unit());
        if (i.number > 0 && state.last_indication >= i.number)
            throw DataError("coupon " + coupon + " has used indication number " + std::to_string(i.number) +
                            " already");
        book.add_indications(coupon, i.exam, {i}, stamp);
    }
}

} // namespace

nlohmann::json exchange_json(const CouponState &c) {
    nlohmann::json out = c.record.to_json();
    out["exams"] = nlohmann::json::array();
    for (const auto &e : c.exams) {
        nlohmann::json exam = e.to_json();
        exam["indications"] = nlohmann::json::array();
        for (const auto &i : c.indications)
            if (i.exam == e.number) exam["indications"].push_back(i.to_json());
        out["exams"].push_back(std::move(exam));
    }
    return out;
}

nlohmann::json exchange_json(Book &book) {
    nlohmann::json coupons = nlohmann::json::array();
    for (const auto &id : book.coupons()) coupons.push_back(exchange_json(book.coupon(id)));
    return {{"format", "beadbook exchange"}, {"version", exchange_version}, {"coupons", coupons}};
}

std::string exchange_csv(Book &book, Sheet sheet) {
    const auto columns = columns_of(sheet);
    std::string out = write_csv_row(columns);
    for (const auto &id : book.coupons()) {
        const CouponState c = book.coupon(id);
        if (sheet == Sheet::coupons) {
            std::vector<std::string> row{id};
            for (const auto &f : coupon_fields()) row.push_back(c.record.get(f.name));
            out += write_csv_row(row);
        } else if (sheet == Sheet::exams) {
            for (const auto &e : c.exams) out += write_csv_row(exam_row(id, e));
        } else {
            for (const auto &i : c.indications) out += write_csv_row(indication_row(id, i));
        }
    }
    return out;
}

std::string import_json(Book &book, const std::string &text, const Stamp &stamp) {
    nlohmann::json root;
    try {
        root = nlohmann::json::parse(text);
    } catch (const nlohmann::json::exception &e) { // also a number that no double holds
        throw DataError(std::string("this is not JSON: ") + e.what());
    }
    if (!root.is_object() || root.value("format", "") != "beadbook exchange" || !root.contains("coupons") ||
        !root["coupons"].is_array())
        throw DataError("expected {\"format\": \"beadbook exchange\", \"version\": 1, \"coupons\": [...]}");
    if (root.value("version", 0) != exchange_version)
        throw DataError("this program reads version 1 of the exchange format");
    Faults faults;
    std::size_t count = 0;
    for (const auto &coupon : root["coupons"]) {
        const std::string id = coupon.is_object() && coupon.contains("id") && coupon["id"].is_string()
                                   ? coupon["id"].get<std::string>()
                                   : "?";
        const std::string where = "coupon " + std::to_string(++count) + " (" + shown(id) + ")";
        faults.guard(where, [&] {
            try {
                take_coupon(book, coupon, stamp);
            } catch (const nlohmann::json::exception &e) {
                throw DataError(std::string("a value is of the wrong kind: ") + e.what());
            }
        });
    }
    faults.check("coupon");
    return std::to_string(count) + (count == 1 ? " coupon" : " coupons");
}

std::string import_csv(Book &book, Sheet sheet, const std::string &text, const Stamp &stamp) {
    const auto rows = read_csv(text);
    if (rows.empty()) throw DataError("the CSV is empty; its first row names the columns");
    const auto known = columns_of(sheet);
    const auto &header = rows.front();
    for (const auto &name : header) {
        if (std::find(known.begin(), known.end(), name) == known.end())
            throw DataError("row 1: unknown column '" + shown(name) + "'" + did_you_mean(name, known));
        if (std::count(header.begin(), header.end(), name) > 1)
            throw DataError("row 1: column '" + name + "' stands twice");
    }
    Faults faults;
    std::size_t taken = 0;
    for (std::size_t r = 1; r < rows.size(); ++r) {
        if (rows[r].size() == 1 && rows[r][0].empty()) continue;
        faults.guard("row " + std::to_string(r + 1), [&] {
            if (rows[r].size() != header.size())
                throw DataError("has " + std::to_string(rows[r].size()) + " cells, the first row has " +
                                std::to_string(header.size()));
            take_row(book, sheet, row_json(header, rows[r]), stamp);
            ++taken;
        });
    }
    faults.check("row");
    return std::to_string(taken) + (taken == 1 ? " row" : " rows");
}

} // namespace beadbook
