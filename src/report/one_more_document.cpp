#include "report/one_more_document.hpp"

#include "measure/text.hpp"
#include "operations/shortcoming_words.hpp"

namespace beadbook {
namespace {

std::string added_words(const AddedRange &added, Unit unit) {
    std::string out(info(added.of).name);
    if (!added.words.empty()) return out + " " + listed(added.words);
    std::vector<std::string> parts;
    for (const auto &part : added.parts) parts.push_back(print(part, unit));
    return out + " " + listed(parts, "or");
}

/// The coupon that is proposed counts as one that passed.
std::string asked_words(const Shortcoming &asked, const RangeRules &rules) {
    Shortcoming before = asked;
    if (asked.given > 0) --before.given;
    return words_of(before, &rules);
}

} // namespace

void add_one_more(Document &doc, const std::vector<OneMore> &all) {
    if (all.empty()) return;
    doc.heading("What one more coupon would add", 2);
    for (const auto &one : all) {
        std::vector<std::string> adds;
        for (const auto &added : one.adds) adds.push_back(added_words(added, one.unit));
        doc.item(print(one.coupon, one.unit) + ", by " + one.rules->name + ", would add: " +
                 joined(adds, "; ") + (one.asked ? "; " + asked_words(*one.asked, *one.rules) : ""));
    }
    doc.line(Words("Each differs in one thing from a coupon that something held rests on, and adds this if "
                   "it is accepted "
                   "and graded passed.",
                   Tone::quiet));
}

} // namespace beadbook
