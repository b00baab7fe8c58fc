#include "prompt/exam_meant.hpp"

#include "facts/log_line.hpp"
#include "measure/text.hpp"
#include "operations/finishing.hpp"
#include "operations/people.hpp"

#include <algorithm>

namespace beadbook {
namespace {

InputError nothing_open(const CouponState &coupon, const std::string &mend = "") {
    return InputError("no exam of coupon " + coupon.record.id + " is open" + mend);
}

/// How a method that is not open may be said all the same.
std::string other_way(const CouponState &coupon, Exam method) {
    const std::string by(name_of(method));
    const bool finished = std::any_of(coupon.exams.begin(), coupon.exams.end(),
                                      [&](const ExamRecord &one) { return one.method == method; });
    return finished ? "; the " + by + " is finished: 'reopen " + by + " WHY' opens it again"
                    : "; at the command line 'beadbook exam " + coupon.record.id + " " + by + "' begins one";
}

/// What to type for each open exam, with the word that `word_for` gives it: by its method, or where several
/// are by that, by its number.
template <class WordFor>
std::string ways_of_open(const CouponState &coupon, WordFor word_for) {
    const auto open = coupon.open_exams();
    std::vector<std::string> out;
    for (const auto *exam : open) {
        const bool alone = std::count_if(open.begin(), open.end(), [&](const ExamRecord *one) {
                               return one->method == exam->method;
                           }) == 1;
        const std::string word = word_for(*exam);
        out.push_back(alone ? "'" + std::string(name_of(exam->method)) + " " + word + "'"
                            : "'on " + coupon.record.id + " " + std::to_string(exam->number) +
                                  "' and then '" + word + "'");
    }
    return listed(out, "or");
}

bool is_among(const std::vector<Exam> &methods, Exam method) {
    return std::find(methods.begin(), methods.end(), method) != methods.end();
}

} // namespace

std::string names_of(const std::vector<Exam> &methods, const std::string &between) {
    std::vector<std::string> out;
    for (const Exam one : methods) out.emplace_back(name_of(one));
    return joined(out, between);
}

std::string ways_to_finish(const CouponState &coupon) {
    return "type " + ways_of_open(coupon, [&](const ExamRecord &exam) {
               return std::string(coupon.finds_of(exam.number) > 0 ? "finish" : "none");
           });
}

std::string greeting_of(Office &office, const std::string &who, const CouponState &coupon, int exam) {
    const auto open = coupon.open_exams();
    return "coupon " + coupon.record.id + ", " +
           (open.size() > 1 ? "open: " + named(open) + ", " : std::string()) +
           (exam > 0 ? "exam " + named({coupon.exam(exam)}) : "a line begins with its method") +
           "; one indication a line, e.g. 'gas pore 0.045 at 3.2'; also: help, list, undo, finish (these are "
           "all), none, all, next, on COUPON, done\n" +
           (is_somebody(office, who)
                ? ""
                : "  '" + shown(who) +
                      "' names nobody who can be asked: finds are logged, but not corrected, taken "
                      "back or finished; say who you are first: done, and begin again with --by \"A. "
                      "Field\"\n");
}

std::string still_open(Office &office, const std::vector<std::string> &marks) {
    std::string out;
    for (const auto &mark : marks) {
        const CouponState state = office.coupon(mark);
        if (const auto open = state.open_exams(); !open.empty())
            out += ", coupon " + mark + " still open: exam " + named(open);
    }
    return out;
}

int exam_gone_to(Office &office, const LogOrder &order) {
    return order.method ? exam_meant(office.coupon(order.of), 0, order) : order.number;
}

int exam_meant(const CouponState &coupon, int current, const LogOrder &order) {
    if (order.number > 0) return order.number;
    if (current > 0 && !order.method) return current;
    std::vector<const ExamRecord *> open = coupon.open_exams();
    if (order.method) std::erase_if(open, [&](auto *exam) { return exam->method != *order.method; });
    if (open.size() == 1) return open.front()->number;
    if (coupon.open_exams().empty())
        throw nothing_open(coupon, order.method ? other_way(coupon, *order.method) : "");
    const std::string ways = "type " + ways_of_open(coupon, [&](const ExamRecord &) {
                                 return std::string(order.word == LogWord::nothing ? "none" : "finish");
                             });
    throw InputError(open.empty()
                         ? "no open exam is by that method; " + ways + other_way(coupon, *order.method)
                     : order.method ? "several are open by that method; " + ways
                                    : "of which exam? " + ways + ", or 'all' of all");
}

std::vector<int> exams_of_sitting(const CouponState &coupon, const std::vector<Exam> &methods, int current) {
    const auto open = coupon.open_exams();
    if (open.empty()) throw nothing_open(coupon);
    std::vector<int> out;
    for (const auto *exam : open)
        if (methods.empty() ? current == 0 || exam->number == current : is_among(methods, exam->method))
            out.push_back(exam->number);
    if (out.empty())
        throw InputError((methods.empty() ? "exam " + named({coupon.exam(current)}) + " is finished"
                                          : "no " + names_of(methods, " or ") + " of coupon " +
                                                coupon.record.id + " is open") +
                         "; open: " + named(open) + "; " + ways_to_finish(coupon));
    return out;
}

int finished_meant(const CouponState &coupon, int current, const LogOrder &order) {
    if (order.number > 0) return order.number;
    std::vector<const ExamRecord *> finished;
    for (const auto &exam : coupon.exams)
        if (exam.finished && (!order.method || exam.method == *order.method)) finished.push_back(&exam);
    const ExamRecord *at = coupon.exam(current);
    if (!order.method && at && at->finished) return current;
    if (finished.size() == 1) return finished.front()->number;
    const std::string by = order.method ? " by " + std::string(name_of(*order.method)) : "";
    if (finished.empty())
        throw InputError("no exam" + by + " of coupon " + coupon.record.id + " is finished");
    throw InputError("which exam? finished are " + named(finished) + ": type 'reopen " +
                     std::to_string(finished.front()->number) + " WHY' say");
}

Refusal none_open_to_log(const CouponState &coupon) {
    const std::string &mark = coupon.record.id;
    std::vector<const ExamRecord *> finished;
    for (const auto &exam : coupon.exams)
        if (exam.finished) finished.push_back(&exam);
    Refusal out = refused("no exam of coupon " + mark + " is open" +
                          (finished.empty() ? ""
                                            : "; finished: " + named(finished) + ", where 'on " + mark + " " +
                                                  std::to_string(finished.front()->number) +
                                                  "' and then 'reopen WHY' opens it again"));
    out.mend({"exam", {mark}, {}});
    return out;
}

int exam_by(const CouponState &coupon, Exam method) {
    std::vector<const ExamRecord *> fitting;
    for (const auto &exam : coupon.exams)
        if (exam.method == method) fitting.push_back(&exam);
    if (fitting.size() == 1) return fitting.front()->number;
    const std::string by(name_of(method)), &mark = coupon.record.id;
    if (fitting.empty())
        throw refused("coupon " + mark + " has no exam by " + by).mend({"exam", {mark, by}, {}});
    throw refused("which " + by + "? coupon " + mark + " has " + named(fitting) + ": give its number");
}

std::string find_shown(const CouponState &coupon, const IndicationRecord &find) {
    const ExamRecord &exam = coupon.needed_exam(find.exam);
    const auto another = [&](const ExamRecord &one) {
        return one.number != exam.number && (!one.finished || coupon.finds_of(one.number) > 0);
    };
    const bool tell = std::any_of(coupon.exams.begin(), coupon.exams.end(), another);
    const auto by_it = std::count_if(coupon.exams.begin(), coupon.exams.end(),
                                     [&](const ExamRecord &one) { return one.method == exam.method; });
    return "  #" + std::to_string(find.number) + " " + (tell ? std::string(name_of(exam.method)) + " " : "") +
           (tell && by_it > 1 ? "(exam " + std::to_string(exam.number) + ") " : "") +
           visible(print_log_line(find));
}

} // namespace beadbook
