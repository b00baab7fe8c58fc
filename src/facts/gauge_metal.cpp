#include "facts/gauge_metal.hpp"

#include "criteria/nominal_size.hpp"
#include "measure/text.hpp"

namespace beadbook {
namespace {

/// The kind of metal that a text names: stainless before steel, as it is called that too. Empty: none of
/// those that have gauges of their own.
std::string_view metal_in(std::string_view text) {
    const std::string words = lowered(text);
    for (const std::string_view metal : {"alumin", "stainless", "steel", "galvani"})
        if (words.find(metal) != std::string::npos) return metal == "galvani" ? "steel" : metal;
    return "";
}

} // namespace

std::string gauge_of_another_metal(const CouponRecord &coupon) {
    const std::string material = coupon.get("material");
    const std::string_view own = metal_in(material);
    for (const char *field : {"thickness", "thickness-2"}) {
        const std::string size = coupon.get(field);
        const std::string_view called = size_and_name(size).second, of = metal_in(called);
        if (!own.empty() && !of.empty() && of != own)
            return std::string(called) + ", material " + shown(material);
    }
    return "";
}

} // namespace beadbook
