#pragma once

#include "facts/coupon_record.hpp"
#include "records/book.hpp"

#include <string>
#include <vector>

namespace beadbook {

/// A text that names a person or a mark, read once, to be held against many.
struct WelderText {
    WelderText(const std::string &as_written); // NOLINT: a text stands for itself
    std::string text;
    std::vector<std::string> parts; ///< names in it
    std::vector<std::string> keys;  ///< of the persons that it names
    std::vector<std::string> seen;  ///< what it and its parts read like as marks
};

/// Whom a text that names a welder means: the one notion of it, for doors and gates. A welder is called by
/// the mark and by every name that was ever enrolled under it; names are held against each other whatever
/// their order, points, capitals and look-alike letters.
class WelderNames {
public:
    /// `mark` may be empty: somebody who is called by names alone.
    WelderNames(std::string mark, const std::vector<std::string> &ever);
    WelderNames(Book &book, const std::string &mark);

    /// The mark itself, or one of the names.
    bool means(const WelderText &who) const;
    /// What a reader takes for the mark or a name: it differs in signs, noughts and the like.
    bool seen_as(const WelderText &who) const;
    /// The name that somebody may take it for, as it may be cut down to initials, left out in part or
    /// misspelt; empty if there is none.
    std::string taken_for(const WelderText &who) const;
    /// Whether it means one of the names, or may be taken for one.
    bool may_be(const WelderText &who) const { return means(who) || !taken_for(who).empty(); }

    const std::string &mark() const { return mark_; }
    const std::vector<WelderText> &names() const { return names_; }

private:
    std::string mark_;
    std::vector<std::string> mark_seen_;
    std::vector<WelderText> names_;
};

/// The name that is enrolled under the mark today; empty: none is.
std::string welder_name(Book &book, const std::string &mark);

/// Whether somebody said that another is meant than the one who reads so.
bool says_another(const CouponRecord &coupon);
/// Whether a coupon was welded by this one, as it stands written. Where somebody said that another is meant
/// than he who reads so (its `sure`), the mark or the very name alone say it.
bool welded_as(Book &book, const CouponRecord &coupon, const WelderNames &welder);
/// Whether nobody can say that it was not.
bool may_be_welded_as(Book &book, const CouponRecord &coupon, const WelderNames &welder);

} // namespace beadbook
