#include "operations/weld_day.hpp"

#include "records/codecs/facts.hpp"
#include "records/codecs/typed.hpp"

#include <algorithm>

namespace beadbook {

std::optional<Day> earliest_weld_day(const std::vector<Entry> &history) {
    std::optional<Day> out;
    std::string welded;
    bool known = false;
    for (const auto &entry : history) {
        if (is_withdrawal(entry)) continue;
        if (entry.kind == "coupon") {
            const CouponRecord said = codec::coupon_from(codec::parsed(entry.body));
            welded = said.get("welded");
            for (const auto &one : said.before)
                if (one.kind == CarriedFact::Kind::welded)
                    out = std::min(out.value_or(parse_day(one.on)), parse_day(one.on));
        }
        known = known || entry.kind == "grade" || entry.kind == "verdict" ||
                (entry.kind == "exam" && codec::exam_from(codec::parsed(entry.body)).finished);
        if (!known || welded.empty()) continue;
        const Day day = parse_day(welded);
        out = std::min(out.value_or(day), day);
    }
    return out;
}

} // namespace beadbook
