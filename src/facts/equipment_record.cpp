#include "facts/equipment_record.hpp"

#include "facts/coupon_record.hpp"
#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {

const std::vector<EquipmentKind> &equipment_kinds() {
    static const std::vector<EquipmentKind> all{{"yoke", "yoke checked", false},
                                                {"prods", "", false},
                                                {"magnetizing unit", "", false},
                                                {"ammeter", "ammeter checked", false},
                                                {"field meter", "", false},
                                                {"light meter", "meter due", true},
                                                {"UV meter", "meter due", true},
                                                {"UV lamp", "", false},
                                                {"test weight", "", false},
                                                {"thermometer", "", false},
                                                {"densitometer", "", false},
                                                {"step tablet", "", false},
                                                {"film viewer", "", false},
                                                {"IQI", "", false},
                                                {"X-ray source", "", false},
                                                {"gamma source", "", false},
                                                {"gauge", "", false},
                                                {"test piece", "", false},
                                                {"magnifier", "", false},
                                                {"borescope", "", false},
                                                {"other", "", false}};
    return all;
}

const EquipmentKind *equipment_kind(std::string_view name) {
    const auto &all = equipment_kinds();
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const EquipmentKind &k) { return same_word(k.name, name); });
    return found == all.end() ? nullptr : &*found;
}

Calibration read_calibration(const std::string &given) {
    const std::string text = checked_text(given, "calibration");
    const auto words = words_of(text);
    if (words.size() != 1 && !(words.size() == 3 && words[1] == "until"))
        throw DataError("calibration: '" + shown(text) +
                        "'; write the day of it, and through which day it "
                        "holds: \"2026-05-01 until 2027-05-01\"");
    try {
        Calibration out{parse_day(words[0]), {}};
        if (words.size() == 3) out.until = parse_day(words[2]);
        if (out.until && *out.until < out.on) throw DataError("it would end before it begins");
        return out;
    } catch (const Refusal &e) {
        throw DataError(std::string("calibration: ") + e.what());
    }
}

std::string print(const Calibration &calibration) {
    return print(calibration.on) + (calibration.until ? " until " + print(*calibration.until) : "");
}

std::string print(const OutOfUse &out) { return print(out.from) + " to " + print(out.back) + ": " + out.why; }

OutOfUse read_out_of_use(const std::string &text) {
    const std::size_t colon = text.find(": ");
    const std::string days = text.substr(0, colon);
    const auto words = words_of(days);
    if (colon == std::string::npos || words.size() != 3)
        throw DataError("out of use: '" + shown(text) + "'; expected \"2026-01-01 to 2026-03-01: why\"");
    return {parse_day(words[0]), parse_day(words[2]), text.substr(colon + 2)};
}

const Calibration *EquipmentRecord::calibration_on(Day day) const {
    const Calibration *out = nullptr;
    for (const auto &one : calibrations)
        if (one.on <= day && (!out || out->on <= one.on)) out = &one;
    return out;
}

EquipmentUsed used_on(const EquipmentRecord &equipment, Day day) {
    EquipmentUsed out{equipment.serial, equipment.kind, {}, {}, false, {}};
    if (const Calibration *counted = equipment.calibration_on(day)) {
        out.calibrated = counted->on;
        out.until = counted->until;
    } else {
        out.later = !equipment.calibrations.empty();
    }
    if (equipment.withdrawn && *equipment.withdrawn <= day) out.withdrawn = equipment.withdrawn;
    for (const auto &one : equipment.were_out)
        if (one.on(day)) out.withdrawn = one.from;
    return out;
}

bool may_be_used(const EquipmentUsed &used, Day day) {
    return !used.withdrawn && !(used.until && *used.until < day);
}

std::string caution_of(const EquipmentUsed &used, Day exam) {
    const std::string name = (used.kind.empty() ? "equipment" : used.kind) + " " + used.serial + ": ";
    const std::string from = " (common practice, no source)";
    if (used.kind.empty())
        return name + "it is not on record, so whether it was calibrated cannot be said" + from;
    if (used.withdrawn) return name + "it was withdrawn from use on " + print(*used.withdrawn) + from;
    if (used.until && *used.until < exam)
        return name + "its calibration was over on " + print(exam) + ", it held through " +
               print(*used.until) + from;
    if (const EquipmentKind *kind = equipment_kind(used.kind);
        kind && !kind->condition.empty() && !used.calibrated && !used.later)
        return name + "no calibration of it is on record" + from;
    if (used.calibrated && !used.until && *used.calibrated + parse_period("1 year") < exam)
        return name + "its calibration of " + print(*used.calibrated) +
               " has no end on record, and was more than a year before the exam" + from;
    if (used.later) return name + "it was calibrated only after the exam of " + print(exam) + from;
    return "";
}

} // namespace beadbook
