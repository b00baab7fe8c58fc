#include "records/codecs/people.hpp"

#include "facts/coupon_record.hpp"
#include "measure/text.hpp"
#include "records/codecs/typed.hpp"

namespace beadbook::codec {
namespace {

constexpr int people_form = 1;

void check_form(const nlohmann::json &json) {
    if (json.value("form", 0) != people_form)
        throw StoreError("it was stored by a newer program; this one cannot read it");
}

void put_day(nlohmann::json &out, const char *key, const std::optional<Day> &day) {
    if (day) out[key] = print(*day);
}
std::optional<Day> day_from(const nlohmann::json &json, const char *key) {
    const std::string text = text_of(json, key, "equipment");
    return text.empty() ? std::nullopt : std::optional(parse_day(text));
}

} // namespace

nlohmann::json json_of(const PersonRecord &person) {
    nlohmann::json out{{"form", people_form}};
    if (!person.roles.empty()) out["roles"] = person.roles;
    // As text, so that the history of a person shows each with its days.
    for (const auto &one : person.certificates) out["certificates"].push_back(print(one));
    for (const auto &one : person.vision) out["vision"].push_back(print(one));
    if (!person.note.empty()) out["note"] = person.note;
    return out;
}

PersonRecord person_from(const std::string &name, const nlohmann::json &json) {
    check_form(json);
    PersonRecord out{name, json.value("roles", std::vector<std::string>{}), {}, {}, json.value("note", "")};
    for (const auto &one : json.value("certificates", std::vector<std::string>{}))
        out.certificates.push_back(read_certificate(one));
    for (const auto &one : json.value("vision", std::vector<std::string>{}))
        out.vision.push_back(read_vision_test(one));
    return out;
}

nlohmann::json json_of(const EquipmentRecord &equipment) {
    nlohmann::json out{{"form", people_form}, {"kind", equipment.kind}};
    for (const auto &one : equipment.calibrations) out["calibrations"].push_back(print(one));
    // Not "withdrawn": that word ends what a numbered thing is, and this one can come back.
    put_day(out, "out of use", equipment.withdrawn);
    if (!equipment.withdrawn_why.empty()) out["out of use because"] = equipment.withdrawn_why;
    for (const auto &one : equipment.were_out) out["was out of use"].push_back(print(one));
    if (!equipment.note.empty()) out["note"] = equipment.note;
    return out;
}

EquipmentRecord equipment_from(const std::string &serial, const nlohmann::json &json) {
    check_form(json);
    EquipmentRecord out{serial, json.at("kind").get<std::string>(), json.value("note", ""), {}, {}, {}};
    for (const auto &one : json.value("calibrations", std::vector<std::string>{}))
        out.calibrations.push_back(read_calibration(one));
    out.withdrawn = day_from(json, "out of use");
    out.withdrawn_why = json.value("out of use because", "");
    for (const auto &one : json.value("was out of use", std::vector<std::string>{}))
        out.were_out.push_back(read_out_of_use(one));
    return out;
}

nlohmann::json json_of(const std::vector<EquipmentUsed> &used) {
    nlohmann::json out = nlohmann::json::array();
    for (const auto &one : used) {
        nlohmann::json item{{"serial", one.serial}};
        if (!one.kind.empty()) item["kind"] = one.kind;
        put_day(item, "calibrated", one.calibrated);
        put_day(item, "until", one.until);
        if (one.later) item["calibrated later"] = "yes";
        put_day(item, "out of use", one.withdrawn);
        out.push_back(std::move(item));
    }
    return out;
}

const std::vector<std::string> &equipment_used_keys() {
    static const std::vector<std::string> keys{"serial",           "kind",      "calibrated", "until",
                                               "calibrated later", "out of use"};
    return keys;
}

std::vector<EquipmentUsed> equipment_used_from(const nlohmann::json &json) {
    if (!json.is_array()) throw DataError("exam: \"equipment\" is not a list");
    std::vector<EquipmentUsed> out;
    for (const auto &item : json) {
        EquipmentUsed one;
        if (item.is_string()) {
            one.serial = checked_text(item.get<std::string>(), "equipment");
        } else if (item.is_object()) {
            one.serial = text_of(item, "serial", "equipment");
            one.kind = text_of(item, "kind", "equipment");
            one.calibrated = day_from(item, "calibrated");
            one.until = day_from(item, "until");
            one.later = item.contains("calibrated later");
            one.withdrawn = day_from(item, "out of use");
        }
        if (one.serial.empty())
            throw DataError("exam: \"equipment\" holds something without a serial number");
        out.push_back(std::move(one));
    }
    return out;
}

} // namespace beadbook::codec
