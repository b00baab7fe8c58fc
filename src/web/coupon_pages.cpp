// Coupons: register, one coupon with its verdict, change, remark.
#include "measure/text.hpp"
#include "operations/coupons.hpp"
#include "operations/judging.hpp"
#include "operations/looking.hpp"
#include "operations/looking_back.hpp"
#include "operations/many.hpp"
#include "operations/marks.hpp"
#include "operations/next_coupon.hpp"
#include "operations/to_examine.hpp"
#include "report/coupon_document.hpp"
#include "web/class_parts.hpp"
#include "web/coupon_fields.hpp"
#include "web/coupon_parts.hpp"
#include "web/page.hpp"
#include "web/photo_part.hpp"
#include "web/refusal_page.hpp"

namespace beadbook {
namespace {

Answer register_form(Visit &visit, const Refusal *refused) {
    NextCoupon next;
    if (visit.has_record()) next = next_coupon(visit.office());
    Form form(visit, "/register", refused);
    form.add({"mark", "Mark", next.mark, Control::Kind::text,
              "T-1..T-15 registers fifteen coupons of one kind; their welders may be L1..L15"});
    form.hidden("like", next.like.id);
    add_coupon_fields(form, visit.catalogue(), next.like);
    return page_of(visit,
                   {"Register a coupon",
                    "<h1>Register a coupon</h1>\n" +
                        (next.like.id.empty() ? ""
                                              : "<p class=\"caution\">Filled in as " + escaped(next.like.id) +
                                                    " was: look through all of it, and change what "
                                                    "is otherwise.</p>\n") +
                        form.html("Register"),
                    "/",
                    {},
                    refused ? status_of(*refused, true) : 200});
}

Answer register_now(Visit &visit) {
    visit.may_begin_record();
    try {
        const auto marks = at_field("mark", [&] { return marks_in(visit.field("mark")); });
        const std::string like = visit.field("like"); // the form was filled in by
        const CouponRecord known = like.empty() ? CouponRecord{} : visit.office().coupon(like).record;
        const CouponsRequest request{marks, coupon_fields_in(visit, known), "", visit.meant("sure")};
        const std::string next = request.marks.size() == 1 ? coupon_path(request.marks.front()) : "/";
        return visit.enter(next, [&](Writing &w) {
            auto done = register_coupons(w, request);
            done.notes.insert(done.notes.begin(),
                              marks_text(request.marks) +
                                  (request.marks.size() == 1 ? " is registered" : " are registered"));
            return std::move(done.notes);
        });
    } catch (const Refusal &e) {
        return visit.request.part ? refusal_page(visit, e) : register_form(visit, &e);
    }
}

std::string exam_deeds(const Visit &visit, const ToExamine &to_do) {
    return "<p class=\"deeds\">" + exam_buttons(visit, to_do) + "</p>\n";
}

Answer show(Visit &visit, const Refusal *refused) {
    const std::string &mark = visit.word("mark");
    const CouponSheet sheet = show_coupon(visit.office(), mark);
    const JudgedOrNot judged = judge_with_cautions(visit.office(), sheet.coupon);
    const auto to_do = to_examine(visit.office(), sheet.coupon, visit.person());
    std::string main = "<h1>Coupon " + escaped(mark) + "</h1>\n" + verdict_line(judged);
    if (to_do) main += exam_deeds(visit, *to_do);
    Document known = document_of(sheet);
    // The page has its title already, and its map as the judge sees it.
    std::erase_if(known.blocks, [](const Block &block) {
        const auto *heading = std::get_if<Heading>(&block);
        return (heading && heading->level == 1) || std::holds_alternative<Figure>(block);
    });
    main += map_to_look_at(sheet.coupon, judged) + sheet_part(std::move(known), mark);
    main += photo_form(visit, sheet.coupon) + photos_to_mend(visit, sheet.coupon);
    if (judged.judged)
        main += verdict_parts(*judged.judged) + "<p class=\"deeds\">" +
                button_to(visit, grading_path(mark), "Grade it") + "</p>\n";
    if (visit.may("POST", coupon_path(mark) + "/remark"))
        main += "<h2>Say more</h2>\n<p class=\"deeds\">" +
                button_to(visit, coupon_path(mark) + "/exam", "Another exam") +
                button_to(visit, coupon_path(mark) + "/change", "Correct what was registered") + "</p>\n" +
                Form(visit, coupon_path(mark) + "/remark", refused)
                    .add({"text", "A remark"})
                    .html("Keep the remark");
    return page_of(visit,
                   {"Coupon " + mark, main, "/", {"photo.js"}, refused ? status_of(*refused, true) : 200});
}

Answer change_form(Visit &visit, const Refusal *refused) {
    const std::string &mark = visit.word("mark");
    const CouponState state = visit.office().coupon(mark);
    const CouponRecord &known = state.record;
    Form form(visit, coupon_path(mark) + "/change", refused);
    form.seen(state.record_seq);
    form.add({"why", "The reason", "", Control::Kind::text, "It is kept with what was said before."});
    add_coupon_fields(form, visit.catalogue(), known);
    return page_of(
        visit, {"Correct " + mark,
                "<h1>Correct what was registered about " + escaped(mark) + "</h1>\n" + form.html("Correct"),
                "/",
                {},
                refused ? status_of(*refused, true) : 200});
}

Answer change(Visit &visit) {
    const std::string &mark = visit.word("mark");
    try {
        return visit.enter(coupon_path(mark), [&](Writing &w) {
            visit.must_have_seen(w.coupon(mark).record_seq, "coupon " + mark);
            const CouponRecord known = w.coupon(mark).record;
            CouponChange request{
                {mark, coupon_fields_in(visit, known), visit.meant("sure")}, {}, visit.field("why")};
            // The form holds every field: what stands there no more is to be forgotten.
            for (const auto &[name, value] : known.fields)
                if (visit.request.form.has(name) && visit.field(name).empty()) request.forget.push_back(name);
            auto done = change_coupons(w, {mark}, request);
            done.notes.insert(done.notes.begin(), "changed; what was said before is kept");
            return std::move(done.notes);
        });
    } catch (const Refusal &e) {
        if (visit.request.part || e.field() == "seen") return refusal_page(visit, e);
        return change_form(visit, &e);
    }
}

Answer remark(Visit &visit) {
    const std::string &mark = visit.word("mark");
    try {
        return visit.enter(coupon_path(mark), [&](Writing &w) {
            auto done = remark_on(w, mark, visit.field("text"));
            done.notes.insert(done.notes.begin(), "the remark is kept");
            return std::move(done.notes);
        });
    } catch (const Refusal &e) {
        if (visit.request.part || e.kind() == Refusal::Kind::record) return refusal_page(visit, e);
        return show(visit, &e);
    }
}

} // namespace

PageFamily coupon_pages() {
    return {"",
            "",
            {{"GET", "/register", [](Visit &v) { return register_form(v, nullptr); }},
             {"POST", "/register", register_now},
             {"GET", "/coupon/:mark", [](Visit &v) { return show(v, nullptr); }},
             {"GET", "/coupon/:mark/change", [](Visit &v) { return change_form(v, nullptr); }},
             {"POST", "/coupon/:mark/change", change},
             {"POST", "/coupon/:mark/remark", remark}}};
}

} // namespace beadbook
