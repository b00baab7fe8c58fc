// What is due, and by which day.
#include "criteria/weld_words.hpp"
#include "facts/coupon_weld.hpp"
#include "operations/standing.hpp"

#include <algorithm>
#include <map>

namespace beadbook {
namespace {

void take_next(DueList &due, Day by, const std::string &of) {
    if (due.next && *due.next <= by) return;
    due.next = by;
    due.next_of = of;
}

/// A renewal takes coupons of its process, welded since it lapsed.
bool may_go_by(const DueQualification &due, const CouponRecord &test) {
    const auto welds = welds_of(test);
    const bool same = std::any_of(welds.begin(), welds.end(), [&](const Weld &weld) {
        return same_process(weld.word(Trait::process), due.held.weld.word(Trait::process));
    });
    return same && (due.to_do != ToDo::renew || parse_day(test.get("welded")) > *due.held.validity.until);
}

/// Of what asks for coupons, which of the welder's are on record, graded passed by the same rules, and
/// nothing rests on them yet. Whether one is enough is asked when it is given.
void take_coupons_at_hand(Office &office, DueList &due) {
    std::map<std::string, std::vector<WelderStanding::ToQualify>> by_mark;
    for (auto &one : due.items) {
        if (one.to_do == ToDo::use || one.to_do == ToDo::settle) continue;
        const std::string &mark = one.held.mark;
        if (!by_mark.contains(mark)) by_mark[mark] = standing_of(office, mark, due.on).to_qualify;
        for (const auto &test : by_mark[mark])
            if (std::find(test.rules.begin(), test.rules.end(), one.held.rules->name) != test.rules.end() &&
                may_go_by(one, office.coupon(test.coupon).record))
                one.at_hand.push_back(test.coupon);
    }
}

} // namespace

DueList due(Office &office, int days, std::optional<Day> on) {
    if (days < 0 || days > 36'500) throw refused("days: 0 to 36500 can be looked ahead").at("days");
    DueList out;
    out.on = on.value_or(office.outside().today());
    out.through = out.on + std::chrono::days{days};
    for (auto &standing : standing_of_all(office, out.on))
        for (auto &held : standing.held) {
            const auto step = next_step(held);
            if (!step) continue;
            if (step->by.value_or(out.on) > out.through) {
                take_next(out, *step->by, title_of(held) + " of " + held.mark);
                continue;
            }
            const auto left = (step->by.value_or(out.on) - out.on).count();
            out.items.push_back({*step, std::move(held), left});
        }
    std::stable_sort(out.items.begin(), out.items.end(),
                     [](const auto &a, const auto &b) { return a.days_left < b.days_left; });
    take_coupons_at_hand(office, out);
    for (auto &one : endings(office, out.on, Day::max()))
        if (one.by > out.through)
            take_next(out, one.by, one.subject);
        else
            out.endings.push_back(std::move(one));
    return out;
}

} // namespace beadbook
