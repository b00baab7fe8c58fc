#include "operations/looking.hpp"

#include "operations/mechanical.hpp"
#include "operations/owners_copy.hpp"
#include "operations/registered_like.hpp"
#include "operations/selecting.hpp"
#include "operations/welder_names.hpp"

namespace beadbook {

std::vector<CouponLine> list_coupons(const Shops &shops, const Selection &of) {
    std::vector<CouponLine> out;
    select(shops, of, [&](CouponAtHand &one) { out.push_back(one.line()); });
    return out;
}

CouponSheet show_coupon(Office &office, const std::string &mark) {
    const Ledger::Moment moment(office.ledger());
    CouponSheet out{office.coupon(mark), {}, {}};
    out.welder_name = welder_name(office.book(), out.coupon.record.get("welder"));
    out.grade_standing = standing_of_grade(office, out.coupon);
    for (const auto &verdict : out.coupon.verdicts)
        if (older_than_filled(office, verdict)) out.older_than_filled.push_back(verdict.seq);
    const auto history = office.book().history(mark);
    out.taken_back = taken_back(office, out.coupon.record);
    out.described_since = described_after(history, out.coupon);
    out.said_before_correction = said_before_correction(office, out.coupon.record);
    out.mechanical_asked_by = lacking_mechanical(office.catalogue(), out.coupon.record);
    const std::string welder = out.coupon.record.get("welder");
    if (welder.empty() || !office.book().knows_welder(welder)) return out;
    for (auto &held : held_by(office, welder, office.outside().today()))
        if (rests_on(held, mark)) out.qualified.push_back(std::move(held));
    return out;
}

std::vector<Entry> history_of_coupon(Office &office, const std::string &mark) {
    if (!office.book().knows_coupon(mark) && office.book().knows_welder(mark))
        throw refused("there is no coupon '" + mark + "'; it is the mark of a welder")
            .mend({"history", {mark}, {"welder"}});
    return office.book().history(mark);
}

std::vector<Entry> history_of_welder(Office &office, const std::string &mark) {
    if (!office.book().knows_welder(mark) && office.book().knows_coupon(mark))
        throw refused("there is no welder '" + mark + "'; it is the mark of a coupon")
            .mend({"history", {mark}, {}});
    return office.book().welder_history(mark);
}

} // namespace beadbook
