// Measuring on a photo: marks on a known length and on the find, a proposal of its size, and the line that
// enters it.
#include "operations/logging.hpp"
#include "operations/photo_measuring.hpp"
#include "operations/photos.hpp"
#include "report/photo_document.hpp"
#include "web/coupon_parts.hpp"
#include "web/form.hpp"
#include "web/page.hpp"
#include "web/refusal_page.hpp"

namespace beadbook {
namespace {

const std::pair<const char *, const char *> mark_fields[] = {
    {"known-1-x", "One end, across"},  {"known-1-y", "One end, down"},  {"known-2-x", "Other end, across"},
    {"known-2-y", "Other end, down"},  {"find-1-x", "One end, across"}, {"find-1-y", "One end, down"},
    {"find-2-x", "Other end, across"}, {"find-2-y", "Other end, down"}};

PhotoMeasureRequest request_in(Visit &visit) {
    const SentFields &query = visit.request.query;
    PhotoMeasureRequest out;
    out.coupon = visit.word("mark");
    out.photo = visit.word("photo");
    out.known = query.text("known");
    for (std::size_t i = 0; i < out.marks.size(); ++i) out.marks[i] = query.text(mark_fields[i].first);
    out.off = query.text("off", "3");
    out.measure = query.text("measure", "size");
    return out;
}

std::string field(const std::string &name, const std::string &label, const std::string &value,
                  const std::string &more = "") {
    return "<div class=\"field\"><label for=\"f-" + name + "\">" + label + "</label><input id=\"f-" + name +
           "\" name=\"" + name + "\" autocomplete=\"off\" value=\"" + escaped(value) + "\"" + more +
           "></div>";
}

std::string marks_of(const std::string &title, const PhotoMeasureRequest &request, std::size_t from,
                     const std::string &first = "") {
    std::string out = "<fieldset class=\"marks\"><legend>" + title + "</legend>" + first;
    for (std::size_t i = from; i < from + 4; ++i)
        out += field(mark_fields[i].first, mark_fields[i].second, request.marks[i], " inputmode=\"decimal\"");
    return out + "</fieldset>\n";
}

/// Nothing is entered by it, so it goes with the address.
std::string marks_form(const std::string &path, const PhotoMeasureRequest &request) {
    std::string measures;
    for (const auto &word : photo_measures())
        measures +=
            "<option" + std::string(word == request.measure ? " selected" : "") + ">" + word + "</option>";
    return "<form id=\"sizes\" method=\"get\" action=\"" + escaped(path) + "#result\">\n" +
           marks_of("Known length, marks 1 and 2", request, 0,
                    field("known", "Its length: 1 in, 10 mm", request.known)) +
           marks_of("Find, marks 3 and 4", request, 4,
                    "<div class=\"field\"><label for=\"f-measure\">Which measure it is</label><select "
                    "id=\"f-measure\" name=\"measure\">" +
                        measures + "</select></div>") +
           field("off", "Each mark may be off by, in pixels of the picture", request.off,
                 " inputmode=\"decimal\"") +
           "<p class=\"deeds\"><button>Work it out</button></p></form>\n";
}

/// What enters it: a line that the person edits and stands for.
std::string entering(Visit &visit, const MeasuredOnPhoto &measured, const std::string &photo) {
    const std::string &mark = visit.word("mark");
    const Control line{"line", "The line that is entered", measured.line};
    if (measured.find > 0)
        return Form(visit, photo + "/correct")
            .hidden("number", std::to_string(measured.find))
            .add(line)
            .add({"why", "The reason", "measured on a photo"})
            .html("Correct #" + std::to_string(measured.find));
    std::string out;
    for (const auto &exam : measured.open_exams)
        out += Form(visit, exam_path(mark, exam.number) + "/log")
                   .add({"line", "The line that is entered; the type goes in front of it", measured.line})
                   .html("Log it under exam " + std::to_string(exam.number) + ", " +
                         std::string(name_of(exam.method)));
    return out.empty() ? "<p>No exam of the coupon is open, under which it could be logged: <code>" +
                             escaped(measured.line) + "</code></p>\n"
                       : out;
}

std::string result(Visit &visit, const PhotoMeasureRequest &request, const std::string &photo) {
    if (!visit.request.query.has("known")) return "";
    std::string out = "<section id=\"result\">\n<h2>What it comes to</h2>\n";
    try {
        const MeasuredOnPhoto measured = measure_on_photo(visit.office(), request);
        out += part_of(document_of(measured), "measured") + entering(visit, measured, photo);
    } catch (const Refusal &e) {
        if (e.kind() == Refusal::Kind::record) throw;
        out += refusal_html(e);
    }
    return out + "</section>\n";
}

Answer measure_page(Visit &visit) {
    const std::string &mark = visit.word("mark");
    const CouponState coupon = visit.office().coupon(mark);
    const PhotoRecord &photo = photo_on(coupon, visit.word("photo"));
    const std::string at = coupon_path(mark) + "/photo/" + photo.hash,
                      name = "photo " + std::to_string(photo.number);
    const PhotoMeasureRequest request = request_in(visit);
    const std::string main = "<h1>Measure on " + name + " of " + link_to(coupon_path(mark), mark) +
                             "</h1>\n<p>Mark both ends of a length that you know, of a ruler say, then both "
                             "ends of the find. The arrow "
                             "keys move a mark, with Shift ten times as far. Without the marks the fields "
                             "take the places in pixels, from "
                             "the upper left corner.</p>\n<div id=\"measuring\"><img src=\"" +
                             escaped(at) + "\" alt=\"" + escaped(name) + "\"></div>\n" +
                             marks_form(at + "/measure", request) + result(visit, request, at);
    return page_of(visit, {"Measure on " + name, main, "/", {"measure.js"}});
}

Answer correct(Visit &visit) {
    const std::string &mark = visit.word("mark");
    const int number = whole_number_in(visit.field("number"));
    return visit.enter(coupon_path(mark), [&](Writing &w) {
        auto done =
            correct_indication(w, mark, number, visit.field("line"), visit.field("why"), visit.meant("sure"));
        done.notes.insert(done.notes.begin(),
                          "#" + std::to_string(number) + " is corrected; the old line is kept");
        return std::move(done.notes);
    });
}

} // namespace

PageFamily measuring_pages() {
    const std::string photo = "/coupon/:mark/photo/:photo";
    return {"", "", {{"GET", photo + "/measure", measure_page}, {"POST", photo + "/correct", correct}}};
}

} // namespace beadbook
