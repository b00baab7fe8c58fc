#include "web/coupon_parts.hpp"

#include "measure/text.hpp"
#include "operations/welder_names.hpp"
#include "render/html.hpp"
#include "report/coupon_document.hpp"
#include "report/judgement_document.hpp"
#include "report/weld_map.hpp"
#include "web/page.hpp"

namespace beadbook {

namespace {

WeldMap map_of(const CouponState &coupon, const JudgedOrNot &judged) {
    if (!judged.judged) return weld_map(coupon.record.facts(), coupon.found(), coupon.record.unit());
    const Judged &by = *judged.judged;
    const std::size_t index = by.sought.value_or(0);
    return weld_map(case_of(by), index, by.judgement.classes.at(index));
}

} // namespace

std::string coupon_path(const std::string &mark) { return "/coupon/" + url_word(mark); }
std::string exam_path(const std::string &mark, int exam) {
    return coupon_path(mark) + "/exam/" + std::to_string(exam);
}

std::string about(Office &office, const CouponRecord &coupon) {
    std::vector<std::string> out;
    if (const std::string welder = coupon.get("welder"); !welder.empty())
        out.push_back(welder_words(welder, welder_name(office.book(), welder)));
    for (const char *field : {"joint", "form", "process", "criteria", "class"})
        if (const std::string value = coupon.get(field); !value.empty())
            out.push_back(field == std::string_view("criteria") ? criteria_name(value) : value);
    return joined(out, " · ");
}

std::string exam_buttons(const Visit &visit, const ToExamine &to_do) {
    std::string out;
    for (const auto &exam : to_do.open)
        out += button_to(visit, exam_path(to_do.coupon.id, exam.number),
                         "go on with " + std::string(name_of(exam.method)) +
                             (exam.examiner.empty() ? "" : " by " + exam.examiner));
    for (const auto &method : to_do.to_begin())
        out += button_to(visit, coupon_path(to_do.coupon.id) + "/exam?method=" + url_word(method),
                         "begin " + method);
    if (to_do.nothing_asked) out += button_to(visit, coupon_path(to_do.coupon.id) + "/exam", "begin an exam");
    return out;
}

std::string map_part(const CouponState &coupon, const JudgedOrNot &judged, bool live) {
    const WeldMap map = map_of(coupon, judged);
    Document doc;
    doc.add(Figure{unrolled(map, 780, Bands::to_tap), unrolled(map, 340, Bands::to_tap), "", ""});
    return "<div id=\"map\"" + std::string(live ? " data-live" : "") + ">\n" + fragment(doc, "map") +
           "</div>\n";
}

std::string map_to_look_at(const CouponState &coupon, const JudgedOrNot &judged) {
    Document doc;
    if (!coupon.indications.empty()) add_map(doc, map_of(coupon, judged), "");
    return fragment(doc, "map");
}

std::string sheet_part(Document sheet, const std::string &mark) {
    return part_of(std::move(sheet), "sheet", [&](int exam) { return exam_path(mark, exam); });
}

std::string verdict_line(const JudgedOrNot &judged) {
    Document doc;
    if (judged.judged)
        doc.line(verdicts_in_a_line(*judged.judged, " | "));
    else
        doc.line(Words(judged.why_not, Tone::cannot_say));
    return "<div class=\"verdict\" role=\"status\">" + fragment(doc) + "</div>\n";
}

std::string verdict_parts(const Judged &judged, bool open) {
    return "<details class=\"reasons\"" + std::string(open ? " open" : "") + "><summary>Why</summary>\n" +
           part_of(document_of(judged), "why") + "</details>\n";
}

} // namespace beadbook
