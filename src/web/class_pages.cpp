// The instructor's first page: the class as a board, and what leads on from it.
#include "operations/board.hpp"
#include "report/coupon_document.hpp"
#include "report/summary_document.hpp"
#include "web/class_parts.hpp"
#include "web/page.hpp"
#include "web/refusal_page.hpp"
#include "web/selection_fields.hpp"

#include <algorithm>

namespace beadbook {
namespace {

constexpr std::size_t most_on_board = 600;

std::string words_html(const Words &words) {
    Document doc;
    return part_of(std::move(doc.line(words)));
}

Words verdict_on_board(const CouponLine &coupon) {
    if (!coupon.record.withdrawn.empty()) return {"withdrawn", Tone::quiet};
    const auto &exams = coupon.exams;
    const auto open = [](const ExamAtAGlance &one) { return one.open; };
    const auto no_use = [](const ExamAtAGlance &one) { return !one.open && !one.counts; };
    return (coupon.verdict ? verdict_in_a_cell(coupon) : Words("not judged", Tone::cannot_say)) +
           Words(std::any_of(exams.begin(), exams.end(), open) ? ", an exam is open" : "") +
           Words(std::any_of(exams.begin(), exams.end(), no_use) ? ", an exam does not count" : "");
}

Words grade_on_board(const Board::Cell &cell) {
    switch (cell.grade) {
    case GradeState::passed:
    case GradeState::failed: {
        const std::string against = cell.coupon.grade ? against_text(*cell.coupon.grade) : "";
        const std::string by_other = by_other_text(cell.coupon.grade_standing);
        return Words("graded " + std::string(name_of(cell.grade))) +
               (by_other.empty() ? Words() : Words(" " + by_other, Tone::strong)) +
               (against.empty() ? Words() : Words(", " + against, Tone::strong));
    }
    case GradeState::again: return {"to be graded again", Tone::strong};
    case GradeState::none: break;
    }
    return cell.coupon.record.withdrawn.empty() ? Words("to be graded", Tone::strong) : Words();
}

std::string cell_html(const Board::Cell &cell, const std::string &query) {
    const std::string &mark = cell.coupon.record.id;
    return "<li>" + link_to(grading_path(mark) + query, mark) + words_html(verdict_on_board(cell.coupon)) +
           words_html(grade_on_board(cell)) + "</li>";
}

std::string learner_html(const Board::Line &line, const std::string &query) {
    if (line.welder.empty()) return "no welder named";
    return link_to(learner_path(line.welder) + query, line.welder) +
           (line.name.empty() ? "" : "<span class=\"quiet\"> " + escaped(line.name) + "</span>");
}

/// On a narrow page each line of the table becomes a block, and each cell says what it is of.
std::string board_html(const Board &board, const std::string &query) {
    std::string out = "<div class=\"board\" tabindex=\"0\" role=\"region\" aria-label=\"Learners and "
                      "coupons\"><table><thead><tr><th scope=\"col\">learner</th>";
    for (const auto &kind : board.kinds) out += "<th scope=\"col\">" + escaped(kind) + "</th>";
    out += "</tr></thead>\n<tbody>";
    for (const auto &line : board.lines) {
        out += "<tr><th scope=\"row\">" + learner_html(line, query) + "</th>";
        for (std::size_t k = 0; k < line.cells.size(); ++k) {
            out += "<td data-kind=\"" + escaped(board.kinds[k]) + "\">";
            if (!line.cells[k].empty()) out += "<ul>";
            for (const auto &cell : line.cells[k]) out += cell_html(cell, query);
            out += line.cells[k].empty() ? "</td>" : "</ul></td>";
        }
        out += "</tr>\n";
    }
    return out + "</tbody></table></div>\n";
}

std::string board_told(const Board &board, const Selection &of) {
    Document doc;
    if (board.coupons == 0) return part_of(nothing_found(of.all()));
    doc.line(Words(selection_words(of), Tone::strong) +
             Words(": " + std::to_string(board.coupons) + (board.coupons == 1 ? " coupon, " : " coupons, ") +
                   std::to_string(board.to_grade) + " to be graded" +
                   (board.withdrawn > 0 ? ", " + std::to_string(board.withdrawn) + " withdrawn" : "")));
    if (board.more)
        doc.line(Words("Older ones are left out; say which coupons, and they are shown.", Tone::quiet));
    return part_of(doc);
}

Answer class_board(Visit &visit) {
    const std::string heading = "<h1>Class</h1>\n";
    if (!visit.has_record())
        return page_of(visit, {"Class", heading + "<p>Nothing is on record yet.</p>", class_path});
    try {
        const Selection of = selection_in(visit.request.query);
        const Board board = board_of(visit.office(), of, most_on_board);
        const std::string query = query_of(of);
        std::string main = heading + class_ways(visit, query) +
                           selection_form(class_path, visit.request.query, visit.catalogue(), nullptr) +
                           "<div id=\"board\" data-live>" + board_told(board, of);
        if (board.coupons > 0) main += board_html(board, query);
        return page_of(visit, {"Class", main + "</div>\n", class_path});
    } catch (const Refusal &e) {
        return refused_selection(visit, "Class", class_path, e);
    }
}

} // namespace

PageFamily class_pages() { return {"Class", class_path, {{"GET", class_path, class_board}}}; }

} // namespace beadbook
