#include "operations/welder_meant.hpp"

#include "facts/name_likeness.hpp"
#include "facts/person_name.hpp"
#include "facts/plausibility.hpp"
#include "measure/text.hpp"
#include "measure/words_apart.hpp"
#include "operations/marks.hpp"

#include <algorithm>

namespace beadbook {
namespace {

constexpr const char *differs_in_signs = " is enrolled, and differs from it only in capitals, zeros or signs";

/// Two marks in one word ("L1-L2") are nobody's coupon: neither welder's failed test would be found by it.
void check_one_mark(Book &book, const std::string &text) {
    const auto marks = words_apart(text, is_ascii_sign);
    if (marks.size() > 1 &&
        std::all_of(marks.begin(), marks.end(), [&](const auto &mark) { return book.knows_welder(mark); }))
        throw refused("'" + shown(text) + "' names " + listed(marks) + "; one welder is named here")
            .at("welder");
}

bool may_be_one(const std::string &name, const std::string &other) {
    return same_person(name, other) || may_be_taken_for(name, other);
}

} // namespace

std::map<std::string, Ledger::WelderElsewhere> &WeldersMeant::elsewhere() {
    if (!elsewhere_) {
        elsewhere_.emplace();
        for (const auto &one : book_.welders_elsewhere()) elsewhere_->emplace(one.welder, one);
    }
    return *elsewhere_;
}

const std::vector<WelderNames> &WeldersMeant::all() {
    if (!read_)
        for (const auto &mark : book_.welders()) all_.emplace_back(book_, mark);
    read_ = true;
    return all_;
}

void WeldersMeant::take(CouponRecord &coupon, bool sure, const std::vector<std::string> &sure_of) {
    const std::string text = coupon.get("welder");
    if (text.empty() || book_.knows_welder(text)) return;
    const WelderText who(text);
    std::vector<std::string> meant;
    for (const auto &one : all())
        if (one.means(who)) meant.push_back(one.mark());
    check_one_person(text, "welder", !meant.empty());
    check_one_mark(book_, text);
    if (meant.size() == 1) return coupon.set("welder", meant.front());
    const std::string begin = "coupon " + coupon.id + ", welder '" + shown(text) + "': ";
    std::vector<Unlikely> unlike;
    if (meant.size() > 1 && who.parts.size() > 1) {
        // Of one name are several, and the mark beside it says which.
        for (const auto &one : all())
            if (std::all_of(who.parts.begin(), who.parts.end(),
                            [&](const auto &part) { return one.means(part); }))
                return coupon.set("welder", one.mark());
        throw refused("'" + shown(text) + "' names " + listed(meant) + "; one of them is named here: which?")
            .at("welder");
    }
    if (meant.size() > 1 && who.parts.size() == 1)
        unlike.push_back(
            {welder_like_another, begin + listed(meant) + " are of that name; which of them is it?"});
    if (meant.empty())
        for (const auto &one : all()) {
            if (one.seen_as(who))
                unlike.push_back(
                    {welder_like_another, begin + one.mark() + differs_in_signs + "; is it another welder?"});
            else if (const std::string name = one.taken_for(who); !name.empty())
                unlike.push_back(
                    {welder_like_another, begin + one.mark() + " is enrolled as '" + shown(name) +
                                              "', which may be the same person; is it another welder?"});
        }
    for (auto &one : set_aside_by(unlike, sure, sure_of)) coupon.sure.push_back(std::move(one));
}

void WeldersMeant::take_of_elsewhere(CouponRecord &coupon, bool sure) {
    const std::string text = coupon.get("welder"), name = welder_there(coupon.before);
    if (text.empty() || name.empty() || name == text) return;
    const std::string begin = "coupon " + coupon.id + ", welder '" + shown(text) +
                              "': where it comes from this is '" + shown(name) + "', and here ";
    std::vector<Unlikely> unlike;
    if (book_.knows_welder(text)) {
        const WelderNames here(book_, text);
        if (!here.names().empty() && !here.may_be(name))
            unlike.push_back({welder_of_another_name,
                              begin + "'" + shown(book_.welder(text).record.name) +
                                  "'; is it the same person? Another one comes in under another mark"});
    } else {
        for (const auto &one : all())
            if (one.may_be(name))
                unlike.push_back(
                    {welder_like_another, begin + one.mark() +
                                              " is called so; is it another person? The same one comes "
                                              "in under that mark"});
        const auto &other =
            elsewhere().emplace(text, Ledger::WelderElsewhere{coupon.id, text, name}).first->second;
        if (!may_be_one(other.name, name))
            unlike.push_back({welder_of_another_name,
                              "coupon " + coupon.id + ", welder '" + shown(text) +
                                  "': where it comes from this is '" + shown(name) + "', and of coupon " +
                                  other.coupon + " '" + shown(other.name) +
                                  "'; is it the same person? Another one comes in under another mark"});
    }
    // What a file sets aside was asked of other people, on another record.
    for (auto &one : set_aside_by(unlike, sure)) coupon.sure.push_back(std::move(one));
}

std::vector<Unlikely> WeldersMeant::before_enrolled(const WelderRecord &welder) {
    for (const auto &id : book_.coupons_of(welder.mark)) {
        const std::string name = welder_there(book_.coupon(id).record.before);
        if (name.empty() || welder.name.empty() || may_be_one(name, welder.name)) continue;
        return {{welder_of_another_name, "welder " + welder.mark + ": coupon " + id +
                                             " comes from where this is '" + shown(name) + "'; is '" +
                                             shown(welder.name) + "' the same person?"}};
    }
    return {};
}

std::vector<Unlikely> WeldersMeant::beside(const WelderRecord &welder) {
    std::vector<Unlikely> out;
    for (const auto &one : all()) {
        const std::string &mark = one.mark();
        if (mark == welder.mark) continue;
        if (seen_alike(mark, welder.mark))
            out.push_back({welder_like_another, "welder " + welder.mark + ": " + mark + differs_in_signs +
                                                    "; is it another welder?"});
        if (const std::string name = one.taken_for(welder.name); !name.empty())
            out.push_back({name_like_another,
                           "welder " + welder.mark + ": " + mark + " is enrolled as '" + shown(name) +
                               "', which may be the same person, and a test that he failed under one mark is "
                               "none under the other; is it another person?"});
    }
    for (const auto &[id, there, name] : book_.welders_elsewhere()) {
        if (there == welder.mark || !may_be_one(name, welder.name)) continue;
        const CouponRecord coupon = book_.coupon(id).record;
        const std::string mark = coupon.get("welder");
        if (mark == welder.mark || says_another(coupon) || book_.knows_welder(mark)) continue;
        out.push_back(
            {name_like_another, "welder " + welder.mark + ": coupon " + id + " of " + shown(mark) +
                                    " comes from where its welder is '" + shown(name) +
                                    "', which may be the same person, and a test that he failed "
                                    "under one mark is none under the other; is it another person?"});
        break;
    }
    return out;
}

void WeldersMeant::add(const WelderRecord &welder) {
    all(); // what is read later would hold him already
    all_.emplace_back(welder.mark, std::vector<std::string>{welder.name});
}

} // namespace beadbook
