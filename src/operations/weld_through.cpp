#include "operations/weld_through.hpp"

#include "measure/refusal.hpp"
#include "measure/text.hpp"

namespace beadbook {

bool may_be_butt(const CouponRecord &coupon) {
    const std::string form = coupon.get("joint-form");
    return coupon.get("joint") == "groove" && (form.empty() || form == "butt");
}

std::string thinner_text(const CouponRecord &coupon) {
    const CouponValue *out = nullptr;
    for (const char *name : {"thickness", "thickness-2"})
        if (const auto at = coupon.fields.find(name); at != coupon.fields.end())
            if (!out || at->second.value < out->value) out = &at->second;
    return out ? out->text : "";
}

bool says_through(const std::map<std::string, std::string> &fields) {
    const auto weld = fields.find("weld-thickness");
    return weld != fields.end() && trimmed(weld->second) == "full";
}

std::string through_thickness(const CouponRecord &coupon) {
    if (!may_be_butt(coupon))
        throw refused("weld-thickness full: only of a groove weld in a butt it is the thinner member")
            .at("weld-thickness");
    std::string out = thinner_text(coupon);
    if (out.empty())
        throw refused("weld-thickness full: the thickness of the members is not known").at("weld-thickness");
    if (coupon.get("thickness").empty())
        throw refused("weld-thickness full: thickness-2 is " + out +
                      ", and the other member may be thinner; which thickness has it?")
            .give("thickness");
    return out;
}

void take_weld_along(const CouponRecord &before, const std::map<std::string, std::string> &given,
                     CouponRecord &now) {
    const bool like = before.id != now.id;
    const std::string of = like ? " as of coupon " + before.id : "";
    const auto weld = now.fields.find("weld-thickness");
    if (weld == now.fields.end() || given.contains("weld-thickness")) return;
    const auto was = before.facts().values, is = now.facts().values;
    if (!was.has(Quantity::thinner) || weld->second.value != was[Quantity::thinner]) return;
    if (may_be_butt(before) && !may_be_butt(now)) {
        if (like) return void(now.fields.erase(weld));
        throw refused("weld-thickness is " + weld->second.text +
                      ", which was the thickness of the thinner member of a butt, and the joint is none now; "
                      "say it again: its own measure")
            .give("weld-thickness");
    }
    if (!is.has(Quantity::thinner) || was[Quantity::thinner] == is[Quantity::thinner]) return;
    throw refused("weld-thickness is " + weld->second.text + of +
                  ", which was the thickness of the thinner member, and that is " +
                  (like ? "another here; say it: " : "another now; say it again: ") +
                  "full if the butt is welded through, else its own measure")
        .give("weld-thickness", "full");
}

} // namespace beadbook
