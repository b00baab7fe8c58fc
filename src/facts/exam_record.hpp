#pragma once

#include "facts/coupon_record.hpp"
#include "facts/equipment_record.hpp"
#include "judge/coupon.hpp"
#include "measure/day.hpp"

#include <optional>

namespace beadbook {

/// That an exam was carried through, and how many indications it found: said by a person, never taken from
/// silence.
struct ExamFinished {
    int found = 0;
    std::optional<Day> on;    ///< absent: a file that says no day
    std::string by;           ///< who said so
    std::string why = {};     ///< asked of one who is not its examiner; empty if nobody said one
    std::string told_by = {}; ///< who brought that in, if it is somebody else; not stored
    bool unnamed = false;     ///< being read from a file that names nobody: the examiner is taken for it
    friend bool operator==(const ExamFinished &, const ExamFinished &) = default;
};

/// One examination as it was recorded. It is open until somebody finishes it, and an open one fulfils no
/// requirement.
struct ExamRecord {
    int number = 0; ///< on its coupon, from 1
    Exam method = Exam::VT;
    Day date{}; ///< of the examination
    std::string examiner, level, procedure, note;
    std::string incomplete;                        ///< why it does not count; empty if it does
    std::map<std::string, std::string> conditions; ///< technique, as name and value
    std::string practice, practice_hash;           ///< that the conditions are held against; may be empty
    std::vector<EquipmentUsed> equipment;          ///< as it was on record that day
    std::optional<ExamFinished> finished;
    std::vector<std::string>
        sure;                 ///< plausibility rules that somebody set aside for it (facts/plausibility.hpp)
    std::string invalid;      ///< why it was not valid by the practice, or cannot be said to be; not stored
    std::string open;         ///< why it cannot stand for "examined" as it is on record; not stored
    bool pending = false;     ///< what it found is not all on record; not stored
    bool contradicts = false; ///< more is on record under it than it was finished with; not stored
    bool level_as_typed = false; ///< nobody on record vouches for the examiner's level; not stored
    std::string vision_later;    ///< day of the last vision test before it, entered after it; not stored
    bool lacks = false;          ///< less is on record under it than it was finished with; not stored
    Missing hangs_on{};          ///< what of the coupon would tell whether it counts; not stored

    ExamDone done() const {
        const std::string &why = !incomplete.empty() ? incomplete : !invalid.empty() ? invalid : open;
        return {method, why.empty(), why,   pending,
                number, contradicts, lacks, &why == &open ? hangs_on : Missing{}};
    }
    /// The conditions with the examiner's level among them, as practices see them.
    std::map<std::string, std::string> conditions_told() const;
    /// Of the known conditions those that no practice is there to hold; empty with a practice.
    std::map<std::string, std::string> conditions_not_held() const;
    /// "II", or "II as typed, nobody on record vouches for it"; empty without a level.
    std::string level_told() const;
    /// What speaks against its equipment; no verdict goes by it.
    std::vector<std::string> cautions() const;
    friend bool operator==(const ExamRecord &, const ExamRecord &) = default;
};

/// "exam 2 (RT)".
std::string title_of(const ExamRecord &exam);

/// Before the name of a condition, where a refusal or a form names it as a field.
inline const std::string condition_field = "condition:";

/// `light=1000 lx` into the exam's conditions; the value of a known condition must be of its kind. Throws
/// Refusal (its field).
void add_condition(ExamRecord &exam, const std::string &text);

} // namespace beadbook
