#pragma once

#include "operations/selecting.hpp"

namespace beadbook {

/// A class at a glance: a line each learner, a column each kind of coupon.
struct Board {
    using Cell = Newest::One;
    struct Line {
        std::string welder, name;             ///< no mark: coupons that name no welder; the name if enrolled
        std::vector<std::vector<Cell>> cells; ///< by kind, each in the order of registration
    };
    std::vector<std::string> kinds; ///< "groove plate 3G SMAW, 1890 class 2", in the order they came first
    std::vector<Line> lines;        ///< by mark, those without one last
    std::size_t coupons = 0;
    std::size_t to_grade = 0;  ///< that have no grade, or one to be given again
    std::size_t withdrawn = 0; ///< among all
    bool more = false;         ///< older ones are as asked for too, and left out
};

/// The newest coupons that are asked for, at most so many. Throws Refusal as select does.
Board board_of(Office &office, const Selection &of, std::size_t most);

/// The coupons before and after one in the order of registration, of those that are asked for; whether that
/// one is itself asked for is all the same. Empty: there is none. Throws DataError: no such coupon.
struct Neighbours {
    std::string before, after;
};
Neighbours neighbours_of(Office &office, const Selection &of, const std::string &mark);

} // namespace beadbook
