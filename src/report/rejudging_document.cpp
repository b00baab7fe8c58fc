#include "report/rejudging_document.hpp"

#include "measure/text.hpp"
#include "report/coupon_document.hpp"
#include "report/summary_document.hpp"

namespace beadbook {
namespace {

Words side_words(const VerdictBy &side) {
    return verdict_words(side.verdict) + Words(" by " + side.set + ", class " + side.class_id +
                                               (side.rules.empty() ? "" : ": " + listed(side.rules)) +
                                               (side.lacks.empty() ? "" : "; lacks " + listed(side.lacks)));
}

} // namespace

Document document_of(const Rejudged &done) {
    const bool as_kept = done.request.criteria.empty();
    Document doc;
    doc.title = as_kept ? "Verdicts by the texts they kept, and by the sets as they are now"
                        : "Verdicts by the coupons' own criteria, and by " + done.request.criteria;
    doc.heading(doc.title);
    if (!done.request.of.all()) doc.line("Coupons of: " + selection_words(done.request.of));
    doc.line(counted(done.compared, "coupon") + " compared: " +
             (done.flips.empty() ? "no verdict differs"
                                 : std::to_string(done.flips.size()) +
                                       (done.flips.size() == 1 ? " verdict differs" : " verdicts differ")) +
             ". Nothing of this is stored.");
    if (as_kept)
        doc.line(
            Words("What was judged since its criteria changed kept the text of now, and differs no more; "
                  "the verdict before stands in its history.",
                  Tone::quiet));
    if (!done.flips.empty()) {
        doc.heading("What differs", 2);
        Grid table{{{"coupon"}, {as_kept ? "as kept" : "own criteria"}, {as_kept ? "now" : "other"}}, {}};
        for (const auto &flip : done.flips)
            table.rows.push_back({flip.mark, side_words(flip.before), side_words(flip.after)});
        doc.add(std::move(table));
    }
    if (!done.rules.empty()) {
        doc.heading("Coupons that a rule rejected", 2);
        Grid table{
            {{"rule"}, {as_kept ? "as kept" : "own criteria", true}, {as_kept ? "now" : "other", true}}, {}};
        for (const auto &[rule, count] : done.rules)
            table.rows.push_back({rule, std::to_string(count.before), std::to_string(count.after)});
        doc.add(std::move(table));
    }
    if (!done.left_out.empty()) doc.heading("Not compared", 2);
    for (const auto &one : done.left_out) doc.item(one.mark + ": " + one.why);
    return doc.caution();
}

} // namespace beadbook
