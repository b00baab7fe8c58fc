#include "operations/carried_in.hpp"

#include <limits>

namespace beadbook {

std::optional<Shortcoming> retest_lack(const GradedTests::Retest &retest) {
    const RetestState &state = retest.state;
    using Kind = Shortcoming::Kind;
    if (state.satisfied() && retest.fit() >= state.needed) return std::nullopt;
    Shortcoming out;
    out.kind = !state.known ? Kind::retest_unknown : state.training_first ? Kind::training : Kind::retest;
    out.after = state.after;
    if (out.kind == Kind::retest) {
        out.asked = state.needed;
        out.given = retest.fit();
    }
    return out;
}

Shortcoming revoked_lack(const WelderEvent &revoked) {
    Shortcoming out;
    out.kind = Shortcoming::Kind::revoked;
    out.on = print(revoked.day);
    out.remark = revoked.text;
    return out;
}

std::vector<Shortcoming> carried_lacks(const GradedTests &tests, const CouponRecord &test, const Weld &weld,
                                       const RangeRules &rules, std::optional<std::int64_t> by) {
    CouponRecord elsewhere = test;
    elsewhere.id.clear(); // a coupon on record may be called as it is
    const Day welded = parse_day(test.get("welded"));
    auto retest = tests.retest_of(elsewhere, welded, weld, rules,
                                  by.value_or(std::numeric_limits<std::int64_t>::max()));
    auto lacks = std::move(retest.unknown);
    if (auto lack = retest_lack(retest)) lacks.push_back(std::move(*lack));
    if (test.get("operation") == "machine") {
        lacks.emplace_back();
        lacks.back().kind = Shortcoming::Kind::by_machine;
    }
    if (const auto *revoked = tests.revoked_since(weld.word(Trait::process), welded))
        lacks.push_back(revoked_lack(*revoked));
    return lacks;
}

Ledger::Document needed_paper(Ledger &ledger, const QualificationRecord &carried) {
    auto paper = ledger.document(carried.document);
    if (!paper)
        throw StoreError(
            "the paper that qualification " + std::to_string(carried.number) +
            " was carried in with is on record no more; 'verify' tells more. Take the last backup");
    return std::move(*paper);
}

} // namespace beadbook
