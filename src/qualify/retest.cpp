#include "qualify/retest.hpp"

#include <algorithm>

namespace beadbook {

RetestState retest_state(const RetestRules &rules, const std::vector<Attempt> &attempts) {
    RetestState state;
    int failed = 0; // coupons of the round that failed
    int times = 0;  // days on which coupons failed since the test began or the welder was trained
    bool settled = false;
    std::optional<Day> seen; // when all that failed since the test began was seen
    for (const auto &attempt : attempts) {
        // A test that was satisfied is done with; what follows is a new one.
        if (state.satisfied() || settled) {
            state = {};
            failed = 0;
            times = 0;
            seen.reset();
        }
        settled = attempt.settled;
        switch (attempt.kind) {
        case Attempt::Kind::passed: state.passed.push_back(attempt.coupon); break;
        case Attempt::Kind::failed:
            // A failure after a pass ends that retest; failures in a row belong to one round.
            if (!state.passed.empty()) {
                failed = 0;
                state.failed.clear();
            }
            ++failed;
            seen = std::max(seen.value_or(attempt.day), attempt.seen.value_or(attempt.day));
            if (times == 0 || !state.after || state.after->failed != attempt.day) ++times;
            state.training_first = rules.times > 0 && times > rules.times;
            state.passed.clear();
            state.failed.push_back(attempt.coupon);
            state.known = rules.immediate.has_value();
            if (rules.immediate) {
                state.needed = failed * rules.immediate->coupons;
                state.from = rules.immediate->from;
            }
            state.after = AfterFailure{attempt.coupon, attempt.day, {}};
            break;
        case Attempt::Kind::trained:
            if (failed == 0 || !rules.after_training || attempt.day <= *seen) break;
            failed = 0;
            times = 0;
            state.training_first = false;
            state.passed.clear();
            state.failed.clear();
            state.known = true;
            state.needed = rules.after_training->coupons;
            state.from = rules.after_training->from;
            state.after->trained.push_back(attempt.day);
            if (attempt.entered) state.after->late[attempt.day] = *attempt.entered;
            break;
        }
    }
    return state;
}

} // namespace beadbook
