#include "operations/vouching.hpp"

#include "facts/person_name.hpp"
#include "facts/person_record.hpp"
#include "measure/text.hpp"
#include "operations/exam_means.hpp"
#include "operations/exam_mends.hpp"
#include "operations/people.hpp"
#include "operations/welder_names.hpp"

#include <algorithm>
#include <set>

namespace beadbook {
namespace {

void check_names_somebody(Office &office, const std::string &who, const std::string &what,
                          const std::string &field) {
    if (!is_somebody(office, who))
        throw refused("'" + shown(who) + "' names nobody who can be asked; who " + what +
                      "? a person's name is expected, such as \"A. Field\"")
            .give(field, "A. Field");
}

} // namespace

void check_no_fellow(Office &office, const std::string &who, const std::string &what,
                     const std::string &field) {
    const std::string welder = office.welder_alone(who);
    if (welder.empty()) return;
    const std::string enrolled = welder_name(office.book(), welder);
    throw refused("'" + shown(who) + "' is on record as a welder alone; who " + what +
                  " is an instructor, an examiner or a keeper by that record, or no welder there (common "
                  "practice, no source)")
        .at(field)
        .mend({"person", {enrolled.empty() ? who : enrolled}, {"role"}});
}

const std::string &Office::welder_alone(const std::string &who) {
    return welder_alone_.of(ledger(), who, [&]() -> std::string {
        const auto person = person_named(*this, who);
        if (person && std::any_of(person->roles.begin(), person->roles.end(),
                                  [](const std::string &role) { return role != "welder"; }))
            return "";
        for (const auto &mark : book().welders())
            if (WelderNames(book(), mark).means(who)) return mark;
        return person && !person->roles.empty() ? who : "";
    });
}

const Office::AsWelder &Office::as_welder(const std::string &person, const std::string &welder) {
    return as_welder_.of(ledger(), {person, welder}, [&] {
        AsWelder out;
        if (person.empty() || welder.empty()) return out;
        const WelderNames one("", names_behind(*this, welder));
        const bool known = person_named(*this, person).has_value();
        for (const auto &name : names_behind(*this, person)) {
            const WelderText who(name);
            out.is = out.is || one.means(who) || one.seen_as(who);
            if (!known && out.taken_for.empty()) out.taken_for = one.taken_for(who);
        }
        return out;
    });
}

bool is_welder(Office &office, const std::string &person, const std::string &welder) {
    return office.as_welder(person, welder).is;
}

std::string as_himself(Office &office, const std::string &person, const std::string &welder) {
    const auto &as = office.as_welder(person, welder);
    if (as.is) return "is the welder";
    return as.taken_for.empty() ? ""
                                : "may be the welder, called '" + shown(as.taken_for) +
                                      "'; the record of people tells the two apart";
}

std::string taken_for_welder(Office &office, const std::string &person, const std::string &welder) {
    return office.as_welder(person, welder).taken_for;
}

void check_vouches(Office &office, const std::string &who, const std::string &said_of,
                   const std::string &what, const std::string &field) {
    check_names_somebody(office, who, what, field);
    check_names_one(office, who, field);
    check_is_another(office, who, said_of, what, field);
    if (!said_of.empty()) check_no_fellow(office, who, what, field);
}

void check_is_another(Office &office, const std::string &who, const std::string &said_of,
                      const std::string &what, const std::string &field) {
    if (!is_welder(office, who, said_of)) {
        const std::string name = taken_for_welder(office, who, said_of);
        if (name.empty()) return;
        throw refused("'" + shown(who) + "' may be welder " + shown(said_of) +
                      (name == said_of ? "" : ", enrolled as '" + shown(name) + "'") + "; who " + what +
                      " is another person than the welder (common practice, no source). The record of people "
                      "tells them apart: who is another person is put there by that name")
            .at(field)
            .mend({"person", {who}, {"role"}});
    }
    throw refused("'" + shown(who) + "' is welder " + shown(said_of) + "; who " + what +
                  " is another person than the welder (common practice, no source)")
        .at(field);
}

void check_may_say_found(Writing &writing, const CouponState &coupon) {
    if (!writing.stamp().signed_in)
        check_names_somebody(writing.office(), writing.stamp().who, "says what an exam found", "by");
    check_is_another(writing.office(), writing.stamp().who, coupon.record.get("welder"),
                     "says what an exam found");
}

void check_may_describe(Writing &writing, const CouponState &coupon, const std::string &welder_now) {
    if (coupon.exams.empty()) return;
    for (const auto &welder : {coupon.record.get("welder"), welder_now})
        check_is_another(writing.office(), writing.stamp().who, welder, "says what an examined coupon is");
}

void check_may_give_away(Writing &writing, const CouponState &coupon) {
    check_is_another(writing.office(), writing.stamp().who, coupon.record.get("welder"),
                     "says whose a coupon is, whether it is a test, and that it is taken back");
}

void check_may_bring_in(Writing &writing, const std::map<std::string, std::int64_t> &touched,
                        const std::function<void(const std::string &mark)> &at_hand) {
    std::set<std::string> welders;
    bool says_found = false;
    for (const auto &[mark, newest] : touched) {
        const CouponState &coupon = writing.coupon(mark);
        if (!coupon.exams.empty() || !coupon.record.get("mechanical").empty()) {
            welders.insert(coupon.record.get("welder"));
            says_found = true;
        }
        at_hand(mark);
        writing.let_go(mark);
    }
    welders.erase("");
    for (const auto &welder : welders)
        check_is_another(writing.office(), writing.stamp().who, welder, "brings in what exams found");
    if (says_found)
        check_no_fellow(writing.office(), writing.stamp().who, "brings in what exams found", "by");
}

void check_may_judge(Writing &writing, const CouponState &coupon, const ExamRecord &exam) {
    check_may_say_found(writing, coupon);
    const std::string &who = writing.stamp().who;
    if (!exam.finished) return; // who finishes it says all of it
    const std::string why = against_judging(writing.office(), exam, who, writing.outside().today());
    if (why.empty()) return;
    Refusal out = refused("what the " + std::string(name_of(exam.method)) + " of coupon " + coupon.record.id +
                          (exam.examiner.empty() ? "" : " by " + exam.examiner) + " found is not said by " +
                          shown(who) + ", whom the record does not let judge by it: " + why +
                          "; its examiner says it, or another who may")
                      .at("by");
    // What somebody holds, and the record of people lacks, is put there.
    if (why != why_not_entitled("vision-over")) out.mend(mend_of_certificate(who));
    throw Refusal(std::move(out));
}

} // namespace beadbook
