#include "operations/to_examine.hpp"

#include "operations/finding.hpp"
#include "operations/selecting.hpp"

#include <algorithm>
#include <array>

namespace beadbook {
namespace {

/// Whether an exam on record does what was asked, so that it counts.
bool is_done(const AskedExam &asked, const std::vector<ExamAtAGlance> &exams) {
    return std::any_of(exams.begin(), exams.end(), [&](const ExamAtAGlance &exam) {
        const auto &choices = asked.one_of;
        return exam.counts &&
               std::find(choices.begin(), choices.end(), std::string(name_of(exam.method))) != choices.end();
    });
}

/// Bends and macros are not made at the bench.
bool is_for_the_bench(const AskedExam &asked) {
    return std::any_of(asked.one_of.begin(), asked.one_of.end(),
                       [](const std::string &one) { return exam_named(one).has_value(); });
}

/// Something is missing that no examination brings by itself: a measure, a fact, an exam that counts.
bool is_unsaid(const CouponLine &coupon) {
    return !coupon.grade && coupon.record.withdrawn.empty() && coupon.verdict == Verdict::cannot_say;
}

bool any_open(const std::vector<ExamAtAGlance> &exams) {
    return std::any_of(exams.begin(), exams.end(), [](const ExamAtAGlance &exam) { return exam.open; });
}

bool is_of(const ToExamine &one, const std::string &person) {
    return !person.empty() && std::any_of(one.open.begin(), one.open.end(),
                                          [&](const ExamRecord &exam) { return exam.examiner == person; });
}

/// All but the open exams themselves, which take the whole coupon to tell of.
std::optional<ToExamine> asked_and_not_done(Office &office, const CouponRecord &coupon,
                                            const std::vector<ExamAtAGlance> &exams) {
    if (!coupon.withdrawn.empty()) return std::nullopt;
    ToExamine out;
    out.coupon = coupon;
    MethodsResult asked;
    try {
        asked = methods_for(office.catalogue(), coupon).value;
    } catch (const Refusal &) {
        // Criteria that are not there any more ask for nothing here; the coupon's own page says so.
    }
    auto all = asked.called_for;
    if (asked.required) all.insert(all.end(), asked.required->exams.begin(), asked.required->exams.end());
    for (auto &one : all)
        if (is_for_the_bench(one) && !is_done(one, exams)) out.missing.push_back(std::move(one));
    out.nothing_asked = all.empty() && exams.empty();
    if (!any_open(exams) && out.missing.empty() && !out.nothing_asked) return std::nullopt;
    return out;
}

/// By the set of a coupon that names no class.
std::vector<AskedExam> asked_in_any_class(Office &office, const CouponRecord &coupon) {
    std::vector<AskedExam> out;
    const std::string criteria = coupon.get("criteria");
    if (criteria.empty() || !coupon.get("class").empty()) return out;
    try {
        const auto set = office.catalogue().criteria(criteria);
        for (std::size_t k = 0; k < set->classes.size(); ++k)
            for (auto &one : required_exams(*set, k, coupon.facts())) out.push_back(std::move(one));
    } catch (const Refusal &) {
        // Its own page says that they are not there any more.
    }
    return out;
}

void take_open(ToExamine &into, const CouponState &coupon, const std::string &person) {
    for (const auto *exam : coupon.open_exams()) into.open.push_back(*exam);
    into.mine = is_of(into, person);
}

/// Of most coupons the kept line says all.
std::optional<ToExamine> to_examine(Office &office, CouponAtHand &one, const std::string &person) {
    auto out = asked_and_not_done(office, one.line().record, one.line().exams);
    if (out && any_open(one.line().exams)) take_open(*out, one.coupon(), person);
    return out;
}

/// The person's own open exam by the method, or one to begin.
std::optional<NextToExamine> next_of(const ToExamine &found, Exam method, const std::string &person) {
    bool begun = false;
    for (const auto &exam : found.open) {
        if (exam.method != method) continue;
        if (exam.examiner == person) return NextToExamine{found.coupon.id, exam.number};
        begun = true;
    }
    const auto may = found.to_begin();
    if (begun || std::find(may.begin(), may.end(), name_of(method)) == may.end()) return std::nullopt;
    return NextToExamine{found.coupon.id, 0};
}

} // namespace

std::vector<std::string> ToExamine::to_begin() const {
    const auto is_open = [&](const std::string &method) {
        return std::any_of(open.begin(), open.end(),
                           [&](const ExamRecord &exam) { return name_of(exam.method) == method; });
    };
    std::vector<std::string> out;
    for (const auto &asked : missing) {
        if (std::any_of(asked.one_of.begin(), asked.one_of.end(), is_open)) continue;
        for (const auto &method : asked.one_of)
            if (exam_named(method) && std::find(out.begin(), out.end(), method) == out.end())
                out.push_back(method);
    }
    return out;
}

std::optional<ToExamine> to_examine(Office &office, const CouponState &coupon, const std::string &person) {
    auto out = asked_and_not_done(office, coupon.record, exams_at_a_glance(coupon));
    if (out) take_open(*out, coupon, person);
    return out;
}

std::string first_exam(Office &office, const CouponState &coupon) {
    const auto to_do = to_examine(office, coupon, "");
    std::vector<AskedExam> all = to_do ? to_do->missing : std::vector<AskedExam>{};
    if (all.empty()) all = asked_in_any_class(office, coupon.record);
    std::string first;
    for (const auto &asked : all)
        for (const auto &one : asked.one_of) {
            if (one == name_of(Exam::VT)) return one;
            if (first.empty() && exam_named(one)) first = one;
        }
    return first.empty() ? std::string(name_of(Exam::VT)) : first;
}

void ExamBoard::take(Office &office, CouponAtHand &one) {
    const std::size_t place = order_.try_emplace(one.mark(), order_.size()).first->second;
    auto found = to_examine(office, one, "");
    if (!found && is_unsaid(one.line())) {
        found.emplace().coupon = one.line().record;
        found->unsaid = true;
    }
    if (found)
        waiting_.insert_or_assign(place, std::move(*found));
    else
        waiting_.erase(place);
}

ExamsToDo ExamBoard::look(Office &office, const std::string &person, std::size_t most) {
    const std::lock_guard lock(mutex_);
    const auto changes = office.ledger().changes_after(seen_, Family::coupon);
    const auto take_one = [&](CouponAtHand &one) {
        take(office, one);
        return true;
    };
    if (seen_ == 0)
        walk(office, {}, take_one);
    else
        walk_these(office, changes.subjects, take_one);
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
    const std::vector<std::string> coming(here + 1, here + 1 + std::min(most, marks.end() - here - 1));
    std::optional<NextToExamine> out;
    walk_these(office, coming, [&](CouponAtHand &one) {
        const auto found = to_examine(office, one, person);
        if (found) out = next_of(*found, method, person);
        return !out;
    });
    return out;
}

OpenBeside open_beside(const ExamsToDo &board, const std::string &mark, const ExamRecord &exam) {
    OpenBeside out;
    bool passed = false;
    for (const auto &one : board.coupons) {
        if (one.coupon.id == mark) {
            passed = true;
            continue;
        }
        const auto same = std::find_if(one.open.begin(), one.open.end(), [&](const ExamRecord &other) {
            return other.method == exam.method && other.examiner == exam.examiner;
        });
        if (same == one.open.end()) continue;
        (passed ? out.after : out.before) = NextToExamine{one.coupon.id, same->number};
        if (passed) break;
    }
    return out;
}

} // namespace beadbook
