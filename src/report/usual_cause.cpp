#include "report/usual_cause.hpp"

#include <algorithm>

namespace beadbook {
namespace {

bool under_its_least(const Case &c, const Finding &f) {
    if (f.rule < 0) return false;
    const Rule &rule = c.set.rules[static_cast<std::size_t>(f.rule)];
    return rule.kind == Rule::Kind::each &&
           (rule.compare == Compare::at_least || rule.compare == Compare::over);
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
            const auto &[cause, remedy] = small ? type.small : type.usual;
            UsualCause one{type.name + (small ? ", too small" : ""), cause, remedy};
            if (!cause.empty() && std::none_of(out.begin(), out.end(),
                                               [&](const UsualCause &told) { return told.of == one.of; }))
                out.push_back(std::move(one));
        }
    }
    return out;
}

} // namespace beadbook
