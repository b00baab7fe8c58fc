#include "operations/unmeasured_fillet.hpp"

#include "criteria/vocabulary.hpp"

namespace beadbook {

std::string unmeasured_fillet(const CriteriaSet &set, const CouponState &coupon) {
    if (coupon.record.get("joint") != "fillet") return "";
    const Vocabulary &vocabulary = Vocabulary::shipped();
    const auto fillet_size = vocabulary.find("fillet size"), throat = vocabulary.find("throat");
    for (const auto &find : coupon.indications)
        if (find.type == fillet_size || find.type == throat) return "";
    const std::string drawing = coupon.record.get("fillet-size");
    return "nobody measured the size of the fillet" +
           (drawing.empty() ? "" : " (" + drawing + " on the drawing)") + ", and " + set.name +
           " asks for no measurement of it";
}

} // namespace beadbook
