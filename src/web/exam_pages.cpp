// Beginning an exam, and its conditions.
#include "facts/reason.hpp"
#include "measure/text.hpp"
#include "operations/as_before.hpp"
#include "operations/many.hpp"
#include "operations/marks.hpp"
#include "web/coupon_parts.hpp"
#include "web/exam_fields.hpp"
#include "web/page.hpp"
#include "web/refusal_page.hpp"

namespace beadbook {
namespace {

Exam method_in(const std::string &word) {
    if (const auto method = exam_named(word)) return *method;
    throw refused("'" + shown(word) + "' is no exam; expected " + exam_names_text()).at("method");
}

Answer choose_method(Visit &visit) {
    const std::string path = coupon_path(visit.word("mark")) + "/exam?method=";
    std::string main = "<h1>Which exam of " + escaped(visit.word("mark")) + "?</h1>\n<p class=\"deeds\">";
    for (const auto &method : method_table)
        main += button_to(visit, path + url_word(method.name),
                          std::string(method.name) + " " + std::string(method.called));
    return page_of(visit, {"Which exam?", main + "</p>\n", "/"});
}

/// What stands in the form at first, and where that comes from.
struct Proposed {
    ExamRecord exam;
    std::vector<std::string> notes;
};

Proposed proposed(Visit &visit, Exam method) {
    Proposed out;
    out.exam.method = method;
    out.exam.date = visit.outside().today();
    out.exam.examiner = visit.person();
    try {
        AsBefore before = fill_as_before(visit.office(), out.exam, false);
        if (before.practice) out.exam.practice = before.practice->name;
        out.notes = std::move(before.notes);
    } catch (const Refusal &e) {
        if (e.kind() == Refusal::Kind::record) throw;
        // The person's first one of this method: there is nothing to begin with.
    }
    return out;
}

Answer begin_form(Visit &visit, const std::string &word, const Refusal *refused) {
    const std::string &mark = visit.word("mark");
    const Exam method = method_in(word);
    const Proposed at_first = proposed(visit, method);
    visit.office().coupon(mark); // or there is none
    const std::string coupons = visit.request.query.text("coupons");
    Form form(visit, coupon_path(mark) + "/exam", refused);
    form.hidden("method", word)
        .add({"coupons", "Coupons", coupons.empty() ? mark : coupons, Control::Kind::text,
              "T-1..T-15 begins the same exam of fifteen"});
    add_exam_fields(form, visit, at_first.exam);
    const std::string main = "<h1>Begin " + escaped(word) + " of " + escaped(mark) + "</h1>\n" +
                             notes_html(at_first.notes) + form.html("Begin " + word);
    return page_of(
        visit, {"Begin " + word + " of " + mark, main, "/", {}, refused ? status_of(*refused, true) : 200});
}

Answer ask(Visit &visit) {
    const std::string method = visit.request.query.text("method");
    return method.empty() ? choose_method(visit) : begin_form(visit, method, nullptr);
}

Answer begin(Visit &visit) {
    const std::string &mark = visit.word("mark");
    try {
        const ExamRequest request = exam_request_in(visit, mark, method_in(visit.field("method")));
        const std::string said = visit.field("coupons");
        const auto marks = marks_in(said.empty() ? mark : said);
        std::string next;
        return visit.enter(next, [&](Writing &w) {
            auto done = record_exams(w, marks, request);
            next = exam_path(marks.front(), done.value.exams.front().number);
            if (marks.size() > 1)
                done.notes.insert(done.notes.begin(),
                                  visit.field("method") + " of " + marks_text(marks) + " is begun");
            return std::move(done.notes);
        });
    } catch (const Refusal &e) {
        if (visit.request.part || e.kind() == Refusal::Kind::record) return refusal_page(visit, e);
        return begin_form(visit, visit.field("method"), &e);
    }
}

Answer conditions_form(Visit &visit, const Refusal *refused) {
    const std::string &mark = visit.word("mark");
    const CouponState coupon = visit.office().coupon(mark);
    const ExamRecord exam = coupon.needed_exam(visit.number("exam"));
    const std::string title = "Conditions of " + std::string(name_of(exam.method)) + " of " + mark;
    Form form(visit, exam_path(mark, exam.number) + "/conditions", refused);
    form.seen(coupon.exam_seq.at(exam.number));
    add_exam_fields(form, visit, exam);
    // Nobody's words are kept as a reason that he did not write, save for what an open exam lacked.
    const bool filled_in = !exam.finished && exam.conditions.empty();
    form.add({"why", "The reason", filled_in ? std::string(read_at_bench) : std::string(),
              Control::Kind::text, "It is kept with what was said before."});
    return page_of(visit, {title,
                           "<h1>" + escaped(title) + "</h1>\n" + form.html("Keep"),
                           "/",
                           {},
                           refused ? status_of(*refused, true) : 200});
}

Answer keep_conditions(Visit &visit) {
    const std::string &mark = visit.word("mark");
    const int number = visit.number("exam");
    try {
        return visit.enter(exam_path(mark, number), [&](Writing &w) {
            const ExamRecord old = w.coupon(mark).needed_exam(number);
            // What is sent stands in place of all that the page showed: what nobody saw would go with it.
            if (!visit.request.form.has("seen"))
                throw refused(
                    "what is sent does not say which conditions it stands in place of, and some that "
                    "are on record would go unseen; nothing is stored. Open the page of the "
                    "conditions, and change what it shows")
                    .at("seen");
            visit.must_have_seen(w.coupon(mark).exam_seq.at(number), "exam " + std::to_string(number));
            ExamRequest request = exam_request_in(visit, mark, old.method);
            request.replaces = number;
            request.says_all = true;
            if (old.finished) request.found = old.finished->found;
            request.found_as_before = true;
            auto done = record_exam(w, request);
            done.notes.insert(done.notes.begin(), "kept; what was said before stays on record");
            return std::move(done.notes);
        });
    } catch (const Refusal &e) {
        if (visit.request.part || e.kind() == Refusal::Kind::record || e.field() == "seen")
            return refusal_page(visit, e);
        return conditions_form(visit, &e);
    }
}

} // namespace

PageFamily exam_pages() {
    return {
        "",
        "",
        {{"GET", "/coupon/:mark/exam", ask},
         {"POST", "/coupon/:mark/exam", begin},
         {"GET", "/coupon/:mark/exam/:exam/conditions", [](Visit &v) { return conditions_form(v, nullptr); }},
         {"POST", "/coupon/:mark/exam/:exam/conditions", keep_conditions}}};
}

} // namespace beadbook
