#include "operations/selecting.hpp"

#include "criteria/weld_words.hpp"
#include "facts/plausibility.hpp"
#include "measure/text.hpp"
#include "operations/carried_facts.hpp"
#include "operations/exam_means.hpp"
#include "operations/failed_by.hpp"
#include "operations/faults.hpp"
#include "operations/finishing.hpp"
#include "operations/left_out.hpp"
#include "operations/looking_back.hpp"

#include <algorithm>
#include <limits>

namespace beadbook {
namespace {

bool is_or_free(const std::string &asked, const std::string &is) { return asked.empty() || asked == is; }

/// By all processes that are asked for, whatever it was welded by beside them.
bool welded_by(const std::string &asked, const std::string &process) {
    if (asked.empty() || same_word(asked, process)) return true;
    const WordBits all = processes_in(asked);
    return all != 0 && (all & processes_in(process)) == all;
}

bool welded_within(const Selection &of, const std::string &welded) {
    if (!of.from && !of.to) return true;
    if (welded.empty()) return false;
    const Day day = parse_day(welded);
    return (!of.from || *of.from <= day) && (!of.to || day <= *of.to);
}

/// What costs no judging.
bool fits_record(const Selection &of, const CouponLine &coupon) {
    const CouponRecord &record = coupon.record;
    return is_or_free(of.welder, record.get("welder")) && is_or_free(of.cohort, record.get("cohort")) &&
           is_or_free(of.class_id, record.get("class")) && is_or_free(of.criteria, record.get("criteria")) &&
           welded_by(of.process, record.get("process")) && welded_within(of, record.get("welded")) &&
           (!of.unfinished || coupon.unfinished) &&
           (!of.method || std::any_of(coupon.exams.begin(), coupon.exams.end(),
                                      [&](const auto &exam) { return exam.method == *of.method; }));
}

/// Some lines at a time, because `take` may write.
void walk_with(Office &office, Ledger::LinesAsked asked, const CouponAtHand::Read &read,
               const std::function<bool(CouponAtHand &)> &take) {
    const KeptLines lines(office);
    for (auto some = office.ledger().lines(asked); !some.empty(); some = office.ledger().lines(asked)) {
        for (const auto &line : some) {
            CouponAtHand one(office, line.coupon, read, lines.read(line));
            if (!take(one)) return;
        }
        asked.from = some.back().first;
    }
}

CouponAtHand::Read reader(Office &office) {
    return [&office](const std::string &mark) { return office.coupon(mark); };
}

/// A welder's coupons by their marks, of which an index knows who welded what, or was once said to.
void walk_marks(Office &office, const std::vector<std::string> &marks, const CouponAtHand::Read &read,
                const std::function<bool(CouponAtHand &)> &take) {
    const KeptLines lines(office);
    constexpr std::ptrdiff_t at_once = 500;
    for (auto from = marks.begin(); from != marks.end();) {
        const auto to = from + std::min(at_once, marks.end() - from);
        for (const auto &line : office.ledger().lines_of({from, to})) {
            CouponAtHand one(office, *from++, read, lines.read(line));
            if (!take(one)) return;
        }
    }
}

void check_registered(Office &office, const std::vector<std::string> &marks) {
    Faults faults;
    for (const auto &mark : marks)
        if (!office.book().knows_coupon(mark))
            faults.guard([&] { return mark; }, [&] { office.coupon(mark); });
    faults.check(std::to_string(faults.count()) + " of " + std::to_string(marks.size()));
}

void select_from(Office &office, const Selection &of, const CouponAtHand::Read &read,
                 const std::function<void(CouponAtHand &)> &take) {
    check_days(of);
    const auto hand_on = [&](CouponAtHand &one) {
        if (is_meant(of, one)) take(one);
        return true;
    };
    if (!of.marks.empty()) {
        check_registered(office, of.marks);
        walk_marks(office, of.marks, read, hand_on);
    } else if (of.welder.empty())
        walk_with(office, {0, false, 500, of.cohort, of.class_id}, read, hand_on);
    else
        walk_marks(office, office.book().coupons_of(of.welder), read, hand_on);
}

/// A word that no coupon on record has, and the one that was perhaps meant.
std::string unknown_word(Office &office, const std::string &field, const std::string &what,
                         const std::string &asked, const std::function<bool(const std::string &)> &is = {}) {
    if (asked.empty()) return "";
    std::vector<std::string> there;
    bool known = false;
    walk(office, {}, [&](CouponAtHand &coupon) {
        const std::string one = coupon.line().record.get(field);
        known = !one.empty() && (is ? is(one) : one == asked);
        if (!one.empty() && std::find(there.begin(), there.end(), one) == there.end()) there.push_back(one);
        return !known;
    });
    return known
               ? ""
               : "no coupon on record is of " + what + " '" + shown(asked) + "'" + did_you_mean(asked, there);
}

} // namespace

void walk(Office &office, Ledger::LinesAsked asked, const std::function<bool(CouponAtHand &)> &take) {
    walk_with(office, std::move(asked), reader(office), take);
}

void walk_these(Office &office, const std::vector<std::string> &marks,
                const std::function<bool(CouponAtHand &)> &take) {
    walk_marks(office, marks, reader(office), take);
}

std::vector<std::string> unknown_words(Office &office, const Selection &of) {
    std::vector<std::string> out;
    for (auto &one : {unknown_word(office, "cohort", "cohort", of.cohort),
                      unknown_word(office, "welder", "welder", of.welder),
                      unknown_word(office, "class", "class", of.class_id),
                      unknown_word(office, "criteria", "criteria", of.criteria),
                      unknown_word(office, "process", "process", of.process, [&](const std::string &process) {
                          return welded_by(of.process, process);
                      })})
        if (!one.empty()) out.push_back(one);
    if (out.empty() || of.welder.empty()) return out;
    if (const std::string mark = office.book().mark_of_name(of.welder); !mark.empty() && mark != of.welder)
        out.push_back("'" + shown(of.welder) + "' is the name of welder " + mark +
                      ", and a welder is called by the mark");
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

void check_days(const Selection &of) {
    if (of.from && of.to && *of.from > *of.to)
        throw refused("from " + print(*of.from) + " to " + print(*of.to) +
                      " there is no day; expected the earlier one first")
            .at("from");
}

const CouponState &CouponAtHand::own_coupon() {
    if (coupon_) return *coupon_;
    const Ledger::Moment moment(office_.ledger());
    coupon_ = read_(mark_);
    return *coupon_;
}

const CouponState &CouponAtHand::coupon() {
    if (shop_.empty()) return own_coupon();
    if (!told_) tell(told_.emplace(own_coupon()).record);
    return *told_;
}

CouponState CouponAtHand::to_carry(LeftOut &left_out) {
    const Ledger::Moment moment(office_.ledger());
    CouponState out = own_coupon();
    auto &before = out.record.before = facts_to_carry(office_, out);
    for (const auto &fact : left_out.beside(office_, out.record))
        if (std::find(before.begin(), before.end(), fact) == before.end()) before.push_back(fact);
    tell(out.record);
    for (auto &exam : out.exams) {
        const auto take = [&](const std::string &id) {
            if (!id.empty() && !is_meant(exam.sure, id)) exam.sure.push_back(id);
        };
        take(against_examiner(office_, own_coupon().record, exam));
        if (const auto one = before_its_weld(exam, own_coupon().record)) take(one->rule);
    }
    return out;
}

const CouponLine &CouponAtHand::line() {
    if (!line_) {
        const Ledger::Moment moment(office_.ledger());
        line_ = line_of(own_coupon(), judged(), grading());
        tell(line_->record);
    }
    return *line_;
}

void CouponAtHand::tell(CouponRecord &record) const {
    if (shop_.empty()) return;
    record.id = told_mark_;
    if (const auto welder = record.fields.find("welder"); welder != record.fields.end())
        welder->second.text = told_of_shop(shop_, welder->second.text);
    for (auto &fact : record.before) {
        fact.coupon = told_of_shop(shop_, fact.coupon);
        if (const auto welder = fact.as.find("welder"); welder != fact.as.end())
            welder->second = told_of_shop(shop_, welder->second);
    }
}

void CouponAtHand::tell_shop(const std::string &shop) {
    shop_ = shop;
    told_mark_ = told_of_shop(shop, mark_);
    if (line_) tell(line_->record);
}

const JudgedOrNot &CouponAtHand::judged() {
    if (judged_) return *judged_;
    const Ledger::Moment moment(office_.ledger());
    judged_ = judge_looking_back(office_, own_coupon());
    return *judged_;
}

const GradeStanding &CouponAtHand::grading() {
    if (!grading_) grading_ = line_ ? line_->grade_standing : standing_of_grade(office_, own_coupon());
    return *grading_;
}

GradeState CouponAtHand::grade() {
    if (!line().grade) return GradeState::none;
    // One that was taken back is not graded again.
    if (grading().state == GradeStanding::State::again && line().record.withdrawn.empty())
        return GradeState::again;
    return line().grade->passed ? GradeState::passed : GradeState::failed;
}

bool CouponAtHand::withdrawn_reject() {
    if (line().record.withdrawn.empty() || line().indications == 0) return false;
    const auto now = judged_now(office_, own_coupon());
    return now && now->verdict == Verdict::reject;
}

bool is_meant(const Selection &of, CouponAtHand &one) {
    if (of.all()) return true; // then nobody asks for the line
    const CouponLine &line = one.line();
    return fits_record(of, line) && (!of.grade || one.grade() == *of.grade) &&
           (!of.verdict || line.outcome() == of.verdict);
}

void select(const Shops &shops, const Selection &of, const std::function<void(CouponAtHand &)> &take) {
    for (const auto &shop : shops.all())
        if (const auto asked = shops.asked_of(shop, of))
            select_from(*shop.office, *asked, reader(*shop.office), [&](CouponAtHand &one) {
                one.tell_shop(shop.name);
                take(one);
            });
}

Newest newest(Office &office, const Selection &of, std::size_t most) {
    check_days(of);
    Newest out;
    const auto take = [&](CouponAtHand &one) {
        if (!is_meant(of, one)) return true;
        out.more = out.coupons.size() == most;
        if (!out.more) out.coupons.push_back({one.line(), one.grade()});
        return !out.more;
    };
    if (of.welder.empty()) {
        walk_with(office, {std::numeric_limits<std::int64_t>::max(), true, 100, of.cohort, of.class_id},
                  reader(office), take);
    } else {
        auto marks = office.book().coupons_of(of.welder);
        std::reverse(marks.begin(), marks.end());
        walk_marks(office, marks, reader(office), take);
    }
    std::reverse(out.coupons.begin(), out.coupons.end());
    return out;
}

void select(Writing &writing, const Selection &of, const std::function<void(CouponAtHand &)> &take) {
    select_from(
        writing.office(), of,
        // A copy, because what is written changes the one that the transaction keeps.
        [&](const std::string &mark) -> CouponState { return writing.coupon(mark); },
        [&](CouponAtHand &one) {
            take(one);
            writing.let_go(one.mark());
        });
}

} // namespace beadbook
