#include "operations/due_coupons.hpp"

#include "measure/text.hpp"

#include <algorithm>
#include <map>

namespace beadbook {

std::vector<std::string> coupons_for_due(Office &office, const DueList &due) {
    std::map<std::string, std::vector<WelderStanding::ToQualify>> by_mark;
    std::vector<std::string> out;
    for (const auto &one : due.items) {
        if (one.to_do == ToDo::use || one.to_do == ToDo::settle) continue;
        const std::string &mark = one.held.mark;
        if (!by_mark.contains(mark)) by_mark[mark] = standing_of(office, mark, due.on).to_qualify;
        std::vector<std::string> coupons;
        for (const auto &test : by_mark[mark])
            if (std::find(test.rules.begin(), test.rules.end(), one.held.rules->name) != test.rules.end())
                coupons.push_back(test.coupon);
        if (coupons.empty()) continue;
        const bool single = coupons.size() == 1;
        out.push_back((single ? "coupon " : "coupons ") + listed(coupons) + " of " + mark +
                      (single ? " is" : " are") + " on record, graded passed, and nothing rests on " +
                      (single ? "it" : "them") + " yet: see whether " + (single ? "it is" : "they are") +
                      " meant for " + title_of(one.held));
    }
    return out;
}

} // namespace beadbook
