#include "operations/unmeasured_fillet.hpp"

#include "criteria/vocabulary.hpp"

#include <algorithm>

namespace beadbook {

std::string unmeasured_fillet(const CriteriaSet &set, const CouponState &coupon) {
    if (coupon.record.get("joint") != "fillet") return "";
    const Vocabulary &vocabulary = Vocabulary::shipped();
    std::vector<TypeId> sizes;
    for (const char *name : {"fillet size", "throat", "insufficient throat"})
        if (const auto type = vocabulary.find(name)) sizes.push_back(*type);
    const bool judged = std::any_of(set.rules.begin(), set.rules.end(), [&](const Rule &rule) {
        return std::any_of(sizes.begin(), sizes.end(), [&](TypeId type) { return rule.subject.types[type]; });
    });
    const bool measured =
        std::any_of(coupon.indications.begin(), coupon.indications.end(), [&](const IndicationRecord &find) {
            return std::find(sizes.begin(), sizes.end(), find.type) != sizes.end();
        });
    if (judged || measured) return "";
    const std::string drawing = coupon.record.get("fillet-size");
    return "nobody measured the size of the fillet" +
           (drawing.empty() ? "" : " (" + drawing + " on the drawing)") + ", and " + set.name +
           " judges none";
}

} // namespace beadbook
