#include "operations/mechanical.hpp"

#include "facts/coupon_weld.hpp"
#include "measure/text.hpp"
#include "qualify/range.hpp"

namespace beadbook {

std::vector<std::string> lacking_mechanical(Catalogue &catalogue, const CouponRecord &coupon) {
    std::vector<std::string> out;
    if (coupon.get("welder").empty() || coupon.get("purpose") == "practice" ||
        !coupon.get("mechanical").empty())
        return out;
    std::vector<Weld> welds;
    try {
        welds = welds_of(coupon);
    } catch (const DataError &) {
        return out; // what was welded cannot be read, so nobody can say what is asked
    }
    for (const auto &name : shipped_range_rule_names()) {
        const auto rules = catalogue.rules(name);
        for (const auto &exam : rules->exams) {
            if (exam.one_of != std::vector<std::string>{"mechanical"}) continue;
            bool asked = false;
            for (const auto &weld : welds) asked = asked || passes(exam.test, weld) == Truth::yes;
            if (!asked) continue;
            out.push_back(name + " [" + authority(exam.clause, exam.standing) + "]");
            break;
        }
    }
    return out;
}

std::string mechanical_asked_words(const std::vector<std::string> &by) {
    if (by.empty()) return "";
    return "no mechanical tests (bend, fracture or section) are on record; of such a test they are asked "
           "by " +
           listed(by);
}

} // namespace beadbook
