#pragma once

#include "criteria/methods.hpp"
#include "measure/day.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace beadbook {

/// A kind of equipment, and the condition of an exam that its calibration answers.
struct EquipmentKind {
    std::string name;
    std::string condition; ///< meter due, yoke checked, ammeter checked; empty: none that practices name
    bool condition_is_due = false; ///< the condition is the day of the next calibration, not of the last
};
const std::vector<EquipmentKind> &equipment_kinds();
/// Null if there is none of that name.
const EquipmentKind *equipment_kind(std::string_view name);

struct Calibration {
    Day on{};
    std::optional<Day> until; ///< the last day that it covers; absent: not on record
    friend bool operator==(const Calibration &, const Calibration &) = default;
};
/// "2026-05-01" or "2026-05-01 until 2027-05-01". Throws DataError.
Calibration read_calibration(const std::string &text);
std::string print(const Calibration &calibration);

/// Days on which a piece might not be used: from the first on, until the day on which it was back.
struct OutOfUse {
    Day from{}, back{};
    std::string why;
    bool on(Day day) const { return from <= day && day < back; }
    friend bool operator==(const OutOfUse &, const OutOfUse &) = default;
};
/// "2026-01-01 to 2026-03-01: it was dropped", and the same read again. Throws DataError.
std::string print(const OutOfUse &out);
OutOfUse read_out_of_use(const std::string &text);

/// A piece of equipment on record, by its serial number. Older calibrations stay beside newer ones.
struct EquipmentRecord {
    std::string serial, kind, note;        ///< kind: a name of equipment_kinds()
    std::vector<Calibration> calibrations; ///< by day
    std::optional<Day> withdrawn;          ///< the first day on which it may not be used
    std::string withdrawn_why;
    std::vector<OutOfUse> were_out = {}; ///< before it was back

    /// The newest calibration on or before a day; null if there is none.
    const Calibration *calibration_on(Day day) const;
    friend bool operator==(const EquipmentRecord &, const EquipmentRecord &) = default;
};
struct EquipmentState {
    EquipmentRecord record;
    std::int64_t record_seq = 0;
};

/// A piece of equipment as an exam used it: what was on record of it that day.
struct EquipmentUsed {
    std::string serial, kind;             ///< no kind: it was not on record
    std::optional<Day> calibrated, until; ///< the calibration that counted
    bool later = false;                   ///< its first calibration came after the exam
    std::optional<Day> withdrawn;         ///< it was withdrawn by then
    friend bool operator==(const EquipmentUsed &, const EquipmentUsed &) = default;
};
EquipmentUsed used_on(const EquipmentRecord &equipment, Day day);

/// Neither out of use on that day nor with a calibration that was over: else the exam does not count
/// (operations/exam_means).
bool may_be_used(const EquipmentUsed &used, Day day);
/// What speaks against it, in a sentence; empty if nothing does. Common practice, no source: measuring
/// equipment is used within its calibration only. Of what may be used it is told, and no verdict goes by it.
std::string caution_of(const EquipmentUsed &used, Day exam);

} // namespace beadbook
