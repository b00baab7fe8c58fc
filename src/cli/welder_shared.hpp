#pragma once

#include "cli/shared.hpp"
#include "qualify/range.hpp"
#include "records/welder_record.hpp"

namespace beadbook {

/// One qualification with all that follows from it: its rules as they were, its range, and how it stands.
struct HeldQualification {
    std::string mark;
    QualificationRecord record;
    std::shared_ptr<const RangeRules> rules;
    Weld weld;
    std::vector<VariableRange> range;
    Validity validity;

    const ValidityWay &way() const;
};

/// The welder's qualifications on a day, by the rules' text that each was granted by.
std::vector<HeldQualification> held_by(Book &book, const std::string &mark, Day on);
std::vector<HeldQualification> held_by(Book &book, const WelderState &welder, Day on);

/// One of them. Throws DataError if there is none of that number.
HeldQualification held_by(Book &book, const WelderState &welder, int number, Day on);

/// "#2 GTAW by asme-ix".
std::string title_of(const HeldQualification &held);

} // namespace beadbook
