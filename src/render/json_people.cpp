#include "render/json_people.hpp"

#include "render/json_parts.hpp"

namespace beadbook {
namespace {

using nlohmann::json;

json people_json(const PersonRecord &person, Day on) {
    json out{{"name", person.name},
             {"roles", person.roles},
             {"certificates", json::array()},
             {"vision", json::array()}};
    for (const auto &one : person.certificates) {
        json item{{"method", name_of(one.method)}, {"level", one.level}, {"in force", one.in_force(on)}};
        if (!one.number.empty()) item["number"] = one.number;
        if (!one.scheme.empty()) item["scheme"] = one.scheme;
        if (one.since) item["since"] = print(*one.since);
        if (one.until) item["until"] = print(*one.until);
        out["certificates"].push_back(std::move(item));
    }
    for (const auto &one : person.vision) {
        json item{{"on", print(one.on)}};
        if (!one.letters.empty()) item["letters"] = one.letters;
        out["vision"].push_back(std::move(item));
    }
    if (!person.note.empty()) out["note"] = person.note;
    return out;
}

json equipment_json(const EquipmentRecord &one) {
    json out{{"serial", one.serial}, {"kind", one.kind}, {"calibrations", json::array()}};
    for (const auto &calibration : one.calibrations) {
        json item{{"on", print(calibration.on)}};
        if (calibration.until) item["until"] = print(*calibration.until);
        out["calibrations"].push_back(std::move(item));
    }
    if (one.withdrawn) out["out of use"] = {{"since", print(*one.withdrawn)}, {"why", one.withdrawn_why}};
    for (const auto &out_then : one.were_out)
        out["was out of use"].push_back(
            {{"since", print(out_then.from)}, {"back", print(out_then.back)}, {"why", out_then.why}});
    if (!one.note.empty()) out["note"] = one.note;
    return out;
}

json history_of(const std::vector<Entry> &history) {
    json out = json::array();
    for (const auto &e : history) {
        json item{{"entry", e.seq}, {"at", e.at}, {"by", e.who}};
        if (!e.reason.empty()) item["why"] = e.reason;
        out.push_back(std::move(item));
    }
    return out;
}

} // namespace

json ending_json(const Ending &ending) {
    constexpr const char *names[] = {"certificate", "vision test", "calibration"};
    json out{{ending.what == Ending::What::calibration ? "equipment" : "person", ending.subject},
             {"ends", names[static_cast<std::size_t>(ending.what)]},
             {"by", print(ending.by)},
             {"days left", ending.days_left},
             {"to do", to_do_words(ending)}};
    if (!ending.of.empty()) out["of"] = ending.of;
    return out;
}

std::string json_text(const PersonWritten &done, const std::vector<std::string> &notes) {
    json out = people_json(done.person, Day{});
    for (auto &one : out["certificates"]) one.erase("in force"); // no day is meant here
    return render::finished(std::move(out), notes);
}

std::string json_text(const PersonSheet &sheet, const std::vector<std::string> &notes) {
    json out = people_json(sheet.person, sheet.on);
    out["on"] = print(sheet.on);
    out["history"] = history_of(sheet.history);
    return render::finished(std::move(out), notes);
}

std::string json_text(const PeopleList &list, const std::vector<std::string> &notes) {
    json out = json::array();
    for (const auto &person : list.people) out.push_back(people_json(person, list.on));
    return render::finished(std::move(out), notes);
}

std::string json_text(const EquipmentWritten &done, const std::vector<std::string> &notes) {
    return render::finished(equipment_json(done.equipment), notes);
}

std::string json_text(const EquipmentSheet &sheet, const std::vector<std::string> &notes) {
    json out = equipment_json(sheet.equipment);
    out["on"] = print(sheet.on);
    out["history"] = history_of(sheet.history);
    return render::finished(std::move(out), notes);
}

std::string json_text(const EquipmentList &list, const std::vector<std::string> &notes) {
    json out = json::array();
    for (const auto &one : list.equipment) out.push_back(equipment_json(one));
    return render::finished(std::move(out), notes);
}

} // namespace beadbook
