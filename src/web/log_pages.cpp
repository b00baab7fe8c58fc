// Logging at the bench: one exam with what it found, line by line or by tapping.
#include "facts/log_line.hpp"
#include "measure/text.hpp"
#include "operations/examining.hpp"
#include "operations/finishing.hpp"
#include "operations/logging.hpp"
#include "operations/looking_back.hpp"
#include "operations/taken_back.hpp"
#include "report/coupon_document.hpp"
#include "report/exam_document.hpp"
#include "technique/known_conditions.hpp"
#include "web/coupon_parts.hpp"
#include "web/form.hpp"
#include "web/log_pad_part.hpp"
#include "web/page.hpp"
#include "web/refusal_page.hpp"

namespace beadbook {
namespace {

/// The exam of the path, and its coupon.
struct AtHand {
    CouponState coupon;
    ExamRecord exam;
    std::string path;
};

AtHand at_hand(Visit &visit) {
    CouponState coupon = visit.office().coupon(visit.word("mark"));
    ExamRecord exam = coupon.needed_exam(visit.number("exam"));
    std::string path = exam_path(coupon.record.id, exam.number);
    return {std::move(coupon), std::move(exam), std::move(path)};
}

std::string conditions_line(const ExamRecord &exam) {
    std::vector<std::string> out{exam.examiner.empty() ? "no examiner is named" : exam.examiner};
    if (!exam.level.empty()) out.push_back("level " + exam.level);
    out.push_back(print(exam.date));
    if (!exam.practice.empty()) out.push_back("by " + exam.practice);
    for (const auto &one : exam.equipment) out.push_back("with " + one.serial);
    for (const auto &[name, value] : exam.conditions) out.push_back(name + " " + told_value(name, value));
    return joined(out, " · ");
}

/// What was pressed on this page and refused; null: something else was, or nothing.
const Refusal *refused_by(const Visit &visit, const Refusal *refused, const std::string &deed) {
    return refused && visit.request.path.ends_with("/" + deed) ? refused : nullptr;
}

/// Folded, as it is seldom done; open, with what was typed, where it was refused. Several of them have fields
/// for a reason, each with an id of its own.
std::string deed_with_reason(const Visit &visit, Form &form, const std::string &id, const std::string &button,
                             bool refused, const std::string &label = "The reason") {
    const std::string html =
        form.put("<div class=\"field\"><label for=\"" + id + "\">" + label +
                 "</label><input autocomplete=\"off\" required name=\"why\" id=\"" + id + "\" value=\"" +
                 (refused ? escaped(visit.field("why")) : "") + "\"></div>")
            .html(button);
    return html.empty() ? ""
                        : "<details" + std::string(refused ? " open" : "") + "><summary>" + button +
                              "</summary>" + html + "</details>";
}

/// Takes a find back; a reason is asked where one is needed.
std::string undo_deed(Visit &visit, const AtHand &at, int number, const Refusal *refused) {
    const std::string button = "Undo #" + std::to_string(number);
    if (undone_without_reason(visit.office(), at.coupon, number, visit.person()))
        return deed(visit, at.path + "/undo", button, {{"number", std::to_string(number)}}, "plain");
    const bool this_one = refused && visit.field("number") == std::to_string(number);
    Form form(visit, at.path + "/undo");
    form.hidden("number", std::to_string(number));
    return deed_with_reason(visit, form, "why-" + std::to_string(number), button, this_one);
}

/// Puts another line in its place; the old one is kept.
std::string correct_deed(Visit &visit, const AtHand &at, const IndicationRecord &find,
                         const Refusal *refused) {
    const std::string number = std::to_string(find.number), id = "now-" + number;
    const bool this_one = refused_by(visit, refused, "correct") && visit.field("number") == number;
    Form form(visit, at.path + "/correct", this_one ? refused : nullptr);
    form.hidden("number", number)
        .put("<div class=\"field\"><label for=\"" + id +
             "\">The line as it should be</label><input autocomplete=\"off\" required name=\"now\" id=\"" +
             id + "\" value=\"" + escaped(this_one ? visit.field("now") : print_log_line(find)) +
             "\"></div>");
    return deed_with_reason(visit, form, "why-now-" + number, "Correct #" + number, this_one,
                            "Why it is corrected");
}

/// Each find of the exam, and while it is open what takes it back; the newest one's stands below.
std::string finds_list(Visit &visit, const AtHand &at, int &last, int &count, const Refusal *refused) {
    std::vector<std::string> items;
    std::vector<int> numbers;
    const Refusal *of_undo = refused_by(visit, refused, "undo");
    for (const auto &one : at.coupon.indications) {
        if (one.exam != at.exam.number) continue;
        last = one.number;
        ++count;
        items.push_back("<li value=\"" + std::to_string(one.number) + "\">" + escaped(print_log_line(one)) +
                        (at.exam.finished ? "" : correct_deed(visit, at, one, refused)));
        numbers.push_back(one.number);
    }
    std::string out;
    for (std::size_t i = 0; i < items.size(); ++i)
        out += items[i] +
               (i + 1 < items.size() && !at.exam.finished ? undo_deed(visit, at, numbers[i], of_undo) : "") +
               "</li>";
    if (out.empty())
        return at.exam.finished ? "<p>Nothing is logged.</p>\n" : "<p>Nothing is logged yet.</p>\n";
    return "<ol class=\"finds\">" + out + "</ol>\n";
}

/// Where to go on once this exam is finished.
std::string go_on(Visit &visit, const AtHand &at) {
    const std::string method(name_of(at.exam.method)), &mark = at.coupon.record.id;
    std::string out;
    if (const auto next = next_to_examine(visit.office(), mark, at.exam.method, visit.person())) {
        const std::string button = method + " of " + next->mark;
        out += next->exam > 0
                   ? "<a class=\"button first\" href=\"" + escaped(exam_path(next->mark, next->exam)) +
                         "\">" + escaped(button) + "</a>"
                   : deed(visit, coupon_path(next->mark) + "/exam", button,
                          {{"method", method}, {"as-before", "yes"}});
    }
    if (const auto to_do = to_examine(visit.office(), at.coupon, visit.person()))
        out += exam_buttons(visit, *to_do);
    return "<div class=\"deeds\">" + out + button_to(visit, coupon_path(mark), "Coupon " + mark) +
           button_to(visit, "/", "All that waits") + "</div>\n";
}

/// From an exam that is open to those that were begun along with it, in any order.
std::string to_neighbours(Visit &visit, const AtHand &at) {
    if (at.exam.finished) return "";
    constexpr std::size_t most = 1000;
    const auto beside = open_beside(visit.bench().exam_board().look(visit.office(), at.exam.examiner, most),
                                    at.coupon.record.id, at.exam);
    std::string out;
    const std::string method(name_of(at.exam.method));
    if (beside.before)
        out += button_to(visit, exam_path(beside.before->mark, beside.before->exam),
                         "back to " + method + " of " + beside.before->mark);
    if (beside.after)
        out += button_to(visit, exam_path(beside.after->mark, beside.after->exam),
                         "on to " + method + " of " + beside.after->mark);
    return out.empty() ? "" : "<nav class=\"deeds\" aria-label=\"Exams that are open\">" + out + "</nav>\n";
}

bool asks_to_finish(const Visit &visit, const Refusal *refused) {
    return refused_by(visit, refused, "finish") && is_question(refused->field());
}

std::string end_of(Visit &visit, const AtHand &at, int last, int count, const Refusal *refused) {
    if (at.exam.finished)
        return "<p class=\"done\"><b>Finished by " + escaped(at.exam.finished->by) + ": " +
               (count == 0 ? "none found" : std::to_string(count) + " found") +
               (at.exam.finished->on ? ", on " + print(*at.exam.finished->on) : "") + ".</b></p>\n" +
               go_on(visit, at);
    std::string out = "<div class=\"deeds\">";
    if (count > 0) out += undo_deed(visit, at, last, refused_by(visit, refused, "undo"));
    const std::string all = count == 0 ? "None found" : "These are all: " + std::to_string(count);
    if (asks_to_finish(visit, refused)) return out + "</div>\n" + sent_again(visit, *refused, all);
    const bool anothers = is_anothers(at.exam, {"", visit.person(), visit.account() != nullptr});
    if (anothers && !finishes_for_others(visit.office(), visit.person()))
        return out + "</div>\n<p class=\"quiet\">" + escaped(at.exam.examiner) +
               ", its examiner, says what it found; a keeper may in his stead, for a reason.</p>\n";
    if (anothers)
        return out + "</div>\n<details" + (refused_by(visit, refused, "finish") ? " open" : "") +
               "><summary>Finish it for " + escaped(at.exam.examiner) + "</summary>" +
               Form(visit, at.path + "/finish")
                   .hidden("found", std::to_string(count))
                   .add({"why", "The reason", "", Control::Kind::text, "A keeper's; it is kept."})
                   .html(all) +
               "</details>\n";
    // Without a script the line that stands in the field goes along, so that it is not lost.
    if (visit.may("POST", at.path + "/finish"))
        out += "<noscript><button form=\"log\" formaction=\"" + escaped(at.path) +
               "/finish\" name=\"found\" value=\"" + std::to_string(count) + "\">" + all +
               "</button></noscript>";
    return out + "<span class=\"by-script\">" +
           deed(visit, at.path + "/finish", all, {{"found", std::to_string(count)}}) + "</span></div>\n";
}

/// What stood here before, so that nobody takes it for never seen.
std::string taken_back_part(Visit &visit, const AtHand &at) {
    Document doc;
    add_taken_back(doc, taken_back(visit.office(), at.coupon.record));
    return doc.blocks.empty() ? "" : part_of(std::move(doc), "taken-back");
}

/// What was refused of the exam as a whole, beside what was pressed: the browser opens the page there.
std::string refused_part(Visit &visit, const AtHand &at, const Refusal *refused) {
    if (!refused || refused_by(visit, refused, "correct")) return "";
    return "<div tabindex=\"-1\" autofocus>" + refusal_html(*refused) + "</div>\n" +
           (refused->field() == "examiner"
                ? "<p class=\"deeds\">" + button_to(visit, at.path + "/conditions", "Say who examined") +
                      "</p>\n"
                : "");
}

/// What changes with each line: a module fetches the page again and puts these in their places.
struct Live {
    std::string before; ///< what is logged: of most exams nothing is found, which is said at one look
    std::string beside;
};
Live live(Visit &visit, const AtHand &at, const JudgedOrNot &judged, const Refusal *refused) {
    int last = 0, count = 0;
    const std::string finds = finds_list(visit, at, last, count, refused);
    const std::string end = (asks_to_finish(visit, refused) ? "" : refused_part(visit, at, refused)) +
                            end_of(visit, at, last, count, refused);
    const bool nothing_yet = count == 0 && !at.exam.finished;
    std::string out = "<div id=\"live\" data-live>\n" + verdict_line(judged);
    if (!at.exam.invalid.empty())
        out += "<p class=\"caution\">" + escaped(at.exam.invalid) + " " +
               link_where_open(visit, at.path + "/conditions", "Read the conditions") + "</p>\n";
    if (const std::string &why = at.exam.incomplete.empty() ? at.exam.open : at.exam.incomplete;
        at.exam.finished && !why.empty())
        out += "<p class=\"caution\">It does not count: " + escaped(why) + "</p>\n";
    out += "<h2>Found</h2>\n" + finds + taken_back_part(visit, at) + (nothing_yet ? "" : end);
    if (judged.judged) out += verdict_parts(*judged.judged, false);
    return {"<div id=\"nothing-yet\" data-live>" + (nothing_yet ? end : "") + "</div>\n", out + "</div>\n"};
}

std::string log_form(Visit &visit, const AtHand &at, const JudgedOrNot &judged, const Refusal *refused) {
    return Form(visit, at.path + "/log", refused)
        .put("<div class=\"logbar\">")
        .add({"line", "What was found, one line", "", Control::Kind::text,
              "type, size, place: gas pore 0.045 at 3.2"})
        .put("<button>Log it</button><output id=\"reading\" for=\"f-line\"></output></div>\n" +
             map_part(at.coupon, judged) + log_pad_part(at.coupon.record, at.exam, judged))
        .html("", "id=\"log\" data-reading=\"" + escaped(at.path) + "/reading\"");
}

Answer log_page(Visit &visit, const Refusal *refused) {
    const AtHand at = at_hand(visit);
    const std::string title = std::string(name_of(at.exam.method)) + " of " + at.coupon.record.id;
    std::string main = to_neighbours(visit, at) + "<h1>" + escaped(name_of(at.exam.method)) + " of " +
                       link_to(coupon_path(at.coupon.record.id), at.coupon.record.id) +
                       "</h1>\n<p class=\"quiet\">" + escaped(about(visit.office(), at.coupon.record)) +
                       "</p>\n<p class=\"quiet\">" + escaped(conditions_line(at.exam)) + " " +
                       link_where_open(visit, at.path + "/conditions", "change") + "</p>\n";
    const JudgedOrNot judged = judge_with_cautions(visit.office(), at.coupon);
    const bool open = !at.exam.finished && visit.may("POST", at.path + "/log");
    const Refusal *of_line =
        refused && refused->field() == "line" ? refused : refused_by(visit, refused, "log");
    const Live parts = live(visit, at, judged, of_line ? nullptr : refused);
    main += "<div class=\"bench\"><div>\n" + parts.before;
    if (!open) {
        // Its map is only looked at; a line that came too late is not lost.
        if (visit.field("line").empty()) of_line = nullptr;
        if (of_line)
            main += refusal_html(*refused) + "<p>Not on record: <b>" + escaped(visit.field("line")) +
                    "</b></p>\n";
        main += map_part(at.coupon, judged);
    } else {
        main += log_form(visit, at, judged, of_line);
    }
    main += "</div>" + parts.beside + "</div>\n";
    if (at.exam.finished) {
        Form reopening(visit, at.path + "/reopen");
        main += deed_with_reason(visit, reopening, "why-reopened", "Open it again",
                                 refused_by(visit, refused, "reopen") != nullptr);
    }
    Form withdrawal(visit, at.path + "/withdraw"); // of an exam that was begun by mistake
    main += deed_with_reason(visit, withdrawal, "why-withdrawn", "Withdraw this exam",
                             refused_by(visit, refused, "withdraw") != nullptr);
    return page_of(visit, {title, main, "/", {"log.js"}, refused ? status_of(*refused, true) : 200});
}

/// Does what was pressed; what is refused is told on the same page.
Answer on_this_page(Visit &visit, const std::function<Answer()> &pressed) {
    try {
        return pressed();
    } catch (const Refusal &e) {
        if (visit.request.part || e.kind() == Refusal::Kind::record) return refusal_page(visit, e);
        return log_page(visit, &e);
    }
}

Answer log(Visit &visit) {
    const AtHand at = at_hand(visit);
    return on_this_page(visit, [&] {
        return visit.enter(at.path, [&](Writing &w) {
            auto done = log_lines(
                w, {at.coupon.record.id, at.exam.number, visit.field("line"), "line", visit.meant("sure")});
            std::vector<std::string> notes;
            for (const auto &one : done.value.indications)
                notes.push_back("stored as #" + std::to_string(one.number) + ": " + print_log_line(one));
            add_notes(notes, std::move(done.notes));
            return notes;
        });
    });
}

/// How a line would be read, with nothing stored.
Answer reading(Visit &visit) {
    const AtHand at = at_hand(visit);
    Answer out;
    try {
        const auto read = read_lines(visit.office(), visit.person(),
                                     {at.coupon.record.id, at.exam.number, visit.request.query.text("line")});
        for (const auto &one : read.value.indications)
            out.body += "<p class=\"reads\"><b>reads as</b> " + escaped(print_log_line(one)) +
                        " <span class=\"quiet\">(not stored yet)</span></p>";
        for (const auto &note : read.notes)
            out.body += "<p class=\"quiet\">" + escaped(page_words(note)) + "</p>";
    } catch (const Refusal &e) {
        if (e.kind() == Refusal::Kind::record) throw;
        out.body = "<p class=\"open\">" + escaped(page_words(e.what())) + "</p>";
    }
    return out;
}

Answer undo(Visit &visit) {
    const AtHand at = at_hand(visit);
    return on_this_page(visit, [&] {
        const int number = whole_number_in(visit.field("number"));
        return visit.enter(at.path, [&](Writing &w) -> std::vector<std::string> {
            undo_indication(w, at.coupon.record.id, number, visit.field("why"));
            return {"#" + std::to_string(number) + " is taken back; it stays in the history"};
        });
    });
}

Answer correct_find(Visit &visit) {
    const AtHand at = at_hand(visit);
    return on_this_page(visit, [&] {
        const int number = whole_number_in(visit.field("number"));
        if (at.coupon.needed_indication(number).exam != at.exam.number)
            throw refused("#" + std::to_string(number) + " is not of this exam").at("number");
        return visit.enter(at.path, [&](Writing &w) {
            auto done = correct_indication(w, at.coupon.record.id, number, visit.field("now"),
                                           visit.field("why"), visit.meant("sure"));
            done.notes.insert(done.notes.begin(),
                              "#" + std::to_string(number) + " is corrected; the old line is kept");
            return std::move(done.notes);
        });
    });
}

Answer finish(Visit &visit) {
    const AtHand at = at_hand(visit);
    return on_this_page(visit, [&] {
        // The number on the button is what the examiner saw; another one on record is refused.
        const std::string found = visit.field("found");
        const FinishRequest request{.coupon = at.coupon.record.id,
                                    .exam = at.exam.number,
                                    .found = found == "0" ? 0 : whole_number_in(found),
                                    .why = visit.field("why"),
                                    .sure = visit.meant("sure")};
        if (!visit.field("line").empty())
            throw refused("this line is not logged yet: log it, or clear it, and then finish").at("line");
        return visit.enter(at.path, [&](Writing &w) { return finish_exam(w, request).notes; });
    });
}

Answer reopen(Visit &visit) {
    const AtHand at = at_hand(visit);
    return on_this_page(visit, [&] {
        return visit.enter(at.path, [&](Writing &w) {
            return reopen_exam(w, at.coupon.record.id, at.exam.number, visit.field("why")).notes;
        });
    });
}

Answer withdraw_this_exam(Visit &visit) {
    const AtHand at = at_hand(visit);
    return on_this_page(visit, [&] {
        return visit.enter(coupon_path(at.coupon.record.id), [&](Writing &w) -> std::vector<std::string> {
            withdraw_exam(w, at.coupon.record.id, at.exam.number, visit.field("why"));
            return {"exam " + std::to_string(at.exam.number) + " is withdrawn; it stays in the history"};
        });
    });
}

} // namespace

PageFamily log_pages() {
    const std::string exam = "/coupon/:mark/exam/:exam";
    return {"",
            "",
            {{"GET", exam, [](Visit &v) { return log_page(v, nullptr); }},
             {"GET", exam + "/reading", reading},
             {"POST", exam + "/log", log},
             {"POST", exam + "/undo", undo},
             {"POST", exam + "/correct", correct_find},
             {"POST", exam + "/finish", finish},
             {"POST", exam + "/reopen", reopen},
             {"POST", exam + "/withdraw", withdraw_this_exam}}};
}

} // namespace beadbook
