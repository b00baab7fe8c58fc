#include "operations/next_coupon.hpp"

#include "operations/marks.hpp"

namespace beadbook {

CouponRecord weld_alone(CouponRecord coupon) {
    for (const char *field : {"welder", "cohort", "welded", "mechanical"}) coupon.fields.erase(field);
    coupon.withdrawn.clear();
    return coupon;
}

NextCoupon next_coupon(Office &office) {
    const auto marks = office.book().coupons();
    if (marks.empty()) return {};
    NextCoupon out{next_mark(marks.back()), office.book().coupon(marks.back()).record};
    while (!out.mark.empty() && office.book().knows_coupon(out.mark)) out.mark = next_mark(out.mark);
    // A class is welded in a row: the cohort is the same more often than not.
    const auto cohort = out.like.fields.find("cohort");
    const bool known = cohort != out.like.fields.end();
    const CouponValue value = known ? cohort->second : CouponValue{};
    out.like = weld_alone(std::move(out.like));
    // Measured at each weld: nobody has looked at this one's yet.
    for (const char *measured : {"weld-thickness", "bead-thickness"}) out.like.fields.erase(measured);
    if (known) out.like.fields.emplace("cohort", value);
    return out;
}

} // namespace beadbook
