#pragma once

#include "qualify/range.hpp"
#include "qualify/validity.hpp"
#include "records/welder_record.hpp"

#include <nlohmann/json.hpp>

namespace beadbook {

/// Everything that the record of one welder and test shows; all of it outlives the report.
struct RecordSheet {
    const WelderRecord &welder;
    const QualificationRecord &record;
    const RangeRules &rules;
    const Weld &weld;
    const std::vector<VariableRange> &range;
    const Validity &validity;
    const std::vector<WelderEvent> &events; ///< that bear on it
    Stamp granted;
    std::string hash; ///< of its entry in the chain
    std::string head; ///< of the newest entry
    Day on;           ///< the day it speaks of
};

std::string record_text(const RecordSheet &sheet);
nlohmann::json record_json(const RecordSheet &sheet);
/// One page to print, complete in itself.
std::string record_html(const RecordSheet &sheet);

} // namespace beadbook
