#include "operations/said_by_welder.hpp"

#include "operations/vouching.hpp"

namespace beadbook {

std::vector<SaidByWelder> said_by_welder(Office &office, const CouponState &coupon,
                                         const std::string &welder) {
    std::vector<SaidByWelder> out;
    if (welder.empty()) return out;
    std::map<std::string, bool> asked; // few people enter much
    const auto take = [&](const std::string &who, const std::string &what) {
        const auto [at, fresh] = asked.emplace(who, false);
        if (fresh) at->second = is_welder(office, who, welder);
        if (at->second) out.push_back({who, what});
    };
    std::map<std::int64_t, const Entry *> standing;
    const auto history = office.book().history(coupon.record.id);
    for (const auto &e : history) {
        if (e.supersedes) standing.erase(*e.supersedes);
        if (e.kind == "indication") standing.emplace(e.seq, &e);
    }
    for (const auto &[seq, e] : standing)
        take(e->who, "entered what stands of #" + std::to_string(e->number.value_or(0)) + " (entry " +
                         std::to_string(seq) + ")");
    if (!coupon.record.get("mechanical").empty())
        take(coupon.mechanical_said.who, "said what its mechanical tests came to");
    return out;
}

} // namespace beadbook
