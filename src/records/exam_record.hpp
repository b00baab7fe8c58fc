#pragma once

#include "judge/coupon.hpp"
#include "records/coupon_record.hpp"

namespace beadbook {

/// One examination as it was recorded.
struct ExamRecord {
    int number = 0; ///< on its coupon, from 1
    Exam method = Exam::VT;
    std::string date; ///< of the examination, 2026-11-25
    std::string examiner, level, procedure, note;
    std::string incomplete;                        ///< why it does not count; empty if it does
    std::map<std::string, std::string> conditions; ///< technique, as name and value

    ExamDone done() const { return {method, incomplete.empty(), incomplete}; }
    nlohmann::json to_json() const;
    static ExamRecord from_json(const nlohmann::json &json);
    friend bool operator==(const ExamRecord &, const ExamRecord &) = default;
};

/// `light=1000 lx` into the exam's conditions. Throws DataError.
void add_condition(ExamRecord &exam, const std::string &text);

} // namespace beadbook
