#pragma once

#include "facts/equipment_record.hpp"
#include "facts/exam_record.hpp"
#include "facts/grade.hpp"
#include "facts/indication_record.hpp"
#include "facts/person_record.hpp"
#include "facts/welder_record.hpp"
#include "records/entry.hpp"

#include <string>

namespace beadbook::codec {

/// A fact as the body of an entry: canonical text.
std::string body_of(const CouponRecord &coupon);
std::string body_of(const ExamRecord &exam);
std::string body_of(const IndicationRecord &indication);
std::string body_of(const Remark &remark);
std::string body_of(const Grade &grade);
std::string body_of(const WelderRecord &welder);
std::string body_of(const QualificationRecord &qualification);
std::string body_of(const WelderEvent &event);
std::string body_of(const PersonRecord &person);
std::string body_of(const EquipmentRecord &equipment);

/// A fact as a new entry; `coupon` is its mark.
Entry entry_of(const CouponRecord &coupon);
Entry entry_of(const PersonRecord &person);
Entry entry_of(const EquipmentRecord &equipment);
Entry entry_of(const std::string &coupon, const ExamRecord &exam);
Entry entry_of(const std::string &coupon, const IndicationRecord &indication);

} // namespace beadbook::codec
