#include "prompt/live_verdicts.hpp"

#include "measure/text.hpp"
#include "operations/exam_mends.hpp"
#include "operations/looking_back.hpp"
#include "prompt/exam_meant.hpp"
#include "report/judgement_document.hpp"
#include "report/sentence.hpp"
#include "terminal/command_text.hpp"

namespace beadbook {
namespace {

/// Here, where the prompt has a word for it, else at the command line.
std::string next_words(const CouponState &state, const Mends &mends) {
    if (mends.operations.empty()) return "";
    const Remedy &first = mends.operations.front();
    if (first.operation == "finish") return "next: " + ways_to_finish(state);
    if (first.operation == "reopen") return "next: type 'reopen " + first.on.back() + " WHY'";
    return "next, at the command line ('done' leads there): " +
           commands_text(mends.operations, mends.one_will_do ? " or " : ", then ");
}

} // namespace

std::string live_verdicts(Call &call, const std::string &coupon, bool what_next, const std::string &set) {
    Office &office = call.office();
    try {
        const CouponState state = office.coupon(coupon);
        Judged judged = judge_coupon(office, state, {set, ""});
        look_back(office, state, judged);
        Document doc;
        doc.line(Words("  ") + verdicts_in_a_line(judged, " | "));
        const std::size_t k = judged.sought.value_or(judged.judgement.classes.size() - 1);
        const ClassJudgement &one = judged.judgement.classes[k];
        if (one.verdict != Verdict::accept && !one.findings.empty())
            doc.line(Words("  " + judged.set->classes[k].id + ": " +
                               sentence(case_of(judged), k, one.findings.front()),
                           Tone::quiet));
        if (what_next)
            if (const std::string next = next_words(state, mends_of_verdict(office, state, one));
                !next.empty())
                doc.line("  " + next);
        return text(doc, call.session().paint());
    } catch (const Refusal &e) {
        return std::string("  (") + visible(e.what()) + ")\n";
    }
}

std::string next_for_exam(Call &call, const std::string &coupon, int exam) {
    const CouponState state = call.office().coupon(coupon);
    const std::string next = next_words(state, mends_of_exam(call.office(), state, state.needed_exam(exam)));
    return next.empty() ? "" : text(Document{}.line("  " + next), call.session().paint());
}

} // namespace beadbook
