#pragma once

#include "operations/catalogue.hpp"
#include "operations/done.hpp"
#include "records/book.hpp"
#include "technique/exam_check.hpp"

namespace beadbook {

/// What reading operations take: the record, the catalogue and the world outside.
class Office {
public:
    Office(Book &book, Catalogue &catalogue) : book_(book), catalogue_(catalogue) {}

    Book &book() { return book_; }
    Ledger &ledger() { return book_.ledger(); }
    Catalogue &catalogue() { return catalogue_; }
    const Outside &outside() const { return catalogue_.outside(); }

    /// A coupon as it stands (or stood before an entry), its exams held against their practices by the texts
    /// that were kept with them. Throws DataError if there is none.
    CouponState coupon(const std::string &id, std::optional<std::int64_t> before = {});
    /// Tells of an exam of the coupon why it does not count: open, finished with another number of finds than
    /// are on record, by nobody who may judge alone, or not valid by its practice.
    void check_exam_of(const CouponState &coupon, ExamRecord &exam);
    /// Only the last of these: whether it was valid by its practice. Engines before the fourth took no notice
    /// of its gaps.
    void check_practice_of(const CouponState &coupon, ExamRecord &exam, Gaps gaps = Gaps::bear);

private:
    Book &book_;
    Catalogue &catalogue_;
};

} // namespace beadbook
