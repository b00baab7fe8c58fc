#include "operations/many.hpp"

#include "facts/name_likeness.hpp"
#include "measure/text.hpp"
#include "measure/words_apart.hpp"
#include "operations/marks.hpp"
#include "operations/registered_like.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// What one coupon never takes from another: who welded it, when, and what came of it. A cohort welds the
/// same.
constexpr std::string_view came_of_it = "mechanical";
constexpr std::string_view of_one_coupon[] = {"welder", "welded", came_of_it};

CouponRecord likeness(Writing &writing, const CouponsRequest &request, std::vector<std::string> &notes) {
    if (request.like.empty()) return {};
    CouponRecord out = writing.coupon(request.like).record;
    std::vector<std::string> taken, left;
    for (const std::string_view each : of_one_coupon) {
        const std::string field(each);
        if (out.fields.erase(field) > 0 && each != came_of_it && !request.fields.contains(field))
            left.push_back(field);
        out.by_settings.erase(field);
    }
    out.withdrawn.clear();
    out.before.clear();
    out.like = request.like;
    for (const auto &[name, value] : out.fields)
        if (!request.fields.contains(name)) taken.push_back(name + " " + value.text);
    notes.push_back("like " + request.like + ": " + (taken.empty() ? "nothing" : listed(taken)) +
                    (left.empty() ? "" : "; to be told anew: " + listed(left)));
    return out;
}

bool is_no_figure(char c) { return c < '0' || c > '9'; }
bool is_figure_of_cohort(char c) { return !is_no_figure(c); }

/// Another cohort on record that this one may be with a slip in its letters; figures tell years and groups.
std::string cohort_like(Ledger &ledger, const std::string &cohort) {
    if (cohort.empty() || ledger.names_cohort(cohort)) return "";
    const auto all = ledger.cohorts_named();
    const auto letters = [](const std::string &text) {
        return joined(words_apart(text, is_figure_of_cohort), " ");
    };
    const auto like = std::find_if(all.begin(), all.end(), [&](const std::string &one) {
        return words_apart(one, is_no_figure) == words_apart(cohort, is_no_figure) &&
               may_be_misspelt(letters(one), letters(cohort));
    });
    return like == all.end() ? "" : *like;
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
    if (const auto cohort = request.fields.find("cohort"); cohort != request.fields.end())
        if (const std::string like = cohort_like(writing.ledger(), std::string(trimmed(cohort->second)));
            !like.empty())
            out.notes.push_back("no coupon on record is of cohort '" + shown(cohort->second) +
                                "' yet; did you mean '" + shown(like) + "'?");
    MarksAlike alike(writing.book());
    for_each_mark(request.marks, [&](const std::string &mark) {
        CouponRequest one{mark, request.fields, request.sure, {}, request.by_settings};
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
    std::vector<CouponRecord> before;
    for_each_mark(marks, [&](const std::string &mark) {
        request.said.mark = mark;
        before.push_back(writing.coupon(mark).record);
        auto done = change_coupon(writing, request);
        out.value.push_back(std::move(done.value));
        add_notes(out.notes, std::move(done.notes));
    });
    note_registered_like(writing.office(), before, out.notes);
    return out;
}

namespace {

int last_exam(const CouponState &coupon, Exam method) {
    int out = 0;
    for (const auto &exam : coupon.exams)
        if (exam.method == method) out = std::max(out, exam.number);
    if (out == 0)
        throw refused("coupon " + coupon.record.id + " has no " + std::string(name_of(method)) +
                      " that another could stand in place of")
            .at("replaces");
    return out;
}

} // namespace

Done<ExamsRecorded> record_exams(Writing &writing, const std::vector<std::string> &marks, ExamRequest request,
                                 std::vector<Exam> methods) {
    Done<ExamsRecorded> out;
    if (methods.empty()) methods.push_back(request.method);
    for_each_mark(marks, [&](const std::string &mark) {
        request.coupon = mark;
        for (const Exam method : methods) {
            request.method = method;
            if (request.replaces_last) request.replaces = last_exam(writing.coupon(mark), method);
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
