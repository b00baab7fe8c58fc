#include "operations/to_examine.hpp"

#include "operations/finding.hpp"
#include "operations/selecting.hpp"

#include <algorithm>

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

} // namespace

std::optional<ToExamine> to_examine(Office &office, const CouponState &coupon, const std::string &person) {
    if (!coupon.record.withdrawn.empty()) return std::nullopt;
    ToExamine out;
    out.coupon = coupon.record;
    for (const auto *exam : coupon.open_exams()) {
        out.open.push_back(*exam);
        out.mine = out.mine || (!person.empty() && exam->examiner == person);
    }
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

ExamsToDo exams_to_do(Office &office, const std::string &person, std::size_t most) {
    ExamsToDo out;
    select(office, {}, [&](CouponAtHand &one) {
        if (auto found = to_examine(office, one.coupon(), person)) out.coupons.push_back(std::move(*found));
    });
    const auto rank = [](const ToExamine &one) { return one.mine ? 0 : one.open.empty() ? 2 : 1; };
    std::stable_sort(out.coupons.begin(), out.coupons.end(),
                     [&](const ToExamine &a, const ToExamine &b) { return rank(a) < rank(b); });
    out.all = out.coupons.size();
    if (out.coupons.size() > most)
        out.coupons.erase(out.coupons.begin() + static_cast<std::ptrdiff_t>(most), out.coupons.end());
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
