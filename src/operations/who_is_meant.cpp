#include "operations/who_is_meant.hpp"

#include "facts/name_likeness.hpp"
#include "facts/plausibility.hpp"
#include "operations/test_fate.hpp"
#include "operations/welder_meant.hpp"
#include "records/codecs/facts.hpp"
#include "records/codecs/typed.hpp"
#include "records/codecs/welder.hpp"

namespace beadbook {
namespace {

std::string meant_by(const Entry &entry) { return entry.who + " meant so on " + entry.at.substr(0, 10); }

/// Others whose names may be the same person's, as they are enrolled now: "L1, J. Reef".
std::string alike(Book &book, const WelderRecord &welder) {
    std::vector<std::string> out;
    for (const auto &mark : book.welders())
        if (const std::string name = welder_name(book, mark);
            mark != welder.mark && may_be_taken_for(name, welder.name))
            out.push_back(mark + ", " + name);
    return listed(out, "and");
}

std::string other_than(Book &book, const WelderRecord &welder) {
    const std::string others = alike(book, welder);
    return welder.mark + " is another person than " +
           (others.empty() ? "one enrolled of a like mark or name" : others);
}

void take_coupon(Book &book, const std::string &id, std::vector<std::string> &out) {
    if (!book.knows_coupon(id)) return;
    CouponRecord before;
    for (const auto &entry : book.history(id)) {
        if (entry.kind != "coupon" || is_withdrawal(entry)) continue;
        CouponRecord said = codec::coupon_from(codec::parsed(entry.body));
        if (is_meant(said.sure, welder_of_another_name) && !is_meant(before.sure, welder_of_another_name))
            out.push_back("coupon " + id + " was welded by " + said.get("welder") +
                          ", though it comes from where its welder is '" + welder_there(said.before) +
                          "', as " + meant_by(entry));
        before = std::move(said);
    }
}

} // namespace

std::vector<std::string> who_is_meant(Book &book, const WelderRecord &welder) {
    std::vector<std::string> out;
    WelderRecord before;
    for (const auto &entry : book.welder_history(welder.mark)) {
        if (entry.kind != "welder" || is_withdrawal(entry)) continue;
        WelderRecord said = codec::welder_from(welder.mark, codec::parsed(entry.body));
        const auto newly = [&](const char *id) {
            return is_meant(said.sure, id) && !is_meant(before.sure, id);
        };
        if (newly(name_like_another) || newly(welder_like_another))
            out.push_back(other_than(book, welder) + ", as " + meant_by(entry));
        if (is_meant(said.sure, renamed_welder) && of_two_persons(before.name, said.name))
            out.push_back(said.name + " is the same person as " + before.name + ", as " + meant_by(entry));
        before = std::move(said);
    }
    return out;
}

std::vector<std::string> who_welded(Book &book, const QualificationRecord &held) {
    std::vector<std::string> out;
    if (!held.carried())
        for (const auto &id : test_coupons(held)) take_coupon(book, id, out);
    return out;
}

} // namespace beadbook
