// People and equipment on record: lists, one with its history, and the forms that write them.
#include "measure/text.hpp"
#include "operations/equipment.hpp"
#include "operations/people.hpp"
#include "report/people_document.hpp"
#include "web/form.hpp"
#include "web/keeper_parts.hpp"
#include "web/linked_rows.hpp"
#include "web/page.hpp"
#include "web/refusal_page.hpp"

#include <algorithm>

namespace beadbook {
namespace {

std::string person_path(const std::string &name) { return "/keeper/people/" + url_word(name); }
std::string equipment_path(const std::string &serial) { return "/keeper/equipment/" + url_word(serial); }

/// What is written a line each.
std::vector<std::string> lines_sent(const Visit &visit, const std::string &field) {
    std::vector<std::string> out;
    const std::string text = visit.request.form.text(field);
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find('\n', at), text.size());
        if (const auto line = trimmed(std::string_view(text).substr(at, end - at)); !line.empty())
            out.emplace_back(line);
        at = end + 1;
    }
    return out;
}

/// What is left empty says nothing.
std::optional<std::string> said_or_not(const Visit &visit, const std::string &field) {
    const std::string value = visit.field(field);
    return value.empty() ? std::nullopt : std::optional(value);
}

std::string person_form(Visit &visit, const PersonRecord *known, const Refusal *refused) {
    Form form(visit, "/keeper/people", refused);
    if (known)
        form.hidden("name", known->name);
    else
        form.add({"name", "Name"});
    form.put("<fieldset><legend>Roles</legend>");
    for (const auto &role : person_roles()) {
        const bool has =
            known && std::find(known->roles.begin(), known->roles.end(), role) != known->roles.end();
        form.add({"role-" + role, role, has ? "yes" : "", Control::Kind::tick});
    }
    form.put("</fieldset>\n");
    form.add(
        {"certificate", "Certificates", "", Control::Kind::lines,
         "A line each: MT II until 2027-05-01 number 4711 scheme SNT-TC-1A. One of the same method, level "
         "and number takes the place of the old one."});
    form.add({"vision", "Vision tests", "", Control::Kind::lines, "A line each: 2026-03-01 J1"});
    if (known && !known->certificates.empty()) {
        std::vector<std::string> names{""};
        for (const auto &one : known->certificates) names.push_back(name_of(one));
        form.add({"without", "Take a certificate off", "", Control::Kind::choice, "", names});
    }
    form.add({"note", "Note", known ? known->note : ""});
    if (known)
        form.add({"why", "The reason", "", Control::Kind::text, "It is kept with what was said before."});
    return form.html(known ? "Change" : "Put on record");
}

PersonRequest person_sent(const Visit &visit) {
    PersonRequest out;
    out.name = visit.field("name");
    for (const auto &role : person_roles())
        if (visit.ticked("role-" + role)) out.roles.push_back(role);
    out.certificates = lines_sent(visit, "certificate");
    out.vision = lines_sent(visit, "vision");
    if (const auto without = said_or_not(visit, "without")) out.without.push_back(*without);
    out.note = said_or_not(visit, "note");
    out.why = visit.field("why");
    out.sure = visit.meant("sure");
    return out;
}

Answer people_page(Visit &visit, const Refusal *refused) {
    std::string list;
    if (visit.has_record()) {
        const PeopleList all = list_people(visit.office());
        std::vector<std::string> names;
        for (const auto &person : all.people) names.push_back(person.name);
        list = linked_rows(document_of(all), names, person_path, "people");
    }
    return page_of(visit, {"People",
                           "<h1>People</h1>\n" + list + "<h2>Put somebody on record</h2>\n" +
                               person_form(visit, nullptr, refused),
                           keeper_path,
                           {},
                           refused ? status_of(*refused, true) : 200});
}

Answer person_page(Visit &visit, const std::string &name, const Refusal *refused) {
    const PersonSheet sheet = show_person(visit.office(), name);
    return page_of(visit, {sheet.person.name,
                           "<p class=\"deeds\">" + button_to(visit, "/keeper/people", "People") +
                               button_to(visit, "/keeper/account/" + url_word(sheet.person.name),
                                         "How this person signs in") +
                               "</p>\n" + part_of(document_of(sheet), "person") + "<h2>Change</h2>\n" +
                               person_form(visit, &sheet.person, refused),
                           keeper_path,
                           {},
                           refused ? status_of(*refused, true) : 200});
}

