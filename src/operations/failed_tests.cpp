#include "operations/failed_tests.hpp"

#include "operations/failed_by.hpp"
#include "operations/next_retest.hpp"

namespace beadbook {

std::vector<WelderStanding::Failed> failed_tests(Office &office, const GradedTests &tests,
                                                 const WelderState &welder, Day on) {
    std::vector<WelderStanding::Failed> out;
    auto next = next_retests(office, tests, welder, on);
    for (const auto &test : tests.all()) {
        const CouponRecord &record = test.coupon.record;
        if (test.day && *test.day > on) continue;
        WelderStanding::Failed one{record.id, record.get("process"), test.day, test.failed_by};
        if (!test.passed_at_all()) {
            one.next = std::move(next[record.id]);
        } else {
            const Grade &grade = *test.coupon.grade;
            if (!grade.after_fail) continue;
            one.by = failed_by(office, office.book().history(record.id), test.coupon, false).methods;
            one.passed_since = grade.stamp.who + (grade.remark.empty() ? "" : ": " + grade.remark);
        }
        out.push_back(std::move(one));
    }
    return out;
}

} // namespace beadbook
