#pragma once

#include "facts/exam_record.hpp"
#include "facts/grade.hpp"
#include "facts/indication_record.hpp"

#include <nlohmann/json_fwd.hpp>

/// Coupons, exams, indications, remarks and grades, in entries and in exchange files.
namespace beadbook::codec {

/// Under which a coupon says which of its fields settings filled in.
inline constexpr const char *by_settings_key = "by settings";
/// Under which the entry of a coupon, and no file, says like which other of its record it was registered.
inline constexpr const char *like_key = "like";

/// Plausibility rules that were set aside, by their ids.
void put_sure(nlohmann::json &out, const std::vector<std::string> &sure);
/// Throws DataError.
std::vector<std::string> sure_from(const nlohmann::json &json);

nlohmann::json json_of(const CouponRecord &coupon);
/// Throws DataError, InputError: not of this shape, or a value that cannot be taken.
CouponRecord coupon_from(const nlohmann::json &json);

nlohmann::json json_of(const ExamRecord &exam);
ExamRecord exam_from(const nlohmann::json &json);
/// Keys of an exam that are free text, in their order: examiner, level, ...
std::vector<std::string> exam_text_keys();

nlohmann::json json_of(const IndicationRecord &indication,
                       const Vocabulary &vocabulary = Vocabulary::shipped());
IndicationRecord indication_from(const nlohmann::json &json, const WeldLine &line, std::optional<Unit> unit,
                                 const Vocabulary &vocabulary = Vocabulary::shipped());

nlohmann::json json_of(const Remark &remark);
nlohmann::json json_of(const Grade &grade);
Remark remark_from(const nlohmann::json &json, const Stamp &stamp);
Grade grade_from(const nlohmann::json &json, const Stamp &stamp);

} // namespace beadbook::codec
