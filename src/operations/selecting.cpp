#include "operations/selecting.hpp"

#include "criteria/weld_words.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <set>

namespace beadbook {
namespace {

bool is_or_free(const std::string &asked, const std::string &is) { return asked.empty() || asked == is; }

bool welded_by(const std::string &asked, const std::string &process) {
    if (asked.empty()) return true;
    return (processes_in(asked) & processes_in(process)) != 0 || same_word(asked, process);
}

bool welded_within(const Selection &of, const std::string &welded) {
    if (!of.from && !of.to) return true;
    if (welded.empty()) return false;
    const Day day = parse_day(welded);
    return (!of.from || *of.from <= day) && (!of.to || day <= *of.to);
}

bool is_unfinished(const CouponState &coupon) {
    return coupon.record.withdrawn.empty() && (coupon.exams.empty() || !coupon.open_exams().empty());
}

/// What costs no judging.
bool fits_record(const Selection &of, const CouponState &coupon) {
    const CouponRecord &record = coupon.record;
    return is_or_free(of.welder, record.get("welder")) && is_or_free(of.cohort, record.get("cohort")) &&
           is_or_free(of.class_id, record.get("class")) && welded_by(of.process, record.get("process")) &&
           welded_within(of, record.get("welded")) && (!of.unfinished || is_unfinished(coupon)) &&
           (!of.method || std::any_of(coupon.exams.begin(), coupon.exams.end(),
                                      [&](const ExamRecord &e) { return e.method == *of.method; }));
}

template <class Give>
void select_from(Office &office, const Selection &of, Give give,
                 const std::function<void(CouponAtHand &)> &take) {
    if (of.from && of.to && *of.from > *of.to)
        throw refused("from " + print(*of.from) + " to " + print(*of.to) +
                      " there is no day; expected the earlier one first")
            .at("from");
    // An index knows who welded what, or was once said to.
    std::set<std::string> named;
    if (!of.welder.empty())
        for (auto &mark : office.book().coupons_of(of.welder)) named.insert(std::move(mark));
    for (const auto &mark : office.book().coupons()) {
        if (!of.welder.empty() && !named.contains(mark)) continue;
        const CouponState &coupon = give(mark);
        CouponAtHand one(office, coupon);
        if (is_meant(of, one)) take(one);
    }
}

/// A word that no coupon on record has, and the one that was perhaps meant.
std::string unknown_word(Office &office, const std::string &field, const std::string &what,
                         const std::string &asked, const std::function<bool(const std::string &)> &is = {}) {
    if (asked.empty()) return "";
    std::vector<std::string> there;
    for (const auto &mark : office.book().coupons()) {
        const std::string one = office.book().coupon(mark).record.get(field);
        if (one.empty()) continue;
        if (is ? is(one) : one == asked) return "";
        if (std::find(there.begin(), there.end(), one) == there.end()) there.push_back(one);
    }
    return "no coupon on record is of " + what + " '" + shown(asked) + "'" + did_you_mean(asked, there);
}

} // namespace

std::vector<std::string> unknown_words(Office &office, const Selection &of) {
    std::vector<std::string> out;
    for (auto &one : {unknown_word(office, "cohort", "cohort", of.cohort),
                      unknown_word(office, "welder", "welder", of.welder),
                      unknown_word(office, "class", "class", of.class_id),
                      unknown_word(office, "process", "process", of.process, [&](const std::string &process) {
                          return welded_by(of.process, process);
                      })})
        if (!one.empty()) out.push_back(one);
    return out;
}

std::string_view name_of(GradeState state) {
    switch (state) {
    case GradeState::none: break;
    case GradeState::passed: return "passed";
    case GradeState::failed: return "failed";
    case GradeState::again: return "again";
    }
    return "none";
}

const JudgedOrNot &CouponAtHand::judged() {
    if (!judged_) judged_ = judge_or_tell(office_, coupon_);
    return *judged_;
}

const GradeStanding &CouponAtHand::grading() {
    if (!grading_) grading_ = standing_of_grade(office_, coupon_);
    return *grading_;
}

GradeState CouponAtHand::grade() {
    if (!coupon_.grade) return GradeState::none;
    if (grading().state == GradeStanding::State::again) return GradeState::again;
    return coupon_.grade->passed ? GradeState::passed : GradeState::failed;
}

bool is_meant(const Selection &of, CouponAtHand &one) {
    if (!fits_record(of, one.coupon())) return false;
    if (of.grade && one.grade() != *of.grade) return false;
    if (!of.verdict) return true;
    if (!one.coupon().record.withdrawn.empty()) return false;
    const JudgedOrNot &judged = one.judged();
    return judged.judged && judged.judged->verdict() == *of.verdict;
}

void select(Office &office, const Selection &of, const std::function<void(CouponAtHand &)> &take) {
    CouponState at_hand;
    select_from(
        office, of,
        [&](const std::string &mark) -> const CouponState & { return at_hand = office.coupon(mark); }, take);
}

void select(Writing &writing, const Selection &of, const std::function<void(CouponAtHand &)> &take) {
    CouponState at_hand;
    select_from(
        writing.office(), of,
        // A copy, because what is written changes the one that the transaction keeps.
        [&](const std::string &mark) -> const CouponState & { return at_hand = writing.coupon(mark); }, take);
}

} // namespace beadbook
