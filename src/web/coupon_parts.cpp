#include "web/coupon_parts.hpp"

#include "measure/text.hpp"
#include "render/html.hpp"
#include "report/judgement_document.hpp"
#include "web/page.hpp"

#include <algorithm>

namespace beadbook {

std::string coupon_path(const std::string &mark) { return "/coupon/" + url_word(mark); }
std::string exam_path(const std::string &mark, int exam) {
    return coupon_path(mark) + "/exam/" + std::to_string(exam);
}

std::string about(const CouponRecord &coupon) {
    std::vector<std::string> out;
    for (const char *field : {"welder", "joint", "form", "process", "criteria", "class"})
        if (const std::string value = coupon.get(field); !value.empty()) out.push_back(value);
    return joined(out, " · ");
}

std::string exam_buttons(const ToExamine &to_do) {
    std::string out;
    std::vector<std::string> seen;
    for (const auto &exam : to_do.open) {
        seen.emplace_back(name_of(exam.method));
        out += button_to(exam_path(to_do.coupon.id, exam.number),
                         "go on with " + seen.back() + (exam.examiner.empty() ? "" : " by " + exam.examiner));
    }
    for (const auto &asked : to_do.missing)
        for (const auto &method : asked.one_of) {
            if (!exam_named(method) || std::find(seen.begin(), seen.end(), method) != seen.end()) continue;
            seen.push_back(method);
            out += button_to(coupon_path(to_do.coupon.id) + "/exam?method=" + url_word(method),
                             "begin " + method);
        }
    if (to_do.nothing_asked) out += button_to(coupon_path(to_do.coupon.id) + "/exam", "begin an exam");
    return out;
}

std::string verdict_line(const JudgedOrNot &judged) {
    Document doc;
    if (judged.judged)
        doc.line(verdicts_in_a_line(*judged.judged, " | "));
    else
        doc.line(Words(judged.why_not, Tone::cannot_say));
    return "<div class=\"verdict\" role=\"status\">" + fragment(doc) + "</div>\n";
}

std::string verdict_parts(const Judged &judged) {
    return "<details class=\"reasons\" open><summary>Why</summary>\n" +
           one_deeper(fragment(document_of(judged))) + "</details>\n";
}

} // namespace beadbook
