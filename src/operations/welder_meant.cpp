#include "operations/welder_meant.hpp"

#include "facts/name_likeness.hpp"
#include "facts/person_name.hpp"
#include "facts/plausibility.hpp"
#include "measure/text.hpp"
#include "operations/marks.hpp"

#include <algorithm>

namespace beadbook {
namespace {

constexpr const char *differs_in_signs = " is enrolled, and differs from it only in capitals, zeros or signs";

} // namespace

const std::vector<WeldersMeant::Enrolled> &WeldersMeant::all() {
    if (!read_)
        for (const auto &mark : book_.welders())
            for (const auto &name : names_ever(mark, book_.welder_history(mark)))
                all_.emplace_back(mark, name);
    read_ = true;
    return all_;
}

std::vector<std::string> WeldersMeant::named(const std::string &text) {
    const auto parts = names_in(text);
    std::vector<std::string> out;
    const auto names = [&](const std::string &mark, const std::string &name) {
        return std::any_of(parts.begin(), parts.end(), [&](std::string_view part) {
            return part == mark || (!name.empty() && same_person(folded_name(part), folded_name(name)));
        });
    };
    for (const auto &[mark, name] : all())
        if (names(mark, name) && (out.empty() || out.back() != mark)) out.push_back(mark);
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
        for (const auto &[mark, name] : all()) {
            if (seen_alike(mark, text))
                unlike.push_back(
                    {welder_like_another, begin + mark + differs_in_signs + "; is it another welder?"});
            else if (may_be_taken_for(name, text))
                unlike.push_back(
                    {welder_like_another, begin + mark + " is enrolled as '" + shown(name) +
                                              "', which may be the same person; is it another welder?"});
        }
    for (auto &one : set_aside_by(unlike, sure, sure_of)) coupon.sure.push_back(std::move(one));
}

std::vector<Unlikely> WeldersMeant::beside(const WelderRecord &welder) {
    std::vector<Unlikely> out;
    for (const auto &[mark, name] : all()) {
        if (mark == welder.mark) continue;
        if (seen_alike(mark, welder.mark))
            out.push_back({welder_like_another, "welder " + welder.mark + ": " + mark + differs_in_signs +
                                                    "; is it another welder?"});
        if (may_be_taken_for(name, welder.name))
            out.push_back({name_like_another,
                           "welder " + welder.mark + ": " + mark + " is enrolled as '" + shown(name) +
                               "', which may be the same person, and a test that he failed under one mark is "
                               "none under the other; is it another person?"});
    }
    return out;
}

void WeldersMeant::add(const WelderRecord &welder) {
    all(); // what is read later would hold him already
    all_.emplace_back(welder.mark, welder.name);
}

} // namespace beadbook
