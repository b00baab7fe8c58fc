#include "operations/failed_work.hpp"

#include "measure/text.hpp"
#include "operations/judging.hpp"

#include <algorithm>
#include <cctype>

namespace beadbook {
namespace {

/// A mark that is a number may be any number: "coupon" stands before it.
bool is_named(const std::string &work, const std::string &mark) {
    const bool digits = std::all_of(mark.begin(), mark.end(), is_digit);
    return names_mark(work, digits ? "coupon " + mark : mark);
}

std::string why_failed(Office &office, const CouponState &coupon) {
    if (const std::string &why = coupon.record.withdrawn; !why.empty()) return "is withdrawn: " + why;
    if (coupon.grade && !coupon.grade->passed)
        return "was graded failed on " + coupon.grade->stamp.at.substr(0, 10);
    if (coupon.record.bends_failed()) return "failed its mechanical tests";
    if (coupon.grade) return "";
    const JudgedOrNot now = judge_or_tell(office, coupon);
    return now.judged && now.judged->verdict() == Verdict::reject ? "is rejected" : "";
}

} // namespace

bool names_mark(const std::string &text, const std::string &mark) {
    const std::string in = lowered(text), one = lowered(mark);
    const auto of_word = [&](std::size_t at) {
        return at < in.size() && (std::isalnum(static_cast<unsigned char>(in[at])) || in[at] == '-');
    };
    for (std::size_t at = in.find(one); at != std::string::npos; at = in.find(one, at + 1))
        if ((at == 0 || !of_word(at - 1)) && !of_word(at + one.size())) return true;
    return false;
}

void check_no_failed_work(Office &office, const std::string &welder, const std::string &work,
                          const std::string &field) {
    for (const auto &mark : office.book().coupons_of(welder)) {
        if (!is_named(work, mark)) continue;
        if (const std::string why = why_failed(office, office.coupon(mark)); !why.empty())
            throw refused("'" + shown(work) + "': coupon " + mark + " " + why +
                          "; what failed shows nothing (common practice, no source), so name other work")
                .at(field);
    }
}

} // namespace beadbook
