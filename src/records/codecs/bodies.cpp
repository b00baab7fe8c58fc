#include "records/codecs/bodies.hpp"

#include "records/codecs/facts.hpp"
#include "records/codecs/people.hpp"
#include "records/codecs/typed.hpp"
#include "records/codecs/welder.hpp"

namespace beadbook::codec {

std::string body_of(const CouponRecord &coupon) {
    nlohmann::json body = json_of(coupon);
    if (!coupon.like.empty()) body[like_key] = coupon.like;
    return canonical(body);
}
std::string body_of(const ExamRecord &exam) { return canonical(json_of(exam)); }
std::string body_of(const IndicationRecord &indication) { return canonical(json_of(indication)); }
std::string body_of(const Remark &remark) { return canonical(json_of(remark)); }
std::string body_of(const Grade &grade) { return canonical(json_of(grade)); }
std::string body_of(const WelderRecord &welder) { return canonical(json_of(welder)); }
std::string body_of(const QualificationRecord &qualification) { return canonical(json_of(qualification)); }
std::string body_of(const WelderEvent &event) { return canonical(json_of(event)); }
std::string body_of(const PersonRecord &person) { return canonical(json_of(person)); }
std::string body_of(const EquipmentRecord &equipment) { return canonical(json_of(equipment)); }

Entry entry_of(const PersonRecord &person) {
    Entry out;
    out.kind = "person";
    out.subject = person.name;
    out.body = body_of(person);
    return out;
}

Entry entry_of(const EquipmentRecord &equipment) {
    Entry out;
    out.kind = "equipment";
    out.subject = equipment.serial;
    out.body = body_of(equipment);
    return out;
}

Entry entry_of(const CouponRecord &coupon) {
    Entry out;
    out.kind = "coupon";
    out.subject = coupon.id;
    out.body = body_of(coupon);
    return out;
}

Entry entry_of(const std::string &coupon, const ExamRecord &exam) {
    Entry out;
    out.kind = "exam";
    out.subject = coupon;
    out.exam = exam.number;
    out.body = body_of(exam);
    return out;
}

Entry entry_of(const std::string &coupon, const IndicationRecord &indication) {
    Entry out;
    out.kind = "indication";
    out.subject = coupon;
    out.exam = indication.exam;
    out.number = indication.number;
    out.body = body_of(indication);
    return out;
}

} // namespace beadbook::codec
