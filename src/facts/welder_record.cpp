#include "facts/welder_record.hpp"

#include "facts/coupon_weld.hpp"
#include "qualify/range.hpp"

#include <algorithm>

namespace beadbook {

std::string QualificationRecord::process() const { return welds_of(test).at(part).word(Trait::process); }

const QualificationRecord *WelderState::qualification(int number) const {
    const auto found = std::find_if(qualifications.begin(), qualifications.end(),
                                    [&](const QualificationRecord &q) { return q.number == number; });
    return found == qualifications.end() ? nullptr : &*found;
}

std::vector<QualificationEvent> WelderState::events_of(const QualificationRecord &q) const {
    using Kind = QualificationEvent::Kind;
    const std::string process = q.process();
    std::vector<QualificationEvent> out;
    for (const auto &e : events) {
        if (e.kind == "use" && e.process == process) out.push_back({Kind::use, e.day});
        if (e.kind == "renewal" && e.process == process && e.rules == q.rules)
            out.push_back({Kind::renewal, e.day});
        if (e.qualification != q.number) continue;
        if (e.kind == "extension") out.push_back({Kind::extension, e.day});
        if (e.kind == "revocation") out.push_back({Kind::revocation, e.day});
    }
    // Welding another accepted test with the process is using it.
    for (const auto &other : qualifications)
        if (other.number != q.number && !other.carried() && other.process() == process)
            out.push_back({Kind::use, other.welded});
    return out;
}

std::vector<GrantedRange> granted(const std::vector<VariableRange> &range) {
    std::vector<GrantedRange> out;
    for (const auto &one : range) {
        if (!may_matter(range, *one.variable)) continue;
        GrantedRange kept{std::string(info(one.variable->of).name), one.variable->work.text, {}};
        for (const auto &part : one.parts) {
            GrantedPart p{part.rule->id, part.any, part.words, part.edges, {}};
            for (const auto &lack : part.lacks)
                p.lacks.push_back((lack.of_test ? "test " : "work ") + std::string(info(lack.trait).name));
            kept.parts.push_back(std::move(p));
        }
        out.push_back(std::move(kept));
    }
    return out;
}

} // namespace beadbook
