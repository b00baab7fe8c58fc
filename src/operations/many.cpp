#include "operations/many.hpp"

#include "measure/text.hpp"
#include "operations/marks.hpp"

namespace beadbook {
namespace {

/// What one coupon never takes from another: who welded it, when, and what came of it. A cohort welds the
/// same.
constexpr const char *of_one_coupon[] = {"welder", "welded", "mechanical"};

CouponRecord likeness(Writing &writing, const CouponsRequest &request, std::vector<std::string> &notes) {
    if (request.like.empty()) return {};
    CouponRecord out = writing.coupon(request.like).record;
    for (const char *field : of_one_coupon) out.fields.erase(field);
    out.withdrawn.clear();
    out.before.clear();
    std::vector<std::string> taken;
    for (const auto &[name, value] : out.fields)
        if (!request.fields.contains(name)) taken.push_back(name + " " + value.text);
    notes.push_back("like " + request.like + ": " + (taken.empty() ? "nothing" : listed(taken)));
    return out;
}

} // namespace

Done<std::vector<CouponRecord>> register_coupons(Writing &writing, const CouponsRequest &request) {
    Done<std::vector<CouponRecord>> out;
    const CouponRecord base = likeness(writing, request, out.notes);
    std::vector<std::string> welders;
    if (const auto welder = request.fields.find("welder");
        welder != request.fields.end() &&
        (request.marks.size() > 1 || welder->second.find("..") != std::string::npos))
        welders = marks_in(welder->second);
    if (welders.size() > 1 && welders.size() != request.marks.size())
        throw refused(std::to_string(welders.size()) + " welders for " +
                      counted(request.marks.size(), "coupon") + "; expected as many")
            .at("welder");
    MarksAlike alike(writing.book());
    for_each_mark(request.marks, [&](const std::string &mark) {
        CouponRequest one{mark, request.fields, request.sure};
        if (welders.size() > 1) one.fields["welder"] = welders[out.value.size()];
        auto done = register_coupon(writing, one, base, alike);
        out.value.push_back(std::move(done.value));
        for (auto &note : done.notes)
            if (std::find(out.notes.begin(), out.notes.end(), note) == out.notes.end())
                out.notes.push_back(std::move(note));
    });
    return out;
}

Done<std::vector<CouponRecord>> change_coupons(Writing &writing, const std::vector<std::string> &marks,
                                               CouponChange request) {
    Done<std::vector<CouponRecord>> out;
    for_each_mark(marks, [&](const std::string &mark) {
        request.said.mark = mark;
        auto done = change_coupon(writing, request);
        out.value.push_back(std::move(done.value));
        add_notes(out.notes, std::move(done.notes));
    });
    return out;
}

Done<ExamsRecorded> record_exams(Writing &writing, const std::vector<std::string> &marks, ExamRequest request,
                                 std::vector<Exam> methods) {
    Done<ExamsRecorded> out;
    if (methods.empty()) methods.push_back(request.method);
    for_each_mark(marks, [&](const std::string &mark) {
        request.coupon = mark;
        for (const Exam method : methods) {
            request.method = method;
            auto done = record_exam(writing, request);
            out.value.coupons.push_back(mark);
            out.value.exams.push_back(std::move(done.value));
            add_notes(out.notes, std::move(done.notes));
        }
    });
    return out;
}

Done<ExamsFinished> finish_exams(Writing &writing, const std::vector<std::string> &marks,
                                 FinishRequest request, const std::vector<Exam> &methods) {
    Done<ExamsFinished> out;
    const auto finish = [&] {
        auto done = finish_exam(writing, request);
        out.value.coupons.push_back(request.coupon);
        out.value.exams.push_back(std::move(done.value));
        add_notes(out.notes, std::move(done.notes));
    };
    for_each_mark(marks, [&](const std::string &mark) {
        request.coupon = mark;
        if (methods.empty()) finish();
        for (const Exam method : methods) {
            request.method = method;
            finish();
        }
    });
    return out;
}

} // namespace beadbook
