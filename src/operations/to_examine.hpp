#pragma once

#include "operations/office.hpp"
#include "operations/required_exams.hpp"

#include <map>
#include <mutex>

namespace beadbook {

class CouponAtHand;

/// A coupon that somebody still has to examine.
struct ToExamine {
    CouponRecord coupon;
    std::vector<ExamRecord> open; ///< begun and not finished
    std::vector<AskedExam>
        missing; ///< required by its criteria or called for, and not done so that it counts
    /// On the board: all that is asked was done, nobody graded it, and the class sought is still cannot say.
    bool unsaid = false;
    bool nothing_asked = false; ///< nothing says which exams it needs, and it has none
    bool mine = false;          ///< one of the open ones is by the person who asks
    /// Methods of which an exam may be begun: of what is missing each choice, unless one of them is open.
    std::vector<std::string> to_begin() const;
};

/// What a coupon still needs, as `person` sees it; nothing if it is withdrawn or needs nothing more.
std::optional<ToExamine> to_examine(Office &office, const CouponState &coupon, const std::string &person);

/// The exam that a coupon needs first, by its set in any class where it names none: VT where that is asked,
/// or nothing is.
std::string first_exam(Office &office, const CouponState &coupon);

struct ExamsToDo {
    std::vector<ToExamine>
        coupons;         ///< those of the person first, then those with an open exam, then the rest
    std::size_t all = 0; ///< how many there are, shown or not
};

/// What waits on the whole record, kept from one look to the next: a coupon is looked at again only after
/// something was written about it. For many threads, and one record.
class ExamBoard {
public:
    /// As it stands now, at most so many.
    ExamsToDo look(Office &office, const std::string &person, std::size_t most);

private:
    void take(Office &office, CouponAtHand &one);

    std::mutex mutex_;
    std::int64_t seen_ = 0;                    ///< newest entry that it knows
    std::map<std::string, std::size_t> order_; ///< of registration
    std::map<std::size_t, ToExamine> waiting_; ///< by that order
};

/// The next coupon after this one, in the order of registration, that needs an exam by the method: one that
/// `person` has open there, or one to begin. Looks at the next hundred, and does not begin again.
struct NextToExamine {
    std::string mark;
    int exam = 0; ///< the open one; 0: to be begun
};
std::optional<NextToExamine> next_to_examine(Office &office, const std::string &after, Exam method,
                                             const std::string &person);

/// The open exams by the same method and examiner on the coupons before and after it on the board: where a
/// stack is examined together, one goes from one to the next.
struct OpenBeside {
    std::optional<NextToExamine> before, after;
};
OpenBeside open_beside(const ExamsToDo &board, const std::string &mark, const ExamRecord &exam);

} // namespace beadbook
