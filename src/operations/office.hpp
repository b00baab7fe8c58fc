#pragma once

#include "operations/catalogue.hpp"
#include "operations/done.hpp"
#include "records/book.hpp"

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
    /// Tells of one exam why it was not valid, or cannot be said to be.
    void check_exam_of(const CouponRecord &coupon, ExamRecord &exam);

private:
    Book &book_;
    Catalogue &catalogue_;
};

} // namespace beadbook
