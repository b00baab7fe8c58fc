#pragma once

#include "records/book.hpp"

#include <string>
#include <utility>
#include <vector>

namespace beadbook {

/// What a coupon keeps in its `sure` whose welder is not the enrolled one that he reads like; and a welder
/// who was enrolled beside one whose mark reads alike.
inline constexpr const char *welder_like_another = "welder-like-another";

/// Who is enrolled, so that a coupon names its welder by the mark. Read once, when somebody else is named.
class WeldersMeant {
public:
    explicit WeldersMeant(Book &book) : book_(book) {}

    /// Puts the mark in the place of the name of exactly one enrolled person. Throws Unsure: of several, or a
    /// mark that somebody would take for an enrolled one, unless that is meant: then the coupon keeps it in
    /// its `sure`.
    void take(CouponRecord &coupon, bool sure, const std::vector<std::string> &sure_of);

private:
    std::vector<std::string> named(const std::string &text);

    Book &book_;
    bool read_ = false;
    std::vector<std::pair<std::string, std::string>> all_; ///< marks with names
};

/// Whether two marks read alike: capitals, leading zeros, blanks, points and look-alike letters aside.
bool read_alike(const std::string &a, const std::string &b);

} // namespace beadbook
