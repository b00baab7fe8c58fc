#include "operations/to_examine.hpp"

#include "operations/finding.hpp"
#include "operations/judging.hpp"

#include <algorithm>
#include <array>

namespace beadbook {
namespace {

/// Whether an exam on record does what was asked, so that it counts.
bool is_done(const AskedExam &asked, const CouponState &coupon) {
    return std::any_of(coupon.exams.begin(), coupon.exams.end(), [&](const ExamRecord &exam) {
        const auto &choices = asked.one_of;
        return exam.done().counts &&
               std::find(choices.begin(), choices.end(), std::string(name_of(exam.method))) != choices.end();
    });
}

/// Bends and macros are not made at the bench.
bool is_for_the_bench(const AskedExam &asked) {
    return std::any_of(asked.one_of.begin(), asked.one_of.end(),
                       [](const std::string &one) { return exam_named(one).has_value(); });
}

/// Something is missing that no examination brings by itself: a measure, a fact, an exam that counts.
bool is_unsaid(Office &office, const CouponState &coupon) {
    if (coupon.grade || !coupon.record.withdrawn.empty()) return false;
    const JudgedOrNot judged = judge_or_tell(office, coupon);
    return judged.judged && judged.judged->verdict() == Verdict::cannot_say;
}

bool is_of(const ToExamine &one, const std::string &person) {
    return !person.empty() && std::any_of(one.open.begin(), one.open.end(),
                                          [&](const ExamRecord &exam) { return exam.examiner == person; });
}

} // namespace

std::optional<ToExamine> to_examine(Office &office, const CouponState &coupon, const std::string &person) {
    if (!coupon.record.withdrawn.empty()) return std::nullopt;
    ToExamine out;
    out.coupon = coupon.record;
    for (const auto *exam : coupon.open_exams()) out.open.push_back(*exam);
    out.mine = is_of(out, person);
    MethodsResult asked;
    try {
        asked = methods_for(office.catalogue(), coupon.record).value;
    } catch (const Refusal &) {
        // Criteria that are not there any more ask for nothing here; the coupon's own page says so.
    }
    auto all = asked.called_for;
    if (asked.required) all.insert(all.end(), asked.required->exams.begin(), asked.required->exams.end());
    for (auto &one : all)
        if (is_for_the_bench(one) && !is_done(one, coupon)) out.missing.push_back(std::move(one));
    out.nothing_asked = all.empty() && coupon.exams.empty();
    if (out.open.empty() && out.missing.empty() && !out.nothing_asked) return std::nullopt;
    return out;
}

ExamsToDo ExamBoard::look(Office &office, const std::string &person, std::size_t most) {
    const std::lock_guard lock(mutex_);
    const auto changes = office.ledger().changes_after(seen_, Family::coupon);
    for (const auto &mark : changes.subjects) {
        const std::size_t place = order_.try_emplace(mark, order_.size()).first->second;
        const CouponState coupon = office.coupon(mark);
        auto found = to_examine(office, coupon, "");
        if (!found && is_unsaid(office, coupon)) {
            found.emplace().coupon = coupon.record;
            found->unsaid = true;
        }
        if (found)
            waiting_.insert_or_assign(place, std::move(*found));
        else
            waiting_.erase(place);
    }
    seen_ = changes.newest;
    std::array<std::vector<const ToExamine *>, 3> ranks; // the person's own, open ones, the rest
    for (const auto &[place, one] : waiting_)
        ranks[is_of(one, person) ? 0 : one.open.empty() ? 2 : 1].push_back(&one);
    ExamsToDo out;
    out.all = waiting_.size();
    for (const auto &rank : ranks)
        for (const auto *one : rank)
            if (out.coupons.size() < most) {
                out.coupons.push_back(*one);
                out.coupons.back().mine = is_of(*one, person);
            }
    return out;
}

std::optional<NextToExamine> next_to_examine(Office &office, const std::string &after, Exam method,
                                             const std::string &person) {
    constexpr std::ptrdiff_t most = 100;
    const auto marks = office.book().coupons();
    const auto here = std::find(marks.begin(), marks.end(), after);
    if (here == marks.end()) return std::nullopt;
    const auto begin = here + 1, end = begin + std::min(most, marks.end() - begin);
    for (auto mark = begin; mark != end; ++mark) {
        const auto found = to_examine(office, office.coupon(*mark), person);
        if (!found) continue;
        bool begun = false;
        for (const auto &exam : found->open) {
            if (exam.method != method) continue;
            if (exam.examiner == person) return NextToExamine{*mark, exam.number};
            begun = true;
        }
        const auto wants = [&](const AskedExam &asked) {
            return std::find(asked.one_of.begin(), asked.one_of.end(), std::string(name_of(method))) !=
                   asked.one_of.end();
        };
        if (!begun && std::any_of(found->missing.begin(), found->missing.end(), wants))
            return NextToExamine{*mark, 0};
    }
    return std::nullopt;
}

} // namespace beadbook
