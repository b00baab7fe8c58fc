#pragma once

#include "operations/coupons.hpp"
#include "operations/desk.hpp"
#include "operations/examining.hpp"
#include "operations/judging.hpp"
#include "operations/qualifying.hpp"
#include "operations/welders.hpp"

namespace beadbook::test {

/// A record with the welder L1, whose test coupons it makes.
class Yard : public Desk {
public:
    using Fields = std::map<std::string, std::string>;

    Yard();

    /// A girth weld by GTAW in 6G that its criteria accept, examined with VT, MT and RT on the day it was
    /// welded, and graded. `more` sets fields or, empty, leaves them out.
    void coupon(const std::string &id, const std::string &welded, bool passed = true, const Fields &more = {},
                const std::vector<Exam> &exams = {Exam::VT, Exam::MT, Exam::RT});
    void change(const std::string &coupon, const Fields &fields);
    void grade(const std::string &coupon, bool passed);
    Done<Granted> qualify(const std::string &coupon, const std::string &rules = "asme-ix",
                          const std::string &override_why = "");

    Validity validity(int number, const std::string &on = "2026-11-25");

    /// What it was refused with; empty if it was not. Nothing is stored then.
    template <class F>
    std::string refusal(F &&what) {
        try {
            what();
        } catch (const Refusal &e) {
            return e.what();
        }
        return "";
    }
};

inline std::string refused_to_qualify(Yard &yard, const std::string &coupon,
                                      const std::string &rules = "asme-ix") {
    return yard.refusal([&] { yard.qualify(coupon, rules); });
}

/// The welder L1 renewed by these coupons.
inline Done<StandingChange> renewed(Yard &yard, int number, const std::vector<std::string> &coupons,
                                    const std::string &override_why = "") {
    return yard.write([&](Writing &w) { return renew(w, {"L1", number, coupons, {}, override_why}); });
}

} // namespace beadbook::test
