// Grading: one coupon after another with its map, reasons and proof, and all that is accepted in one go.
#include "measure/text.hpp"
#include "operations/board.hpp"
#include "operations/grading_many.hpp"
#include "operations/looking_back.hpp"
#include "operations/selecting.hpp"
#include "operations/vouching.hpp"
#include "report/accept_in_short.hpp"
#include "report/coupon_document.hpp"
#include "report/grading_document.hpp"
#include "report/judgement_document.hpp"
#include "report/proof_document.hpp"
#include "report/summary_document.hpp"
#include "web/class_parts.hpp"
#include "web/coupon_parts.hpp"
#include "web/form.hpp"
#include "web/page.hpp"
#include "web/refusal_page.hpp"
#include "web/selection_fields.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// The selection that a coupon is one of: of the address, or what the form kept of it.
Selection selection_gone_through(const Visit &visit) {
    if (!visit.writes()) return selection_in(visit.request.query);
    const std::string kept = visit.field("selection");
    return selection_in(fields_in(kept.starts_with("?") ? kept.substr(1) : kept));
}

std::string grading_steps(const Neighbours &neighbours, const std::string &query) {
    const auto step = [&](const std::string &mark, const std::string &words, const std::string &key) {
        if (mark.empty()) return "<span class=\"quiet\">" + words + ": none</span>";
        return "<a class=\"button\" accesskey=\"" + key + "\" href=\"" + escaped(grading_path(mark) + query) +
               "\">" + words + " " + escaped(mark) + " <kbd>" + key + "</kbd></a>";
    };
    return "<nav class=\"deeds\" aria-label=\"Through the selection\">" +
           step(neighbours.before, "back to", "b") + step(neighbours.after, "on to", "n") +
           "<a class=\"button\" accesskey=\"c\" href=\"" + escaped(class_path + query) +
           "\">the class <kbd>c</kbd></a></nav>\n";
}

std::string decision_buttons() {
    const auto button = [](const std::string &decision, const std::string &key) {
        return "<button class=\"plain\" name=\"decision\" value=\"" + decision + "\" accesskey=\"" + key +
               "\">Grade it " + decision + " <kbd>" + key + "</kbd></button>";
    };
    // What Enter in the remark would press is the first button: nothing.
    return "<p class=\"deeds\"><button disabled hidden></button>" + button("passed", "p") +
           button("failed", "f") + "</p>\n";
}

std::string grading_proof(const Judged &judged) {
    if (!class_to_prove(judged)) return "";
    return "<details class=\"reasons\"><summary>The whole proof</summary>\n" +
           one_deeper(part_of(document_of(InFull<Judged>{judged}), "proof")) + "</details>\n";
}

Document grade_so_far(const CouponSheet &sheet) {
    Document doc;
    if (const std::string id = sheet.coupon.record.get("class"); !id.empty())
        doc.line(Words("Class sought: ") + Words(id, Tone::strong));
    if (sheet.coupon.grade)
        doc.line(Words("Graded ") + grade_words(*sheet.coupon.grade, sheet.grade_standing));
    else
        doc.line("Not graded yet.");
    if (const Words line = mechanical_words(sheet.coupon.record.get("mechanical"),
                                            sheet.coupon.mechanical_said, sheet.mechanical_asked_by);
        !line.empty())
        doc.line(line);
    add_taken_back(doc, sheet.taken_back);
    for (const auto &remark : sheet.coupon.remarks)
        doc.line("Remark by " + remark.stamp.who + ": " + remark.text);
    return doc;
}

