#include "operations/described.hpp"

#include "operations/weld_through.hpp"

namespace beadbook {
namespace {

void set(CouponRecord &coupon, const std::string &field, const std::string &value,
         const std::map<std::string, std::string> &beside = {}) {
    try {
        coupon.set(field, coupon.sized(field, value, beside));
    } catch (const Refusal &e) {
        throw Refusal(e).at(field);
    }
}

void take(CouponRecord &coupon, const std::map<std::string, std::string> &fields) {
    for (const auto &[name, value] : fields)
        if (!coupon_field(name)) set(coupon, name, value); // refuses it, with the nearest name
    const std::string weld_thickness = "weld-thickness";
    const bool through = says_through(fields);
    // Bare numbers last: what is written with its unit may fix theirs.
    for (const bool bare : {false, true})
        for (const auto &field : coupon_fields())
            if (const auto given = fields.find(field.name);
                given != fields.end() && is_bare_length(field.name, given->second) == bare &&
                !(through && field.name == weld_thickness))
                set(coupon, field.name, given->second, fields);
    if (through) set(coupon, weld_thickness, through_thickness(coupon));
}

} // namespace

CouponRecord described_coupon(const std::map<std::string, std::string> &fields) {
    CouponRecord out;
    take(out, fields);
    return out;
}

CouponRecord described_coupon(Office &office, const std::string &id,
                              const std::map<std::string, std::string> &otherwise) {
    CouponRecord out = office.coupon(id).record;
    take(out, otherwise);
    return out;
}

} // namespace beadbook
