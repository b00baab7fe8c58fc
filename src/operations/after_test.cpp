#include "operations/after_test.hpp"

namespace beadbook {

std::map<std::string, AfterTest> after_tests(Office &office, const std::string &mark) {
    std::map<std::string, AfterTest> out;
    if (!office.book().knows_welder(mark)) return out;
    const WelderState welder = office.book().welder(mark);
    const Day today = office.outside().today();
    const GradedTests tests(office, welder);
    for (auto &[coupon, next] : next_retests(office, tests, welder, today)) {
        AfterTest &after = out[coupon];
        after.next = std::move(next);
        if (const auto *test = tests.find(coupon)) after.failed_by = test->failed_by;
    }
    const auto held = held_by(office, welder, today);
    for (const auto &coupon : office.book().coupons_of(mark))
        for (const auto &one : held)
            if (rests_on(one, coupon) && (one.validity.state == Validity::State::in_doubt ||
                                          one.validity.state == Validity::State::unproved))
                out[coupon].unsettled.push_back(one);
    return out;
}

} // namespace beadbook
