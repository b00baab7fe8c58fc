#pragma once

#include "operations/writing.hpp"

namespace beadbook {

/// A piece of equipment as somebody writes it down; what is absent stays as it is.
struct EquipmentRequest {
    std::string serial;
    std::optional<std::string> kind, note;
    std::vector<std::string> calibrations; ///< as read_calibration takes them
    std::string without;                   ///< day of a calibration to take off; may be empty
    std::string withdraw;                  ///< why it is used no more from `day` on
    bool back = false;                     ///< it may be used again, from `day` on
    std::optional<Day> day;                ///< of the withdrawal or the return; else today
    std::string why;                       ///< of a change
    bool sure = false;                     ///< one whose serial is like another's is another piece
    bool says_something() const {
        return kind || note || !calibrations.empty() || !without.empty() || !withdraw.empty() || back;
    }
};
struct EquipmentWritten {
    EquipmentRecord equipment;
    bool first = false; ///< registered by this, not changed
};
/// Registers it or changes what is on record; the old entry is kept. Throws Refusal: no serial number, no
/// kind (field "kind"), no reason for a change, nothing that changes.
Done<EquipmentWritten> write_equipment(Writing &writing, const EquipmentRequest &request);

struct EquipmentSheet {
    EquipmentRecord equipment;
    std::vector<Entry> history;
    Day on;
};
/// Throws Refusal: none of that serial number.
EquipmentSheet show_equipment(Office &office, const std::string &serial, std::optional<Day> on = {});
struct EquipmentList {
    std::vector<EquipmentRecord> equipment;
    Day on;
    bool asked = false; ///< for that day, which is told then
};
EquipmentList list_equipment(Office &office, std::optional<Day> on = {});

/// The equipment on record of that serial number, capitals aside; nothing if there is none.
std::optional<EquipmentRecord> equipment_of(Office &office, const std::string &serial);
/// The serial on record that somebody may have meant by one that is not: UV-1 by UV1. Empty if there is none.
std::string equipment_like(Office &office, const std::string &serial);

} // namespace beadbook
