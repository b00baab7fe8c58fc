#include "criteria/weld_words.hpp"
#include "operations/evidence.hpp"

#include <algorithm>

namespace beadbook {
bool GradedTests::is_whole(const Test &test, const Weld &weld, const RangeRules &rules) const {
    const auto lacks = lacks_of_pass(rules, test, weld);
    return std::all_of(lacks.begin(), lacks.end(), [&](const Shortcoming &one) {
        return one.kind == Shortcoming::Kind::verdict && taken_.contains(test.coupon.record.id);
    });
}

bool GradedTests::closes(const Test &test, const Weld &weld, const RangeRules &rules) const {
    const auto [at, fresh] =
        closes_.emplace(test.coupon.record.id + '\n' + weld.word(Trait::process) + '\n' + rules.hash, false);
    if (fresh) at->second = would_qualify(test, weld, rules);
    return at->second;
}

bool GradedTests::would_qualify(const Test &test, const Weld &weld, const RangeRules &rules) const {
    const auto found = settled_.find(test.coupon.record.id);
    if (found == settled_.end()) return false;
    return std::any_of(found->second.begin(), found->second.end(), [&](const Settled &settled) {
        if (settled.rules != rules.name) return false;
        try {
            const TestEvidence now =
                evidence(office_, *this, test.coupon, rules, words_beside(settled.words, test.coupon.record));
            return now.impediments.empty() &&
                   std::all_of(now.parts.begin(), now.parts.end(), [&](const PartEvidence &part) {
                       return !same_process(part.weld.word(Trait::process), weld.word(Trait::process)) ||
                              std::all_of(part.lacks.begin(), part.lacks.end(), [&](const Shortcoming &lack) {
                                  // Told beside what is held; but one that is not graded passed closes
                                  // nothing.
                                  return (lack.kind != Shortcoming::Kind::grade &&
                                          is_told_otherwise(lack.kind)) ||
                                         (!is_of_retest(lack.kind) && is_aside(lack, settled.overridden));
                              });
                   });
        } catch (const Refusal &e) {
            if (e.kind() == Refusal::Kind::record) throw;
            return false;
        }
    });
}

} // namespace beadbook
