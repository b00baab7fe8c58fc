// Coupons at a glance: a line each, and what stands in its cells.
#include "measure/text.hpp"
#include "operations/judging.hpp"
#include "operations/marks.hpp"
#include "report/coupon_document.hpp"
#include "report/own_file.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// Without the colon before the lines that follow it.
std::string first_line(const std::string &text) {
    const std::string out = text.substr(0, text.find('\n'));
    return out.size() < text.size() && out.ends_with(':') ? out.substr(0, out.size() - 1) : out;
}

/// Why coupons are not judged, where that takes more lines than a cell has: once, below the table.
void add_whole(Document &doc, const CouponList &list) {
    std::map<std::string, std::vector<std::string>> marks_by_why;
    for (const auto &one : list.coupons)
        if (one.record.withdrawn.empty() && !one.verdict && one.why_not.find('\n') != std::string::npos)
            marks_by_why[one.why_not].push_back(one.record.id);
    for (const auto &[why, marks] : marks_by_why)
        doc.line(Words(marks_text(marks) + ": " + why, Tone::cannot_say));
}

} // namespace

std::string grade_cell(const CouponLine &one) {
    if (!one.grade) return "";
    const std::string against = against_text(*one.grade), by_other = by_other_text(one.grade_standing);
    return one.grade->decision() + (by_other.empty() ? "" : " (" + by_other + ")") +
           (against.empty() ? "" : " (" + against + ")") +
           (one.record.bends_failed() && !one.grade->against_mechanical ? " (mechanical tests failed)" : "") +
           (one.grade_standing.state == GradeStanding::State::again ? " (to be graded again)" : "");
}

std::string exams_in_a_cell(const std::vector<ExamAtAGlance> &exams) {
    std::vector<std::string> out;
    for (const auto &one : exams)
        out.push_back(std::string(name_of(one.method)) + (one.open      ? " (open)"
                                                          : !one.counts ? " (does not count)"
                                                                        : ""));
    return joined(out, " ");
}

Words said_otherwise_behind(std::vector<std::string> fields, const std::string &between) {
    for (auto &field : fields)
        if (field == "welded") field = "day of the weld";
    return fields.empty()
               ? Words()
               : Words(between + listed(fields) + " said otherwise since it was examined", Tone::cannot_say);
}

Words told_beside(bool cautions, bool written, const std::string &between) {
    return (cautions ? Words(between + "with cautions", Tone::cannot_say) : Words()) +
           (written ? Words(between + "words written beside it", Tone::cannot_say) : Words());
}

Words told_beside(const Judged &judged, const std::string &between) {
    return told_beside(judged.with_cautions(), judged.accepts_any() && !judged.said.empty(), between);
}

Words verdict_in_a_cell(const CouponLine &one) {
    if (!one.record.withdrawn.empty()) return {"withdrawn", Tone::cannot_say};
    const Words verdict = one.verdict ? verdict_words(*one.verdict) : Words(first_line(one.why_not));
    return verdict +
           (one.record.bends_failed() ? Words(" (mechanical tests failed)", Tone::reject) : Words()) +
           told_beside(one.cautions, one.written_beside && one.verdict == Verdict::accept, ", ") +
           said_otherwise_behind(one.said_otherwise, ", ") + own_file_behind(one.own_file);
}

Document nothing_found(bool of_all) {
    return Document{}.line(of_all ? "no coupon is on record" : "no coupon on record is as asked for");
}

Document document_of(const CouponList &list) {
    Document doc;
    doc.title = "Coupons";
    Grid table{{{"coupon"},
                {"welder"},
                {"joint"},
                {"form"},
                {"class"},
                {"exams"},
                {"found", true},
                {"verdict"},
                {"grade"}},
               {}};
    const bool purposes = std::any_of(list.coupons.begin(), list.coupons.end(), [](const CouponLine &one) {
        return !one.record.get("purpose").empty();
    });
    if (purposes) table.columns.push_back({"purpose"});
    for (const auto &one : list.coupons) {
        const auto &r = one.record;
        table.rows.push_back({r.id, r.get("welder"), r.get("joint"), r.get("form"), r.get("class"),
                              exams_in_a_cell(one.exams),
                              // Where nobody looked nothing was found, not none.
                              one.exams.empty() ? "" : std::to_string(one.indications),
                              verdict_in_a_cell(one), grade_cell(one)});
        if (purposes) table.rows.back().push_back(r.get("purpose"));
    }
    if (list.coupons.empty()) return nothing_found(list.of_all);
    doc.add(std::move(table));
    add_whole(doc, list);
    if (list.more) doc.line(Words("older ones are left out", Tone::quiet));
    return doc;
}

} // namespace beadbook
