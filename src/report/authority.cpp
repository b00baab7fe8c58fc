#include "report/sentence.hpp"

namespace beadbook {

std::string authority(const Case &c, std::size_t class_index, const Finding &f) {
    if (f.rule >= 0) {
        const Rule &rule = c.set.rules[static_cast<std::size_t>(f.rule)];
        const Standing &standing = rule.standings[class_index];
        return rule.clause + " (" + c.set.edition + "), " + print_in_full(standing);
    }
    if (f.kind == Finding::Kind::contradiction)
        return "nothing is accepted on a record that contradicts itself";
    if ((f.kind == Finding::Kind::unproven || f.kind == Finding::Kind::scope_unknown) && f.clause < 0)
        return "an accept is a proof";
    if (f.kind == Finding::Kind::outside_scope || f.kind == Finding::Kind::scope_unknown ||
        f.part == ProofPart::scope) {
        const ScopePart &part = c.set.scope[static_cast<std::size_t>(f.clause)];
        return part.clause + " (" + c.set.edition + "), " + print_in_full(part.standing);
    }
    if (f.kind == Finding::Kind::exam_pending) return "nothing is accepted half examined";
    if (f.kind == Finding::Kind::exam_missing || f.kind == Finding::Kind::unproven) {
        if (f.clause < 0)
            return f.exams.empty() || !c.coupon.called_for[static_cast<std::size_t>(f.exams.front())]
                       ? "nothing is accepted unexamined"
                       : "called for on this coupon";
        const RequiredExam &r = c.set.required[static_cast<std::size_t>(f.clause)];
        return r.clause + " (" + c.set.edition + "), " + print_in_full(r.standing);
    }
    return c.set.edition;
}

} // namespace beadbook
