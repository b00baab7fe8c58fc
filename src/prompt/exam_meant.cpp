#include "prompt/exam_meant.hpp"

#include "measure/text.hpp"
#include "operations/finishing.hpp"

#include <algorithm>

namespace beadbook {
namespace {

InputError nothing_open(const CouponState &coupon) {
    return InputError("no exam of coupon " + coupon.record.id + " is open");
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
    std::vector<std::string> ways;
    for (const auto *exam : coupon.open_exams())
        ways.push_back("'" + std::string(name_of(exam->method)) +
                       (coupon.finds_of(exam->number) > 0 ? " finish'" : " none'"));
    return "type " + listed(ways, "or");
}

int exam_meant(const CouponState &coupon, int current, const LogOrder &order) {
    if (order.number > 0) return order.number;
    if (current > 0 && !order.method) return current;
    std::vector<const ExamRecord *> open = coupon.open_exams();
    if (order.method) std::erase_if(open, [&](auto *exam) { return exam->method != *order.method; });
    if (open.size() == 1) return open.front()->number;
    const std::string word = order.word == LogWord::nothing ? "none" : "finish";
    std::vector<std::string> ways;
    for (const auto *exam : coupon.open_exams())
        ways.push_back("'" + std::string(name_of(exam->method)) + " " + word + "'");
    if (ways.empty()) throw nothing_open(coupon);
    throw InputError(open.empty() ? "no open exam is by that method; type " + listed(ways, "or")
                     : order.method
                         ? "several are open by that method; 'on " + coupon.record.id + " N' chooses one"
                         : "of which exam? type " + listed(ways, "or") + ", or 'all' of all");
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

} // namespace beadbook
