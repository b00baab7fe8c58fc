#include "records/described_since.hpp"

#include "records/codecs/facts.hpp"
#include "records/codecs/typed.hpp"

#include <map>

namespace beadbook {

std::vector<DescribedSince> described_since(const std::vector<Entry> &history, std::int64_t entry) {
    std::vector<DescribedSince> out;
    std::map<std::string, ChangedValue> in_all;
    for (const auto &e : history) {
        if (e.kind != "coupon" || e.seq <= entry || is_withdrawal(e) || !e.supersedes) continue;
        out.push_back({changed_values(history, e), e.reason, stamp_of(e)});
        for (const auto &value : out.back().values)
            in_all.emplace(value.name, value).first->second.now = value.now;
    }
    for (auto &one : out)
        std::erase_if(one.values, [&](const ChangedValue &value) {
            return in_all.at(value.name).before == in_all.at(value.name).now;
        });
    std::erase_if(out, [](const DescribedSince &one) { return one.values.empty(); });
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