Answer grading_form(Visit &visit, const Refusal *refused) {
    const std::string &mark = visit.word("mark");
    const Selection of = selection_gone_through(visit);
    const std::string query = query_of(of);
    const CouponSheet sheet = show_coupon(visit.office(), mark);
    const JudgedOrNot judged = judge_with_cautions(visit.office(), sheet.coupon);
    Form form(visit, grading_path(mark), refused);
    // What was written of another state is no remark on this one.
    const bool anew = refused && refused->field() == "seen";
    form.hidden("selection", query)
        .seen(sheet.coupon.last_seq)
        .add({"remark",
              "Remark",
              "",
              Control::Kind::text,
              "Needed where the grade goes against the verdict.",
              {},
              anew})
        .put(decision_buttons());
    std::string main = grading_steps(neighbours_of(visit.office(), of, mark), query) + "<h1>Coupon " +
                       escaped(mark) + "</h1>\n<p class=\"quiet\">" +
                       escaped(about(visit.office(), sheet.coupon.record)) + "</p>\n" + verdict_line(judged) +
                       part_of(grade_so_far(sheet), "grade");
    main += map_part(sheet.coupon, judged, false);
    if (judged.judged) main += verdict_parts(*judged.judged) + grading_proof(*judged.judged);
    // Below the reasons, which are to be read first.
    if (sheet.coupon.record.withdrawn.empty()) main += form.html("");
    main += "<details class=\"reasons\"><summary>Facts, exams and finds</summary>\n" +
            one_deeper(sheet_part(document_of(sheet), mark)) + "</details>\n<p class=\"deeds\">" +
            button_to(visit, coupon_path(mark), "The coupon itself") + "</p>\n";
    return page_of(visit, {"Grade " + mark, main, class_path, {}, refused ? status_of(*refused, true) : 200});
}

bool decision_in(const std::string &decision) {
    if (decision != "passed" && decision != "failed")
        throw refused("how is it graded? expected passed or failed").at("decision");
    return decision == "passed";
}

Answer grade_one(Visit &visit) {
    const std::string &mark = visit.word("mark");
    try {
        const Selection of = selection_gone_through(visit);
        std::string next;
        return visit.enter(next, [&](Writing &w) {
            const bool passed = decision_in(visit.field("decision"));
            // A grade is about what was looked at: a find or a grade that came since was not.
            visit.must_have_seen(w.coupon(mark).last_seq, "coupon " + mark);
            auto done = grade_coupon(w, {mark, passed, visit.field("remark"), {}});
            done.notes.insert(done.notes.begin(), mark + " is graded " + done.value.grade.decision());
            const std::string after = neighbours_of(w.office(), of, mark).after;
            next = (after.empty() ? class_path : grading_path(after)) + query_of(of);
            return std::move(done.notes);
        });
    } catch (const Refusal &e) {
        if (visit.request.part || e.kind() == Refusal::Kind::record) return refusal_page(visit, e);
        return grading_form(visit, &e);
    }
}

/// What the judge accepts of a selection and nobody graded yet.
Selection accepted_ungraded(Selection of) {
    of.verdict = Verdict::accept;
    of.grade = GradeState::none;
    return of;
}

/// Nobody grades his own.
bool may_grade(Visit &visit, const CouponRecord &coupon) {
    try {
        check_vouches(visit.office(), visit.person(), coupon.get("welder"), "grades it");
        return true;
    } catch (const Refusal &) {
        return false;
    }
}

std::string accepted_list(Visit &visit, const Selection &of, std::size_t &count) {
    std::vector<std::pair<std::string, Document>> coupons;
    std::vector<std::pair<std::string, std::vector<std::string>>> rests_on;
    const std::string query = query_of(of);
    select(visit.office(), accepted_ungraded(of), [&](CouponAtHand &one) {
        const Judged &judged = *one.judged().judged;
        const std::string &mark = one.mark(), id = escaped("m-" + mark);
        const auto sent = visit.request.form.all("mark");
        const auto &before = judged.taken_back;
        const bool ticked = visit.writes()
                                ? std::find(sent.begin(), sent.end(), mark) != sent.end()
                                : judged.sought.has_value() && before.empty() && !judged.with_cautions() &&
                                      may_grade(visit, one.line().record);
        Words told = Words(about(visit.office(), one.line().record) + ": ") + verdict_words(judged.verdict());
        told += told_beside(judged, ", ");
        if (const std::string by = deciding_words(judged); !by.empty()) told += Words("; " + by);
        if (!judged.sought) told += Words("; it names no class", Tone::cannot_say);
        if (const Words tests = mechanical_words(judged.mechanical, judged.mechanical_said, {});
            !tests.empty())
            told += Words("; ") + tests;
        Document doc;
        doc.line(told);
        add_assurances(doc, judged.sure);
        add_taken_back(doc, before);
        rests_on.emplace_back(judged.set->name, accept_in_short(judged));
        coupons.emplace_back("<li><div class=\"field tick\"><input type=\"checkbox\" name=\"mark\" value=\"" +
                                 escaped(mark) + "\" id=\"" + id + "\"" + (ticked ? " checked" : "") +
                                 "><label for=\"" + id + "\">" + escaped(mark) + "</label>" +
                                 link_to(grading_path(mark) + query, "look at it") + "</div>",
                             std::move(doc));
    });
    count = coupons.size();
    const AcceptsInShort said = accepts_in_short(rests_on);
    std::string out;
    for (const auto &words : said.of_sets) out += "<p>" + escaped(words) + "</p>\n";
    out += "<ul class=\"ticks\">\n";
    for (std::size_t i = 0; i < coupons.size(); ++i) {
        for (const auto &words : said.of_each[i]) coupons[i].second.line(Words(words + ".", Tone::quiet));
        out += coupons[i].first + part_of(std::move(coupons[i].second)) + "</li>\n";
    }
    return out + "</ul>\n";
}

