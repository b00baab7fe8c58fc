#pragma once

#include "facts/plausibility.hpp"
#include "operations/welder_names.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace beadbook {

/// What a coupon keeps in its `sure` whose welder is not the enrolled one that he reads like; or is the one
/// of that mark here, though he is called otherwise where it comes from; and a welder who was enrolled beside
/// one whose mark reads alike, or whose name may be the same person's.
inline constexpr const char *welder_like_another = "welder-like-another";
inline constexpr const char *welder_of_another_name = "welder-of-another-name";
inline constexpr const char *name_like_another = "name-like-another";
/// What a welder keeps who was given a name in which nothing is left of the one before.
inline constexpr const char *renamed_welder = "renamed";

/// Who is enrolled, so that a coupon names its welder by the mark, and nobody is enrolled twice unasked: a
/// failed test under one mark is none under the other. Whom a text means is asked of WelderNames. Read once,
/// when somebody else is named.
class WeldersMeant {
public:
    explicit WeldersMeant(Book &book) : book_(book) {}

    /// Puts the mark in the place of the name of exactly one enrolled person. Throws Unsure: of several, a
    /// mark or a name that somebody would take for an enrolled one's, unless that is meant: then the coupon
    /// keeps it in its `sure`.
    void take(CouponRecord &coupon, bool sure, const std::vector<std::string> &sure_of);

    /// Asks about the welder of a coupon that comes from where he is called otherwise than the one of that
    /// mark here, or as another one is here. Throws Unsure as above.
    void take_of_elsewhere(CouponRecord &coupon, bool sure);
    /// What speaks against one of that mark and name as the welder of coupons that came from elsewhere.
    std::vector<Unlikely> before_enrolled(const WelderRecord &welder);
    /// What speaks against another welder of that mark and name beside those who are enrolled.
    std::vector<Unlikely> beside(const WelderRecord &welder);
    bool any() { return !all().empty(); }
    /// He is one of them from now on.
    void add(const WelderRecord &welder);

private:
    const std::vector<WelderNames> &all();
    /// By their marks here, who is not enrolled among them: the first coupon of each.
    std::map<std::string, Ledger::WelderElsewhere> &elsewhere();

    Book &book_;
    bool read_ = false;
    std::vector<WelderNames> all_;
    std::optional<std::map<std::string, Ledger::WelderElsewhere>> elsewhere_;
};

} // namespace beadbook