Answer write_down_person(Visit &visit) {
    const PersonRequest request = person_sent(visit);
    try {
        visit.may_begin_record();
        std::string next;
        return visit.enter(next, [&](Writing &w) {
            auto done = write_person(w, request);
            next = person_path(done.value.person.name);
            done.notes.insert(done.notes.begin(), done.value.person.name + " is kept on record");
            return std::move(done.notes);
        });
    } catch (const Refusal &e) {
        if (visit.request.part || e.kind() == Refusal::Kind::record) return refusal_page(visit, e);
        // Only a form that changes somebody asks for the reason.
        if (visit.request.form.has("why")) return person_page(visit, request.name, &e);
        return people_page(visit, &e);
    }
}

std::string equipment_form(Visit &visit, const EquipmentRecord *known, const Refusal *refused) {
    Form form(visit, "/keeper/equipment", refused);
    if (known)
        form.hidden("serial", known->serial);
    else
        form.add({"serial", "Serial number"});
    std::vector<std::string> kinds{""};
    for (const auto &kind : equipment_kinds()) kinds.push_back(kind.name);
    form.add({"kind", "Kind", known ? known->kind : "", Control::Kind::choice, "", kinds});
    form.add({"calibration", "Calibrations", "", Control::Kind::lines,
              "A line each: 2026-05-01 until 2027-05-01"});
    form.add({"note", "Note", known ? known->note : ""});
    if (known) {
        form.add({"without", "Take off the calibration of", "", Control::Kind::day});
        if (known->withdrawn)
            form.add({"back", "It may be used again", "", Control::Kind::tick});
        else
            form.add({"withdraw", "Not to be used any more, because", ""});
        form.add({"why", "The reason", "", Control::Kind::text, "It is kept with what was said before."});
    }
    return form.html(known ? "Change" : "Put on record");
}

EquipmentRequest equipment_sent(const Visit &visit) {
    EquipmentRequest out;
    out.serial = visit.field("serial");
    out.kind = said_or_not(visit, "kind");
    out.note = said_or_not(visit, "note");
    out.calibrations = lines_sent(visit, "calibration");
    out.without = visit.field("without");
    out.withdraw = visit.field("withdraw");
    out.back = visit.ticked("back");
    out.why = visit.field("why");
    out.sure = visit.meant("sure");
    return out;
}

Answer equipment_list_page(Visit &visit, const Refusal *refused) {
    std::string list;
    if (visit.has_record()) {
        const EquipmentList all = list_equipment(visit.office());
        std::vector<std::string> serials;
        for (const auto &one : all.equipment) serials.push_back(one.serial);
        list = linked_rows(document_of(all), serials, equipment_path, "equipment");
    }
    return page_of(visit, {"Equipment",
                           "<h1>Equipment</h1>\n" + list + "<h2>Put equipment on record</h2>\n" +
                               equipment_form(visit, nullptr, refused),
                           keeper_path,
                           {},
                           refused ? status_of(*refused, true) : 200});
}

Answer equipment_page(Visit &visit, const std::string &serial, const Refusal *refused) {
    const EquipmentSheet sheet = show_equipment(visit.office(), serial);
    return page_of(visit, {sheet.equipment.kind + " " + sheet.equipment.serial,
                           "<p class=\"deeds\">" + button_to(visit, "/keeper/equipment", "Equipment") +
                               "</p>\n" + part_of(document_of(sheet), "equipment") + "<h2>Change</h2>\n" +
                               equipment_form(visit, &sheet.equipment, refused),
                           keeper_path,
                           {},
                           refused ? status_of(*refused, true) : 200});
}

Answer write_down_equipment(Visit &visit) {
    const EquipmentRequest request = equipment_sent(visit);
    try {
        visit.may_begin_record();
        std::string next;
        return visit.enter(next, [&](Writing &w) {
            auto done = write_equipment(w, request);
            next = equipment_path(done.value.equipment.serial);
            done.notes.insert(done.notes.begin(), done.value.equipment.serial + " is kept on record");
            return std::move(done.notes);
        });
    } catch (const Refusal &e) {
        if (visit.request.part || e.kind() == Refusal::Kind::record) return refusal_page(visit, e);
        if (visit.request.form.has("why")) return equipment_page(visit, request.serial, &e);
        return equipment_list_page(visit, &e);
    }
}

} // namespace

PageFamily people_pages() {
    return {
        "",
        "",
        {{"GET", "/keeper/people", [](Visit &v) { return people_page(v, nullptr); }},
         {"POST", "/keeper/people", write_down_person},
         {"GET", "/keeper/people/:name", [](Visit &v) { return person_page(v, v.word("name"), nullptr); }},
         {"GET", "/keeper/equipment", [](Visit &v) { return equipment_list_page(v, nullptr); }},
         {"POST", "/keeper/equipment", write_down_equipment},
         {"GET", "/keeper/equipment/:serial",
          [](Visit &v) { return equipment_page(v, v.word("serial"), nullptr); }}}};
}

} // namespace beadbook
