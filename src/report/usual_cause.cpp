#include "report/usual_cause.hpp"

#include "judge/item.hpp"

#include <algorithm>

namespace beadbook {
namespace {

bool under_its_least(const Case &c, const Finding &f) {
    if (f.rule < 0) return false;
    const Rule &rule = c.set.rules[static_cast<std::size_t>(f.rule)];
    return rule.kind == Rule::Kind::each &&
           (rule.compare == Compare::at_least || rule.compare == Compare::over);
}

std::string with_more(const std::string &text, const std::string &more) {
    return text + (text.empty() || more.empty() ? "" : ", ") + more;
}

/// With what is so of this weld alone; what nobody knows of it leaves that in.
UsualCause told_of_weld(const Case &c, std::string of, const ImperfectionType::Cause &usual) {
    UsualCause out{std::move(of), usual.cause, usual.remedy};
    for (const auto &some : usual.of_some) {
        Missing ignored;
        if (holds_for(some.when, c.coupon, {}, {}, ignored) == Truth::no) continue;
        out.cause = with_more(out.cause, some.cause);
        out.remedy = with_more(out.remedy, some.remedy);
    }
    return out;
}

} // namespace

std::vector<UsualCause> usual_causes(const Case &c, const ClassJudgement &judged) {
    std::vector<UsualCause> out;
    for (const auto &f : judged.findings) {
        if (f.effect != Verdict::reject) continue;
        for (const int n : f.indications) {
            const Indication *i = c.find(n);
            if (!i) continue;
            const ImperfectionType &type = c.vocabulary.explained(i->type);
            const bool small = under_its_least(c, f) && !type.small.cause.empty();
            UsualCause one =
                told_of_weld(c, type.name + (small ? ", too small" : ""), small ? type.small : type.usual);
            if (!one.cause.empty() && std::none_of(out.begin(), out.end(),
                                                   [&](const UsualCause &told) { return told.of == one.of; }))
                out.push_back(std::move(one));
        }
    }
    return out;
}

} // namespace beadbook
