#include "report/grading_document.hpp"

#include "measure/text.hpp"
#include "report/coupon_document.hpp"
#include "report/own_file.hpp"
#include "report/proof_document.hpp"

namespace beadbook {

std::string deciding_words(const Judged &judged) {
    if (!judged.sought) return "";
    const Case c = case_of(judged);
    const ClassJudgement &one = judged.judgement.classes[*judged.sought];
    if (!one.findings.empty()) return sentence(c, *judged.sought, one.findings.front());
    std::string out = one.nearest ? "nearest to a limit: " + sentence(c, *judged.sought, *one.nearest)
                                  : "nothing came near a limit";
    for (const auto &exam : not_counted_words(judged)) out += "; but " + exam;
    return out;
}

Document document_of(const GradedMany &done) {
    Document doc;
    const std::string decision = done.passed ? "passed" : "failed";
    const std::size_t count = done.graded.size();
    doc.line(count == 0 ? "nothing was graded"
                        : std::to_string(count) + (count == 1 ? " coupon" : " coupons") + " graded " +
                              decision + ":");
    for (const auto &one : done.graded)
        doc.item(Words(one.graded.mark, Tone::strong) +
                 Words((one.welder.empty() ? "" : " by " + one.welder) + ", class " +
                       one.graded.grade.class_id + ": ") +
                 verdict_words(one.graded.verdict) + own_file_behind(one.graded.own_file) +
                 (one.judged.with_cautions() ? Words(", with cautions", Tone::cannot_say) : Words()) +
                 said_otherwise_behind(one.judged.said_otherwise, ", ") +
                 (one.judged.said.empty()
                      ? Words()
                      : Words(", written beside it: " + joined(one.judged.said, "; "), Tone::cannot_say)) +
                 Words("; " + deciding_words(one.judged)));
    if (!done.left_out.empty()) doc.line("left out:");
    for (const auto &one : done.left_out) doc.item(one.coupon + ": " + one.why);
    if (done.graded.empty()) return doc;
    return doc.caution();
}

} // namespace beadbook
