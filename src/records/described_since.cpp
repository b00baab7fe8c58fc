#include "records/described_since.hpp"

#include "records/codecs/facts.hpp"
#include "records/codecs/typed.hpp"

namespace beadbook {

std::vector<DescribedSince> described_since(const std::vector<Entry> &history, std::int64_t entry) {
    std::vector<DescribedSince> out;
    for (const auto &e : history) {
        if (e.kind != "coupon" || e.seq <= entry || is_withdrawal(e) || !e.supersedes) continue;
        DescribedSince one{changed_values(history, e), e.reason, stamp_of(e)};
        if (!one.values.empty()) out.push_back(std::move(one));
    }
    return out;
}

std::vector<ChangedValue> said_otherwise_since(const std::vector<Entry> &history, std::int64_t entry) {
    std::optional<CouponRecord> then, now;
    for (const auto &e : history) {
        if (e.kind != "coupon" || is_withdrawal(e)) continue;
        now = codec::coupon_from(codec::parsed(e.body));
        if (e.seq <= entry) then = now;
    }
    std::vector<ChangedValue> out;
    if (!then) return out;
    for (const auto &field : coupon_fields())
        if (then->get(field.name) != now->get(field.name))
            out.push_back({field.name, then->get(field.name), now->get(field.name)});
    return out;
}

} // namespace beadbook
