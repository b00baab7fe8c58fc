#include "facts/exam_record.hpp"

#include "measure/day.hpp"
#include "measure/text.hpp"
#include "technique/known_conditions.hpp"

namespace beadbook {
namespace {

constexpr std::pair<const char *, std::string ExamRecord::*> texts[] = {
    {"examiner", &ExamRecord::examiner},          {"level", &ExamRecord::level},
    {"procedure", &ExamRecord::procedure},        {"note", &ExamRecord::note},
    {"incomplete", &ExamRecord::incomplete},      {"practice", &ExamRecord::practice},
    {"practice hash", &ExamRecord::practice_hash}};

std::string text_of(const nlohmann::json &json, const char *key) {
    if (!json.contains(key)) return "";
    if (!json[key].is_string()) throw DataError(std::string("exam: \"") + key + "\" is not text");
    return checked_text(json[key].get<std::string>(), key);
}

} // namespace

std::map<std::string, std::string> ExamRecord::conditions_told() const {
    auto out = conditions;
    if (!level.empty()) out.emplace("level", level);
    return out;
}

void add_condition(ExamRecord &exam, const std::string &text) {
    const std::size_t equals = text.find('=');
    const std::string name = checked_text(text.substr(0, equals), "condition");
    if (equals == std::string::npos || name.empty())
        throw DataError("condition '" + shown(text) + "': write it as name=value, e.g. \"light=1000 lx\"");
    const std::string value = checked_text(text.substr(equals + 1), name);
    if (value.empty()) throw DataError("condition " + name + ": nothing given");
    if (const ConditionInfo *known = condition_info(name)) {
        try {
            read_condition_value(*known, value);
        } catch (const InputError &e) {
            throw DataError(std::string("condition ") + e.what());
        }
    }
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
    if (!exam) throw DataError("exam: '" + shown(method) + "' is no method; expected " + exam_names_text());
    out.method = *exam;
    out.date = print(parse_day(text_of(json, "date")));
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
            out.conditions.emplace(checked_text(name, "condition"),
                                   checked_text(value.get<std::string>(), name));
        }
    }
    return out;
}

} // namespace beadbook
