#include "report/range_document.hpp"

#include "report/range_words.hpp"
#include "report/rules_document.hpp"

namespace beadbook {

Document document_of(const RangeResult &result) {
    const Unit unit = result.coupon.unit();
    Document out;
    out.title = "What " + (result.coupon.id.empty() ? "a test" : result.coupon.id) + " would qualify";
    if (const std::string own = result.rules->own_file_words(); !own.empty())
        out.line(Words("Rules " + result.rules->name + ": " + own, Tone::cannot_say));
    for (const auto &one : result.tests) {
        out.heading("Test: " + print(one.test, unit), 2);
        out.line("qualifies by " + result.rules->title + " (" + result.rules->edition + "):");
        out.add(Bullets{range_items(one.range, unit)});
    }
    if (const auto &ends = result.rules->ends; ends.from && ends.kind != EndComparison::Kind::absolute)
        out.gap().line("Ends that are worked out are compared " + ends_words(ends) + " [" +
                       authority(*ends.from) + "]");
    if (!result.rules->gaps.empty()) out.heading("Not in these rules, so never qualified by them:", 2);
    for (const auto &gap : result.rules->gaps) out.item(gap);
    return out.caution();
}

} // namespace beadbook
