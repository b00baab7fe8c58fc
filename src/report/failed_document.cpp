// Tests that failed, and what is asked next.
#include "measure/text.hpp"
#include "report/standing_document.hpp"

namespace beadbook {
namespace {

/// By which criteria it failed, where rules that the welder is to be qualified by take others.
std::string by_other_criteria(const WelderStanding::Failed &one) {
    if (one.criteria.empty()) return "";
    const std::string failed = "it failed by " + one.criteria;
    if (!one.judged_now.empty())
        return failed + ", and is judged by " + one.judged_now + " now, which does not undo that";
    if (one.others.empty()) return failed;
    std::string out =
        failed + ", by which no rules here take a test" + (one.process.empty() ? "" : " in " + one.process) +
        ", and may count by each of them as a failed one of its kind all the same; next: register "
        "the next coupon for what the rules that are meant take: ";
    for (const auto &other : one.others)
        out += (&other == &one.others.front() ? "" : "; ") + other.rules + " " + listed(other.by, "or");
    return out;
}

} // namespace

Bullet next_bullet(const NextRetest &next) {
    const auto must_pass = [](int number) {
        return counted(static_cast<std::size_t>(number), "coupon") + " of its kind must pass";
    };
    std::string out =
        "next by " + next.rules + (next.process.empty() ? "" : " in " + next.process) +
        (next.takes.empty() ? "" : ", which counts that and takes a test by " + listed(next.takes, "or")) +
        ": ";
    const bool at_once = next.coupons > 0 && !next.training_first;
    if (at_once)
        out += must_pass(next.coupons) + exams_words(next) + (next.trained ? ", as training followed" : "");
    if (at_once && !next.trained && next.after_training > 0)
        out += "; or training, and then " + std::to_string(next.after_training);
    if (!at_once && next.after_training > 0)
        out += "training comes first, and then " + must_pass(next.after_training);
    if (!at_once && next.after_training == 0)
        out += next.training_first ? "training comes first; what follows it is not known here (gap)"
                                   : "what is asked after a failure is not known here (gap)";
    for (const auto &one : next.otherwise)
        out += "; coupon " + one.coupon + ", welded otherwise (" + joined(one.in, "; ") +
               "), is no retest of it";
    return {out, next.from ? authority(*next.from) : "", {}};
}

void add_failed(Document &doc, const std::vector<WelderStanding::Failed> &all) {
    for (const auto &one : all) {
        std::string text = one.coupon + (one.process.empty() ? "" : " " + one.process);
        if (one.welded) text += ", welded " + print(*one.welded);
        if (!one.by.empty()) text += ", by " + listed(one.by);
        if (!one.passed_since.empty()) text += "; graded passed since by " + one.passed_since;
        std::vector<Bullet> under;
        if (std::string by = by_other_criteria(one); !by.empty()) under.push_back({std::move(by), "", {}});
        for (const auto &next : one.next) under.push_back(next_bullet(next));
        doc.item(Words("coupon ") + Words("failed", Tone::reject) + ": " + text, "", std::move(under));
    }
}

void add_not_judged(Document &doc, const std::vector<WelderStanding::NotJudged> &all) {
    for (const auto &one : all)
        doc.item(Words("coupon ") + Words("not judged", Tone::cannot_say) + ": " + one.coupon +
                 (one.process.empty() ? "" : " " + one.process) +
                 (one.welded ? ", welded " + print(*one.welded) : "") + ", shows " +
                 listed(one.shows, "and") +
                 "; it is neither judged by criteria that it names nor graded, so it may have failed");
}

} // namespace beadbook
