#include "operations/unjudged_finds.hpp"

#include "criteria/vocabulary.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// By the last time that it was judged, as it stands since.
bool was_accepted(const CouponState &coupon) {
    if (coupon.verdicts.empty()) return false;
    const StoredVerdict &last = coupon.verdicts.back();
    const std::string &sought = coupon.record.get("class");
    return !coupon.changed_after(last.seq) && !last.classes.empty() &&
           std::all_of(last.classes.begin(), last.classes.end(), [&](const StoredVerdict::Class &one) {
               return one.verdict == name_of(Verdict::accept) || (!sought.empty() && one.id != sought);
           });
}

} // namespace

std::vector<std::string> unjudged_finds(const CouponState &coupon, const std::optional<JudgedNow> &now) {
    std::vector<std::string> out;
    if (now || coupon.grade || was_accepted(coupon)) return out;
    for (const auto &find : coupon.indications)
        if (const std::string &type = Vocabulary::shipped()[find.type].name;
            std::find(out.begin(), out.end(), type) == out.end())
            out.push_back(type);
    return out;
}

} // namespace beadbook
