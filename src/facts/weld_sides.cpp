#include "facts/weld_sides.hpp"

#include "measure/text.hpp"

namespace beadbook {
namespace {

/// The sides that a word for the backing tells: "one", "both" or empty.
std::string_view sides_by_backing(std::string_view word) {
    const std::string low = lowered(word);
    if (low == "bs" || low.starts_with("ds ")) return "both";
    if (low.starts_with("backgoug") || low.starts_with("back goug") || low.starts_with("back-goug"))
        return "both";
    return low.starts_with("ss ") ? "one" : "";
}

std::string first_backing_of(const CouponRecord &coupon) {
    return parts_of_several(coupon.get("backing")).front();
}

} // namespace

std::string backing_of_other_sides(const CouponRecord &coupon) {
    const std::string sides = coupon.get("sides");
    const std::string_view told = sides_by_backing(first_backing_of(coupon));
    if (sides.empty() || told.empty() || told == sides) return "";
    return "backing " + shown(coupon.get("backing")) + ", sides " + sides;
}

std::string sides_of_closed(const CouponRecord &coupon) {
    if (coupon.get("inside") != "closed") return "";
    if (coupon.get("sides") == "both") return "sides both, inside closed";
    if (sides_by_backing(first_backing_of(coupon)) == "both")
        return "backing " + shown(coupon.get("backing")) + ", inside closed";
    return "";
}

} // namespace beadbook
