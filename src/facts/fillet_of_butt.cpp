#include "facts/fillet_of_butt.hpp"

namespace beadbook {

std::string fillet_of_butt(const CouponRecord &coupon) {
    if (coupon.get("joint") != "groove" || coupon.get("joint-form") != "butt") return "";
    for (const char *field : {"fillet-size", "throat", "leg"})
        if (const std::string size = coupon.get(field); !size.empty())
            return std::string(field) + " " + size + ", joint groove, joint-form butt";
    return "";
}

} // namespace beadbook
