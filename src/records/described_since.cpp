#include "records/described_since.hpp"

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

} // namespace beadbook
