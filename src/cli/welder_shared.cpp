#include "cli/welder_shared.hpp"

#include "facts/coupon_weld.hpp"

#include <algorithm>

namespace beadbook {

namespace {

/// A coupon that was graded failed after it had qualified somebody qualifies nobody.
void take_back_if_failed(const CouponState &coupon, Validity &validity) {
    if (!coupon.grade || coupon.grade->decision == "passed") return;
    validity.state = Validity::State::revoked;
    validity.until = parse_day(coupon.grade->at.substr(0, 10));
    validity.use_by.reset();
    validity.reason = "coupon " + coupon.record.id + " was graded failed on " + print(*validity.until);
}

} // namespace

const ValidityWay &HeldQualification::way() const {
    const ValidityWay *found = rules->way(record.way);
    return found ? *found : rules->validity.front();
}

std::vector<HeldQualification> held_by(Book &book, const WelderState &welder, Day on) {
    std::map<std::string, std::shared_ptr<const RangeRules>> by_hash;
    std::vector<HeldQualification> out;
    for (const auto &q : welder.qualifications) {
        auto &rules = by_hash[q.rules_hash];
        if (!rules) {
            const auto text = book.ledger().criteria_text(q.rules_hash);
            rules = text ? load_range_rules(*text).rules : nullptr;
            if (!rules)
                throw StoreError("the rules of qualification " + std::to_string(q.number) + " of welder " +
                                 welder.record.mark + " are missing or no longer load");
        }
        HeldQualification held{welder.record.mark, q, rules, welds_of(q.test).at(q.part), {}, {}};
        held.range = range_of(*rules, held.weld);
        held.validity = validity_on(on, q.welded, held.way(), welder.events_of(q));
        if (!q.carried()) take_back_if_failed(book.coupon(q.test.id), held.validity);
        out.push_back(std::move(held));
    }
    return out;
}

std::vector<HeldQualification> held_by(Book &book, const std::string &mark, Day on) {
    return held_by(book, Welders(book.ledger()).welder(mark), on);
}

HeldQualification held_by(Book &book, const WelderState &welder, int number, Day on) {
    for (auto &held : held_by(book, welder, on))
        if (held.record.number == number) return std::move(held);
    throw DataError("welder " + welder.record.mark + " has no qualification " + std::to_string(number));
}

std::string title_of(const HeldQualification &held) {
    return "#" + std::to_string(held.record.number) + " " + held.weld.word(Trait::process) + " by " +
           held.rules->name;
}

} // namespace beadbook
