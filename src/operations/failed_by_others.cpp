#include "operations/failed_by_others.hpp"

#include "operations/failed_by.hpp"
#include "records/codecs/facts.hpp"
#include "records/codecs/typed.hpp"

#include <set>
#include <utility>

namespace beadbook {
namespace {

using ByWhat = std::pair<std::string, std::string>; // name of the criteria, class

ByWhat graded_by(const CouponState &graded) {
    const StoredVerdict *on = graded.graded_on();
    return {on ? on->set : "", graded.grade->class_id};
}

} // namespace

std::optional<CouponState> failed_by_others(Office &office, const std::vector<Entry> &history,
                                            const CouponState &coupon) {
    const ByWhat passed_by = graded_by(coupon);
    for (auto &then : graded_failed(office, history))
        if (graded_by(then) != passed_by) return std::move(then);
    std::set<ByWhat> asked{passed_by};
    for (const auto &entry : history) {
        if (entry.kind != "coupon" || is_withdrawal(entry)) continue;
        CouponState by = coupon;
        by.grade.reset();
        const CouponRecord said = codec::coupon_from(codec::parsed(entry.body));
        for (const char *field : {"criteria", "class"}) {
            by.record.fields.erase(field);
            if (!said.get(field).empty()) by.record.set(field, said.get(field));
        }
        const auto set = office.criteria_or_none(said.get("criteria"));
        if (!set || !asked.insert({set->name, said.get("class")}).second) continue;
        if (const auto judged = judged_now(office, by); judged && judged->verdict == Verdict::reject)
            return by;
    }
    return std::nullopt;
}

} // namespace beadbook
