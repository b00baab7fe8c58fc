#include "report/after_test_document.hpp"

#include "measure/text.hpp"
#include "report/standing_document.hpp"

namespace beadbook {
namespace {

/// Whether the verdict or the grade says by itself that it failed.
bool says_failed(const Explained &now) {
    return now.judged.outcome() == Verdict::reject || (now.grade && !now.grade->passed);
}

} // namespace

void add_after_test(Document &doc, const AfterTest &after, const std::optional<Explained> &now) {
    if (!after.next.empty()) {
        const std::string by = after.failed_by.empty() ? "" : ", by " + listed(after.failed_by);
        doc.gap().line(
            Words("As a test of the welder it failed" + by, Tone::reject) +
            (!now || says_failed(*now)
                 ? "."
                 : ". It was rejected once, which counts, though what rejected it was taken back or is "
                   "said otherwise since; only a reason that is given as it qualifies sets that "
                   "aside."));
        for (const auto &next : after.next) {
            Bullet said = next_bullet(next);
            doc.item(std::move(said.words), std::move(said.source));
        }
    }
    if (after.unsettled.empty()) return;
    doc.gap().line("What rests on it:");
    for (const auto &held : after.unsettled) doc.item(standing_words(held));
}

} // namespace beadbook
