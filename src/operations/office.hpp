#pragma once

#include "operations/catalogue.hpp"
#include "operations/done.hpp"
#include "operations/welder_names.hpp"
#include "records/book.hpp"
#include "records/remembered.hpp"
#include "technique/exam_check.hpp"

namespace beadbook {

/// What reading operations take: the record, the catalogue and the world outside.
class Office {
public:
    Office(Book &book, Catalogue &catalogue) : book_(book), catalogue_(catalogue) {}

    Book &book() { return book_; }
    Ledger &ledger() { return book_.ledger(); }
    Catalogue &catalogue() { return catalogue_; }
    /// A set as the shop judges by it: with the blanks that the record fills and the limits that it confirms.
    std::shared_ptr<const CriteriaSet> criteria(const std::string &name) {
        return with_copy(catalogue_.criteria(name));
    }
    /// The same; null where the name means none that anybody can read. Throws StoreError.
    std::shared_ptr<const CriteriaSet> criteria_or_none(const std::string &name);
    /// The same of a set at hand, one by a kept text say; null stays null.
    std::shared_ptr<const CriteriaSet> with_copy(std::shared_ptr<const CriteriaSet> set);
    const Outside &outside() const { return catalogue_.outside(); }

    /// A coupon as it stands (or stood before an entry), its exams held against their practices by the texts
    /// that were kept with them. Throws DataError if there is none.
    CouponState coupon(const std::string &id, std::optional<std::int64_t> before = {});
    /// Tells of an exam of the coupon why it does not count: open, finished with another number of finds than
    /// are on record, by nobody who may judge alone, or not valid by its practice.
    void check_exam_of(const CouponState &coupon, ExamRecord &exam);
    /// Only by whom, with what and on which metal it was done, as the record stands or stood before an entry
    /// (operations/exam_means.hpp). Engines before the tenth asked less.
    void check_means_of(const CouponRecord &coupon, ExamRecord &exam,
                        std::optional<std::int64_t> before = {});
    /// Only the last of these: whether it was valid by its practice. Engines before the fourth took no notice
    /// of its gaps.
    void check_practice_of(const CouponState &coupon, ExamRecord &exam, Gaps gaps = Gaps::bear);

    /// Whether a person is a welder, by all names that either ever had, or may be taken for him
    /// (operations/vouching.hpp).
    struct AsWelder {
        bool is = false;
        std::string taken_for; ///< the welder's name that somebody may take the person's for
    };
    const AsWelder &as_welder(const std::string &person, const std::string &welder);
    /// The enrolled welder who it is, if the record knows somebody by that name or mark as a welder alone;
    /// else empty.
    const std::string &welder_alone(const std::string &person);

    /// What coupons call their welder, or once did, and is the mark of nobody who is enrolled.
    const std::vector<WelderText> &welders_by_no_mark();

private:
    static constexpr auto no_coupon = Ledger::About::no_coupon;
    /// By the hash of the text.
    Remembered<std::string, std::shared_ptr<const CriteriaSet>, 200, no_coupon> with_copy_;
    Remembered<std::pair<std::string, std::optional<std::int64_t>>, CouponState> coupons_;
    Remembered<std::pair<std::string, std::string>, AsWelder, 5000, no_coupon> as_welder_;
    Remembered<std::string, std::string, 5000, no_coupon> welder_alone_;
    Remembered<bool, std::vector<WelderText>, 1> welders_by_no_mark_; ///< one, under true
    Book &book_;
    Catalogue &catalogue_;
};

} // namespace beadbook
