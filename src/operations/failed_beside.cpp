// Tests that failed on another record and do not stand on this one: told by others of their welder.
#include "measure/text.hpp"
#include "operations/graded_tests.hpp"
#include "operations/shops.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// A coupon that cannot be read is told as such, where it is the welder's.
std::vector<CarriedFact> carried_with(Office &office, const std::string &carrier) {
    try {
        return office.coupon(carrier).record.before;
    } catch (const Refusal &) {
        return {};
    }
}

} // namespace

void GradedTests::take_beside(Office &office, const WelderNames &welder) {
    std::map<std::string, Test> all, perhaps;
    for (const auto &[carrier, text] : office.book().failed_elsewhere()) {
        CouponRecord named;
        named.set("welder", text);
        if (!welded_as(office.book(), named, welder) && !may_be_welded_as(office.book(), named, welder))
            continue;
        const auto history = office.book().history(carrier);
        for (const auto &fact : carried_with(office, carrier)) {
            if (fact.kind != CarriedFact::Kind::failed_beside) continue;
            CouponRecord as;
            as.set_all(fact.as);
            if (as.get("welder") != text || stands_here(fact)) continue;
            const bool his = welded_as(office.book(), as, welder);
            as.id = told_of_elsewhere(fact.coupon);
            try {
                const auto welds = welds_named(as);
                Test &test = (his ? all : perhaps)[as.id];
                for (const auto &weld : welds)
                    if (std::find(test.welds.begin(), test.welds.end(), weld) == test.welds.end())
                        test.welds.push_back(weld);
                if (!fact.on.empty()) test.day = parse_day(fact.on);
                test.failed_by = fact.methods;
                // Who came before the last that tells of it was not entered in the knowledge of it.
                test.shown_by = std::max(test.shown_by, history.front().seq);
                test.coupon.record = as;
                if (std::find(test.described.begin(), test.described.end(), as) == test.described.end())
                    test.described.push_back(std::move(as));
            } catch (const Refusal &e) {
                unreadable_.emplace(as.id, Unreadable{e.what(), {}, as});
            }
        }
    }
    for (auto &[id, test] : all) tests_.push_back(std::move(test));
    for (auto &[id, test] : perhaps) perhaps_.push_back(std::move(test));
}

bool GradedTests::stands_here(const CarriedFact &failed) const {
    const auto is = [&](const Test &test) {
        return !test.passed_at_all() && test.coupon.record.id == failed.coupon &&
               failed.on == (test.day ? print(*test.day) : "");
    };
    return std::any_of(tests_.begin(), tests_.end(), is) ||
           std::any_of(perhaps_.begin(), perhaps_.end(), is) || unreadable_.contains(failed.coupon);
}

std::vector<CarriedFact> GradedTests::failures() const {
    std::vector<CarriedFact> out;
    const auto add = [&](const std::string &id, const CouponRecord &as) -> CarriedFact & {
        CarriedFact &fact = out.emplace_back();
        fact.kind = CarriedFact::Kind::failed_beside;
        fact.coupon = id;
        for (const auto &[name, value] : as.fields) fact.as.emplace(name, value.text);
        return fact;
    };
    const auto add_failed = [&](const Test &test) {
        for (const auto &as : test.described) {
            if (test.passed_at_all()) return;
            CarriedFact &fact = add(test.coupon.record.id, as);
            fact.methods = test.failed_by;
            if (test.day) fact.on = print(*test.day);
        }
    };
    for (const auto &test : tests_) add_failed(test);
    for (const auto &test : perhaps_) add_failed(test);
    for (const auto &[id, one] : unreadable_)
        if (one.as) add(id, *one.as);
    return out;
}

} // namespace beadbook
