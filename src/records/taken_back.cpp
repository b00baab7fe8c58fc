#include "records/taken_back.hpp"

#include "facts/log_line.hpp"
#include "records/codecs/facts.hpp"
#include "records/codecs/typed.hpp"

#include <algorithm>

namespace beadbook {

std::vector<TakenBack> finds_taken_back(const std::vector<Entry> &history, const CouponRecord &coupon) {
    const WeldLine line = coupon.facts().line;
    const auto read = [&](const Entry &e) -> std::string {
        try {
            return print_log_line(codec::indication_from(codec::parsed(e.body), line, coupon.unit()));
        } catch (const DataError &) {
            return "a find that cannot be read on the weld as it is described now";
        }
    };
    std::vector<TakenBack> out;
    for (const auto &e : history) {
        if (e.kind != "indication" || !e.supersedes || moved_to(e)) continue;
        const auto old = std::find_if(history.begin(), history.end(),
                                      [&](const Entry &one) { return one.seq == *e.supersedes; });
        if (old == history.end() || is_withdrawal(*old)) continue;
        TakenBack one{
            e.number.value_or(0), read(*old), is_withdrawal(e) ? "" : read(e), e.reason, {e.at, e.who}};
        if (one.was != one.now) out.push_back(std::move(one));
    }
    return out;
}

} // namespace beadbook