Answer accepted_form(Visit &visit, const Refusal *refused) {
    const Selection of = selection_gone_through(visit);
    const std::string query = query_of(of);
    std::size_t count = 0;
    const std::string list = accepted_list(visit, of, count);
    std::string main = "<h1>Grade what is accepted</h1>\n<p><b>" + escaped(selection_words(of)) +
                       "</b>: " + std::to_string(count) + (count == 1 ? " coupon is" : " coupons are") +
                       " accepted, for the class sought or where none is for any, and not graded. The ticked "
                       "ones are graded passed, "
                       "or none of them.</p>\n";
    if (count == 0 && !refused) {
        main += "<p class=\"deeds\">" + button_to(visit, class_path + query, "The class") + "</p>\n";
    } else {
        Form form(visit, class_path + "/accepted", refused);
        form.hidden("selection", query)
            .seen(visit.office().ledger().last_entry_of(Family::coupon))
            .put(list)
            .add({"remark", "Remark", "", Control::Kind::text, "It is kept with each of them."});
        main += form.html("Grade them passed");
    }
    return page_of(
        visit, {"Grade what is accepted", main, class_path, {}, refused ? status_of(*refused, true) : 200});
}

Answer accepted_asked(Visit &visit) {
    if (!visit.has_record()) return see_other(class_path);
    try {
        return accepted_form(visit, nullptr);
    } catch (const Refusal &e) {
        return refused_selection(visit, "Grade what is accepted", class_path + "/accepted", e);
    }
}

Answer grade_accepted(Visit &visit) {
    try {
        const Selection of = selection_gone_through(visit);
        return visit.enter(class_path + query_of(of), [&](Writing &w) {
            const auto ticked = visit.request.form.all("mark");
            if (ticked.empty()) throw refused("which ones? none is ticked").at("mark");
            for (const auto &mark : ticked) visit.must_be_as_seen(w.coupon(mark).last_seq, "coupon " + mark);
            auto done = grade_these(w, {true, visit.field("remark"), {}, accepted_ungraded(of)}, ticked);
            std::vector<std::string> marks;
            for (const auto &one : done.value.graded) marks.push_back(one.graded.mark);
            done.notes.insert(done.notes.begin(),
                              listed(marks) + (marks.size() == 1 ? " is" : " are") + " graded passed");
            return std::move(done.notes);
        });
    } catch (const Refusal &e) {
        if (visit.request.part || e.kind() == Refusal::Kind::record) return refusal_page(visit, e);
        return accepted_form(visit, &e);
    }
}

} // namespace

PageFamily grading_pages() {
    return {"",
            "",
            {{"GET", class_path + "/coupon/:mark", [](Visit &v) { return grading_form(v, nullptr); }},
             {"POST", class_path + "/coupon/:mark", grade_one},
             {"GET", class_path + "/accepted", accepted_asked},
             {"POST", class_path + "/accepted", grade_accepted, "mark"}}};
}

} // namespace beadbook
