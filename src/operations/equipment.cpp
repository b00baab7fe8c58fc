#include "operations/equipment.hpp"

#include "facts/plausibility.hpp"
#include "measure/text.hpp"
#include "operations/marks.hpp"
#include "records/codecs/bodies.hpp"

#include <algorithm>

namespace beadbook {
namespace {

std::string plain_serial(const std::string &given) {
    std::string out = checked_text(given, "serial number");
    if (out.empty()) throw refused("equipment needs a serial number").at("serial");
    if (out.size() > 60) throw refused("the serial number is longer than 60 bytes").at("serial");
    return out;
}

std::string known_kind(const std::string &given) {
    if (const EquipmentKind *kind = equipment_kind(trimmed(given))) return kind->name;
    std::vector<std::string> names;
    for (const auto &one : equipment_kinds()) names.push_back(one.name);
    throw refused("kind '" + shown(given) + "'; expected " + listed(names, "or") + did_you_mean(given, names))
        .at("kind");
}

/// What was examined while it was out stays in doubt, unless it is said to have been back all the time.
void take_back(EquipmentRecord &out, Day day, Day today) {
    if (!out.withdrawn) throw refused("equipment " + out.serial + " is in use").at("back");
    if (day > today) throw refused("'" + print(day) + "' is to come; it is back when it is so").at("date");
    if (day < *out.withdrawn)
        throw refused("back on " + print(day) + ", and it was withdrawn on " + print(*out.withdrawn) +
                      " only; if it never was out of use, it is back on that day")
            .at("date");
    if (day > *out.withdrawn) out.were_out.push_back({*out.withdrawn, day, out.withdrawn_why});
    out.withdrawn.reset();
    out.withdrawn_why.clear();
}

void take(EquipmentRecord &out, const EquipmentRequest &request, Day today) {
    if (request.kind) out.kind = known_kind(*request.kind);
    if (request.note) out.note = checked_text(*request.note, "note");
    if (!request.without.empty()) {
        const Day day = parse_day(request.without);
        if (std::erase_if(out.calibrations, [&](const Calibration &c) { return c.on == day; }) == 0)
            throw refused("no calibration of " + print(day) + " is on record").at("without");
    }
    for (const auto &text : request.calibrations) {
        const Calibration given = read_calibration(text);
        if (given.on > today)
            throw refused("the calibration of " + print(given.on) + " is to come").at("calibration");
        std::erase_if(out.calibrations, [&](const Calibration &c) { return c.on == given.on; });
        out.calibrations.push_back(given);
    }
    std::sort(out.calibrations.begin(), out.calibrations.end(),
              [](const Calibration &a, const Calibration &b) { return a.on < b.on; });
    if (request.back) take_back(out, request.day.value_or(today), today);
    if (!request.withdraw.empty()) {
        out.withdrawn = request.day.value_or(today);
        out.withdrawn_why = checked_text(request.withdraw, "withdraw");
        if (*out.withdrawn > today)
            throw refused("'" + print(*out.withdrawn) + "' is to come; withdraw it when it is so").at("date");
    }
}

/// What keeps an exam from counting is not taken off behind it: a calibration that was over, unless the right
/// one is given with it. With that, and of days on which the piece was out, it is asked about.
void check_heals_nothing(Writing &writing, const EquipmentRecord &before, const EquipmentRecord &now,
                         bool sure) {
    for (const auto &mark : writing.ledger().coupons_examined_with(now.serial))
        for (const auto &exam : writing.book().coupon(mark).exams) {
            const bool with = std::any_of(exam.equipment.begin(), exam.equipment.end(),
                                          [&](const EquipmentUsed &one) { return one.serial == now.serial; });
            const auto then = used_on(before, exam.date), after = used_on(now, exam.date);
            if (!with || may_be_used(then, exam.date) || !may_be_used(after, exam.date)) continue;
            const std::string about = "exam " + std::to_string(exam.number) + " of " + mark +
                                      " was made with it on " + print(exam.date);
            if (!after.calibrated && then.calibrated)
                throw refused(about + ", when its calibration was over; the one that held is given with it")
                    .at("calibration");
            if (!sure)
                throw Unsure("is that meant? " + about + ", " +
                             (then.withdrawn ? "while it was out of use" : "when its calibration was over") +
                             ", and would count again");
        }
}

} // namespace

Done<EquipmentWritten> write_equipment(Writing &writing, const EquipmentRequest &request) {
    const auto known = equipment_of(writing.office(), request.serial);
    EquipmentRecord now = known.value_or(EquipmentRecord{});
    if (!known) {
        now.serial = plain_serial(request.serial);
        if (const std::string near = equipment_like(writing.office(), now.serial);
            !near.empty() && !request.sure)
            throw Unsure("is that meant? '" + near + "' is on record; is " + shown(now.serial) +
                         " another piece?");
        if (!request.kind) throw lacking("kind", "what is equipment " + now.serial + "?");
    }
    take(now, request, writing.outside().today());
    Entry entry = codec::entry_of(now);
    if (known) {
        if (*known == now)
            throw refused("this changes nothing: equipment " + request.serial +
                          (now.withdrawn ? " is withdrawn already" : " stands so already"));
        entry.supersedes = writing.book().equipment(now.serial).record_seq;
        // That it is withdrawn has its own reason.
        entry.reason = needed_reason(request.why.empty() ? request.withdraw : request.why);
        check_heals_nothing(writing, *known, now, request.sure);
    }
    writing.add(std::move(entry));
    for (const auto &coupon : writing.ledger().coupons_examined_with(now.serial)) writing.touch(coupon);
    return {{now, !known}, {}};
}

std::optional<EquipmentRecord> equipment_of(Office &office, const std::string &serial) {
    const std::string found = word_among(trimmed(serial), office.book().all_equipment());
    if (found.empty()) return std::nullopt;
    return office.book().equipment(found).record;
}

std::string equipment_like(Office &office, const std::string &serial) {
    if (equipment_of(office, serial)) return "";
    for (const auto &one : office.book().all_equipment())
        if (seen_alike(one, serial)) return one;
    return "";
}

EquipmentSheet show_equipment(Office &office, const std::string &serial, std::optional<Day> on) {
    const auto known = equipment_of(office, serial);
    const std::string found = known ? known->serial : serial;
    return {office.book().equipment(found).record, office.book().equipment_history(found),
            on.value_or(office.outside().today())};
}

EquipmentList list_equipment(Office &office, std::optional<Day> on) {
    EquipmentList out{{}, on.value_or(office.outside().today()), on.has_value()};
    for (const auto &serial : office.book().all_equipment())
        out.equipment.push_back(office.book().equipment(serial).record);
    return out;
}

} // namespace beadbook
