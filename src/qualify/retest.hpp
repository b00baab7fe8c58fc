#pragma once

#include "qualify/range_rules.hpp"

#include <map>
#include <vector>

namespace beadbook {

/// One thing on the way to a qualification: a test of one kind that was graded, or training of the welder.
struct Attempt {
    enum class Kind : std::uint8_t { passed, failed, trained };
    Kind kind = Kind::passed;
    Day day;
    std::string coupon;   ///< of a test
    bool settled = false; ///< it qualified its welder by these rules, so that its test is done with
    std::optional<Day> entered = {}; ///< of training that was entered after the retest was welded: when
    std::optional<Day> seen = {};    ///< of one that failed: when that was seen; absent: on its day
};

/// The failure that a retest goes back to, and the training since.
struct AfterFailure {
    std::string coupon;
    Day failed{};
    std::vector<Day> trained;
    std::map<Day, Day> late = {}; ///< training that was entered after the retest was welded: when
};

/// What the retest rules ask after these attempts, oldest first.
struct RetestState {
    int needed = 1;                    ///< passed coupons of this kind until the test counts
    std::vector<std::string> passed;   ///< those that count so far
    std::vector<std::string> failed;   ///< coupons of the round, as long as no training followed
    Authority from;                    ///< of `needed`, if a test had failed
    std::optional<AfterFailure> after; ///< absent if none failed
    bool known = true;                 ///< the rules say what is asked after it
    bool training_first = false;       ///< too many failed: nothing satisfies it until the welder was trained
    bool satisfied() const { return known && !training_first && static_cast<int>(passed.size()) >= needed; }
};

/// Immediate retest: so many coupons for each that failed, and one more failure begins anew, or is one too
/// many until the welder was trained (failures of one day are one); after training, from the day on that
/// follows the one on which the failures before it were seen: the number for a full test. Where the rules say
/// nothing of a failure, nothing satisfies the test until a person settles it; training that they say nothing
/// of changes nothing. When a test is satisfied the next attempt begins a new one.
RetestState retest_state(const RetestRules &rules, const std::vector<Attempt> &attempts);

} // namespace beadbook
