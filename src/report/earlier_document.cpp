#include "report/earlier_document.hpp"

#include "measure/text.hpp"
#include "report/coupon_document.hpp"
#include "report/own_file.hpp"

#include <algorithm>

namespace beadbook {
namespace {

std::string kind_words(const AlikeCoupons &alike) {
    return (alike.joint.empty() ? "joint not said" : alike.joint + " joint") + ", class " +
           (alike.class_id.empty() ? "not said" : alike.class_id) + " of " +
           (alike.criteria.empty() ? "no criteria" : criteria_name(alike.criteria));
}

Words verdict_of_compared(const ComparedCoupon &one) {
    Words out = one.verdict ? verdict_words(*one.verdict) : Words("not judged", Tone::cannot_say);
    if (one.record.bends_failed()) out += Words(", but its mechanical tests failed", Tone::reject);
    if (one.cautions) out += Words(", with cautions", Tone::cannot_say);
    out += own_file_behind(one.own_file);
    if (!one.said.empty()) out += Words(" (its record keeps '" + one.said + "')", Tone::quiet);
    return out;
}

std::string compared_exams(const ComparedCoupon &one) {
    std::vector<std::string> out;
    for (const Exam exam : one.exams) out.emplace_back(name_of(exam));
    return out.empty() ? "none that counts" : joined(out, " ");
}

std::string compared_finds(const ComparedCoupon &one) {
    std::vector<std::string> out;
    for (const auto &[type, count] : one.found) out.push_back(type + " " + std::to_string(count));
    return out.empty() ? "nothing logged" : joined(out, ", ");
}

std::string percent_words(const ShareOfLimit &share) {
    return std::to_string(static_cast<long long>(share.percent)) + " % of the " +
           (share.least ? "least" : "limit") + (share.out ? ", out" : "");
}

/// In the words of the rule that decides.
std::string compared_worst(const ComparedCoupon &one) {
    std::vector<std::string> out;
    for (const auto &title : one.not_allowed) out.push_back(title + ": none is allowed");
    if (one.worst) out.push_back(one.worst->rule + ": " + percent_words(*one.worst));
    if (!out.empty()) return joined(out, "; ");
    if (!one.verdict) return "not judged";
    return *one.verdict == Verdict::accept ? "nothing came near a limit" : "cannot say: something is missing";
}

Words grade_of_compared(const ComparedCoupon &one) {
    if (!one.grade) return {};
    return Words(one.grade->decision()) +
           (one.grade->against_verdict ? Words(", against the verdict") : Words()) + grade_mark(one.grading);
}

Grid table_of_alike(const AlikeCoupons &alike) {
    Grid out{{{"coupon"},
              {"welded"},
              {"exams"},
              {"verdict"},
              {"found"},
              {"farthest out, or nearest to a limit"},
              {"grade"}},
             {}};
    for (const auto &one : alike.coupons)
        out.rows.push_back({one.record.id, one.record.get("welded"), compared_exams(one),
                            verdict_of_compared(one), compared_finds(one), compared_worst(one),
                            grade_of_compared(one)});
    return out;
}

/// "1 accepted, 2 rejected": what came of those before.
std::string outcomes_before(const AlikeCoupons &alike) {
    std::size_t accepted = 0, unbent = 0, rejected = 0, open = 0;
    for (auto one = alike.coupons.begin(); one + 1 != alike.coupons.end(); ++one)
        if (one->verdict == Verdict::accept)
            ++(one->record.bends_failed() ? unbent : accepted);
        else
            ++(one->verdict == Verdict::reject ? rejected : open);
    std::vector<std::string> out;
    for (const auto &[count, word] : {std::pair(accepted, "accepted"),
                                      {unbent, "accepted by its examinations, with failed mechanical tests"},
                                      {rejected, "rejected"},
                                      {open, "of which nobody can say"}})
        if (count > 0) out.push_back(std::to_string(count) + " " + word);
    return listed(out);
}

std::string then_and_now(const std::string &type, std::size_t then, std::size_t now) {
    return type + ": then " + (then == 0 ? "none" : std::to_string(then)) + ", now " +
           (now == 0 ? "none" : std::to_string(now));
}

/// Finds by kind; of exams that were not the same what one of them did not look for says nothing.
void add_finds_since(Document &doc, const ComparedCoupon &then, const ComparedCoupon &now) {
    auto exams_then = then.exams, exams_now = now.exams;
    std::sort(exams_then.begin(), exams_then.end());
    std::sort(exams_now.begin(), exams_now.end());
    if (exams_then != exams_now) {
        doc.item("The exams that count are not the same (then " + compared_exams(then) + ", now " +
                 compared_exams(now) + "), so that the finds cannot be held against each other.");
        return;
    }
    auto types = then.found;
    types.insert(now.found.begin(), now.found.end());
    if (types.empty()) doc.item("Found: nothing logged, then and now.");
    for (const auto &[type, count] : types) {
        const auto before = then.found.find(type), after = now.found.find(type);
        doc.item(then_and_now(type, before == then.found.end() ? 0 : before->second,
                              after == now.found.end() ? 0 : after->second) +
                 ".");
    }
}

} // namespace

void add_earlier(Document &doc, const AlikeCoupons &alike) {
    if (alike.coupons.empty()) return;
    const ComparedCoupon &now = alike.coupons.back();
    doc.heading("Beside the earlier ones", 2);
    if (now.record.get("welder").empty()) {
        doc.line("The coupon names no welder, so there is none to hold it against.");
        return;
    }
    const std::size_t before = alike.coupons.size() - 1;
    if (before == 0) {
        doc.line("It is the first of its kind: no earlier coupon of this welder is like it (" +
                 kind_words(alike) + ").");
        return;
    }
    doc.line(std::to_string(before) + (before == 1 ? " earlier coupon" : " earlier coupons") +
             " of this welder of the same kind (" + kind_words(alike) + "): " + outcomes_before(alike) + ".");
    const ComparedCoupon &then = alike.coupons[before - 1];
    doc.line(Words("Since " + then.record.id + ": then ") + verdict_of_compared(then) + Words(", now ") +
             verdict_of_compared(now) + Words("."));
    add_finds_since(doc, then, now);
    doc.item("Then " + compared_worst(then) + ". Now " + compared_worst(now) + ".");
    doc.add(table_of_alike(alike));
}

void add_alike(Document &doc, const std::vector<AlikeCoupons> &all) {
    if (all.empty()) return;
    doc.gap().heading("Coupons of the same kind, in a row", 1);
    for (const auto &alike : all) {
        doc.heading(kind_words(alike), 2);
        doc.add(table_of_alike(alike));
    }
}

} // namespace beadbook
