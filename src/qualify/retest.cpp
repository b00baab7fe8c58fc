#include "qualify/retest.hpp"

namespace beadbook {

RetestState retest_state(const RetestRules &rules, const std::vector<Attempt> &attempts) {
    RetestState state;
    int failed = 0; // coupons of the round that failed
    for (const auto &attempt : attempts) {
        // A test that was satisfied is done with; what follows is a new one.
        if (state.satisfied()) {
            state = {};
            failed = 0;
        }
        switch (attempt.kind) {
        case Attempt::Kind::passed: state.passed.push_back(attempt.coupon); break;
        case Attempt::Kind::failed:
            // A failure after a pass ends that retest; failures in a row belong to one round.
            failed = state.passed.empty() ? failed + 1 : 1;
            state.passed.clear();
            if (rules.immediate) {
                state.needed = failed * rules.immediate->coupons;
                state.from = rules.immediate->from;
            }
            state.why = "coupon " + attempt.coupon + " failed on " + print(attempt.day);
            break;
        case Attempt::Kind::trained:
            if (failed == 0) break;
            failed = 0;
            state.passed.clear();
            state.needed = rules.after_training ? rules.after_training->coupons : 1;
            if (rules.after_training) state.from = rules.after_training->from;
            state.why += ", training on " + print(attempt.day);
            break;
        }
    }
    return state;
}

} // namespace beadbook
