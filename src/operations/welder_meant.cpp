#include "operations/welder_meant.hpp"

#include "facts/name_likeness.hpp"
#include "facts/person_name.hpp"
#include "facts/plausibility.hpp"
#include "measure/text.hpp"
#include "operations/marks.hpp"

#include <algorithm>

namespace beadbook {

bool read_alike(const std::string &a, const std::string &b) {
    const auto as_read = [](const std::string &mark) { return plain_mark(without_signs(folded_name(mark))); };
    const std::string read = as_read(a);
    return !read.empty() && read == as_read(b);
}

std::vector<std::string> WeldersMeant::named(const std::string &text) {
    if (!read_)
        for (const auto &mark : book_.welders()) all_.emplace_back(mark, book_.welder(mark).record.name);
    read_ = true;
    const auto parts = names_in(text);
    std::vector<std::string> out;
    const auto names = [&](const std::string &mark, const std::string &name) {
        return std::any_of(parts.begin(), parts.end(), [&](std::string_view part) {
            return part == mark || (!name.empty() && same_person(folded_name(part), folded_name(name)));
        });
    };
    for (const auto &[mark, name] : all_)
        if (names(mark, name)) out.push_back(mark);
    return out;
}

void WeldersMeant::take(CouponRecord &coupon, bool sure, const std::vector<std::string> &sure_of) {
    const std::string text = coupon.get("welder");
    if (text.empty() || book_.knows_welder(text)) return;
    const auto meant = named(text);
    if (meant.size() == 1) return coupon.set("welder", meant.front());
    const std::string begin = "coupon " + coupon.id + ", welder '" + shown(text) + "': ";
    std::vector<Unlikely> unlike;
    if (meant.size() > 1 && names_in(text).size() == 1)
        unlike.push_back(
            {welder_like_another, begin + listed(meant) + " are of that name; which of them is it?"});
    if (meant.empty())
        for (const auto &[mark, name] : all_)
            if (read_alike(mark, text))
                unlike.push_back(
                    {welder_like_another, begin + mark +
                                              " is enrolled, and differs from it only in capitals, "
                                              "zeros or signs; is it another welder?"});
    for (auto &one : set_aside_by(unlike, sure, sure_of)) coupon.sure.push_back(std::move(one));
}

} // namespace beadbook
