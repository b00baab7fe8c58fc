#include "report/range_document.hpp"

#include "report/range_words.hpp"

namespace beadbook {

Document document_of(const RangeResult &result) {
    const Unit unit = result.coupon.unit();
    Document out;
    out.title = "What " + (result.coupon.id.empty() ? "a test" : result.coupon.id) + " would qualify";
    for (const auto &one : result.tests) {
        out.heading("Test: " + print(one.test, unit), 2);
        out.line("qualifies by " + result.rules->title + " (" + result.rules->edition + "):");
        out.add(Bullets{range_items(one.range, unit)});
    }
    if (!result.rules->gaps.empty()) out.heading("Not in these rules, so never qualified by them:", 2);
    for (const auto &gap : result.rules->gaps) out.item(gap);
    return out.caution();
}

} // namespace beadbook
