#include "report/people_document.hpp"

#include "measure/text.hpp"
#include "report/coupon_document.hpp"

#include <cstdlib>
#include <map>

namespace beadbook {
namespace {

/// "in force", "over", "to come", in its tone.
Words standing_of(const Certificate &one, Day on) {
    if (one.in_force(on)) return {"in force", Tone::accept};
    return {one.until && *one.until < on ? "over" : "to come", Tone::reject};
}

Words standing_of(const EquipmentRecord &one, Day on) {
    if (one.withdrawn && *one.withdrawn <= on)
        return {"withdrawn since " + print(*one.withdrawn) + ": " + one.withdrawn_why, Tone::reject};
    const Calibration *last = one.calibration_on(on);
    if (!last) return {"no calibration on record", Tone::cannot_say};
    if (last->until && *last->until < on) return {"calibration over", Tone::reject};
    return last->until ? Words("in calibration", Tone::accept)
                       : Words("calibrated, not said through when", Tone::cannot_say);
}

void add_history(Document &doc, const std::vector<Entry> &history) {
    doc.heading("History", 2);
    for (auto &block : document_of(history).blocks) doc.blocks.push_back(std::move(block));
}

} // namespace

std::string time_left(std::int64_t days) {
    if (days == 0) return "today";
    const auto count = std::abs(days);
    return (days < 0 ? "over for " : "in ") + std::to_string(count) + (count == 1 ? " day" : " days");
}

std::string ending_words(const Ending &ending) {
    switch (ending.what) {
    case Ending::What::certificate: return "certificate " + ending.of;
    case Ending::What::vision: return "vision test (a year, common practice, no source)";
    case Ending::What::calibration: break;
    }
    return "calibration (" + ending.of + ")";
}

std::string to_do_words(const Ending &ending) {
    switch (ending.what) {
    case Ending::What::certificate: return "renew the certificate";
    case Ending::What::vision: return "have the vision tested";
    case Ending::What::calibration: break;
    }
    return "calibrate it, or withdraw it";
}

Document document_of(const PersonWritten &done) {
    return Document{}.line(done.person.name +
                           (done.first ? " is on record" : " changed; the old entry is kept"));
}

Document document_of(const PersonSheet &sheet) {
    const PersonRecord &person = sheet.person;
    Document doc;
    doc.title = person.name + (person.roles.empty() ? "" : ", " + listed(person.roles));
    doc.heading(doc.title);
    if (!person.note.empty()) doc.line("note: " + person.note);
    for (const auto &one : person.certificates)
        doc.item(Words("certificate " + print(one) + ": ") + standing_of(one, sheet.on));
    for (const auto &one : person.vision) doc.item("vision test " + print(one));
    if (person.certificates.empty()) doc.line("holds no certificate for an examination method");
    add_history(doc, sheet.history);
    return doc.caution();
}

Document document_of(const PeopleList &list) {
    Document doc;
    doc.title = "People";
    if (list.people.empty()) return doc.line("nobody is on record");
    if (list.asked) doc.line("As it stands on " + print(list.on) + ":");
    Grid table{{{"name"}, {"role"}, {"certificate"}, {"state"}, {"until"}, {"vision tested"}}, {}};
    for (const auto &person : list.people) {
        const VisionTest *vision = person.vision_on(list.on);
        const std::string tested = vision ? print(*vision) : "";
        if (person.certificates.empty())
            table.rows.push_back({person.name, listed(person.roles), "none", "", "", tested});
        for (const auto &one : person.certificates)
            table.rows.push_back({person.name, listed(person.roles), name_of(one), standing_of(one, list.on),
                                  one.until ? print(*one.until) : "", tested});
    }
    return doc.add(std::move(table));
}

Document document_of(const EquipmentWritten &done) {
    const EquipmentRecord &one = done.equipment;
    return Document{}.line(one.kind + " " + one.serial +
                           (done.first ? " is on record" : " changed; the old entry is kept"));
}

Document document_of(const EquipmentSheet &sheet) {
    const EquipmentRecord &one = sheet.equipment;
    Document doc;
    doc.title = one.kind + " " + one.serial;
    doc.heading(doc.title);
    if (!one.note.empty()) doc.line("note: " + one.note);
    doc.line(standing_of(one, sheet.on));
    for (const auto &calibration : one.calibrations) doc.item("calibrated " + print(calibration));
    for (const auto &out : one.were_out) doc.item("was out of use " + print(out));
    add_history(doc, sheet.history);
    return doc;
}

Document document_of(const EquipmentList &list) {
    Document doc;
    doc.title = "Equipment";
    if (list.equipment.empty()) return doc.line("no equipment is on record");
    if (list.asked) doc.line("As it stands on " + print(list.on) + ":");
    Grid table{{{"serial"}, {"kind"}, {"state"}, {"calibrated"}, {"until"}, {"note"}}, {}};
    for (const auto &one : list.equipment) {
        const Calibration *last = one.calibration_on(list.on);
        table.rows.push_back({one.serial, one.kind, standing_of(one, list.on), last ? print(last->on) : "",
                              last && last->until ? print(*last->until) : "", one.note});
    }
    return doc.add(std::move(table));
}

} // namespace beadbook
