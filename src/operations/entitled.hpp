#pragma once

#include "operations/office.hpp"

namespace beadbook {

/// Whom the record entitles to examine by a method on a day.
struct Entitled {
    std::optional<Certificate> certificate; ///< that counts, or comes nearest to it
    std::string objection;                  ///< id of why_not_entitled; empty if entitled
};

/// By the record as it stands, or stood before an entry. A certificate that was renewed under its number
/// still counts for the days of the one before.
Entitled entitled_by_record(Office &office, const PersonRecord &person, Exam method, Day day,
                            std::optional<std::int64_t> before = {});

/// A person as on record before an entry; nothing if there was none. Capitals and blanks do not matter.
std::optional<PersonRecord> person_before(Office &office, const std::string &name,
                                          std::optional<std::int64_t> before);

/// The last vision test that is too old for an exam of that day (common practice, no source: a year); null if
/// none is, or the practice speaks of vision itself. `practice` may be null.
const VisionTest *vision_over(const PersonRecord &person, Day day, const Practice *practice);
/// Whether a rule of the practice is about a condition. `practice` may be null.
bool speaks_of(const Practice *practice, std::string_view condition);

} // namespace beadbook
