#include "records/exam_record.hpp"

#include "measure/text.hpp"

#include <chrono>
#include <cstdio>

namespace beadbook {
namespace {

constexpr std::pair<const char *, std::string ExamRecord::*> texts[] = {
    {"examiner", &ExamRecord::examiner},
    {"level", &ExamRecord::level},
    {"procedure", &ExamRecord::procedure},
    {"note", &ExamRecord::note},
    {"incomplete", &ExamRecord::incomplete}};

std::string text_of(const nlohmann::json &json, const char *key) {
    if (!json.contains(key)) return "";
    if (!json[key].is_string()) throw DataError(std::string("exam: \"") + key + "\" is not text");
    return checked_text(json[key].get<std::string>(), key);
}

} // namespace

std::string checked_date(std::string_view given) {
    const std::string text(trimmed(given));
    int year = 0, month = 0, day = 0, used = 0;
    const bool shape = text.size() == 10 &&
                       std::sscanf(text.c_str(), "%4d-%2d-%2d%n", &year, &month, &day, &used) == 3 &&
                       used == 10 && text[4] == '-' && text[7] == '-';
    using namespace std::chrono;
    const year_month_day date{std::chrono::year{year}, std::chrono::month{static_cast<unsigned>(month)},
                              std::chrono::day{static_cast<unsigned>(day)}};
    if (!shape || !date.ok() || year < 1900 || year > 2200)
        throw DataError("'" + shown(text) + "' is no day of the calendar; write it like 2026-11-25");
    return text;
}

void add_condition(ExamRecord &exam, const std::string &text) {
    const std::size_t equals = text.find('=');
    const std::string name = checked_text(text.substr(0, equals), "condition");
    if (equals == std::string::npos || name.empty())
        throw DataError("condition '" + shown(text) + "': write it as name=value, e.g. \"light=1000 lx\"");
    const std::string value = checked_text(text.substr(equals + 1), name);
    if (value.empty()) throw DataError("condition " + name + ": nothing given");
    if (!exam.conditions.emplace(name, value).second)
        throw DataError("condition " + name + " is given twice");
}

nlohmann::json ExamRecord::to_json() const {
    nlohmann::json out{{"number", number}, {"method", name_of(method)}, {"date", date}};
    for (const auto &[key, member] : texts)
        if (!(this->*member).empty()) out[key] = this->*member;
    if (!conditions.empty()) out["conditions"] = conditions;
    return out;
}

ExamRecord ExamRecord::from_json(const nlohmann::json &json) {
    if (!json.is_object()) throw DataError("an exam is an object with method and date");
    ExamRecord out;
    const std::string method = text_of(json, "method");
    const auto exam = exam_named(method);
    if (!exam) throw DataError("exam: '" + shown(method) + "' is no method; expected VT, MT, PT or RT");
    out.method = *exam;
    out.date = checked_date(text_of(json, "date"));
    if (json.contains("number")) {
        if (!json["number"].is_number_integer() || json["number"] < 1 || json["number"] > 1'000'000)
            throw DataError("exam: \"number\" is not a whole number from 1");
        out.number = json["number"].get<int>();
    }
    for (const auto &[key, member] : texts) out.*member = text_of(json, key);
    if (json.contains("conditions")) {
        if (!json["conditions"].is_object()) throw DataError("exam: \"conditions\" is not an object");
        for (const auto &[name, value] : json["conditions"].items()) {
            if (!value.is_string()) throw DataError("exam: condition " + name + " is not text");
            add_condition(out, name + "=" + value.get<std::string>());
        }
    }
    return out;
}

} // namespace beadbook
