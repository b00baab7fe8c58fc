#include "operations/carried_facts.hpp"
#include "operations/welder_names.hpp"

#include "measure/text.hpp"
#include "operations/failed_by.hpp"
#include "operations/graded_tests.hpp"
#include "operations/said_beside.hpp"
#include "operations/taken_back.hpp"
#include "operations/turned.hpp"
#include "operations/weld_day.hpp"
#include "records/codecs/facts.hpp"
#include "records/codecs/typed.hpp"

#include <algorithm>

namespace beadbook {
namespace {

using Against = CarriedFact::Kind;

std::map<std::string, std::string> texts_of(const CouponRecord &coupon) {
    std::map<std::string, std::string> out;
    for (const auto &[name, value] : coupon.fields) out.emplace(name, value.text);
    return out;
}

void take_stamp(const Stamp &stamp, const std::string &why, CarriedFact &out) {
    out.by = stamp.who;
    out.on = stamp.at.substr(0, 10);
    out.why = why;
}

/// One for each description that it was graded failed by, and that it has since: it failed as all of them.
void take_failing_grades(const std::vector<Entry> &history, std::vector<CarriedFact> &out) {
    std::optional<CarriedFact> last;
    const auto take = [&](const std::map<std::string, std::string> &as) {
        if (!last || last->as == as) return;
        last->as = as;
        out.push_back(*last);
    };
    std::map<std::string, std::string> now;
    for (const auto &entry : history) {
        if (is_withdrawal(entry)) continue;
        if (entry.kind == "coupon") {
            now = texts_of(codec::coupon_from(codec::parsed(entry.body)));
        } else if (entry.kind == "grade") {
            const Grade grade = codec::grade_from(codec::parsed(entry.body), stamp_of(entry));
            if (grade.passed) continue;
            last = CarriedFact{Against::graded_failed, {}, {}, {}, grade.class_id, {}, {}, {}};
            take_stamp(grade.stamp, grade.remark, *last);
            take(now);
        }
    }
    take(now);
}

/// A mark says elsewhere nothing of who bears it here.
void take_welder(Office &office, const std::string &mark, std::vector<CarriedFact> &out) {
    const std::string name = welder_name(office.book(), mark);
    if (name.empty()) return;
    const auto told = std::find_if(out.begin(), out.end(),
                                   [](const CarriedFact &one) { return one.kind == Against::welder; });
    if (told == out.end())
        out.push_back({Against::welder, {}, {}, {}, {}, name, {}, {}});
    else
        told->by = name;
}

} // namespace

std::vector<CarriedFact> facts_to_carry(Office &office, const CouponState &coupon) {
    std::vector<CarriedFact> out = coupon.record.before;
    const auto add = [&](Against kind) -> CarriedFact & {
        return out.emplace_back(CarriedFact{kind, {}, {}, {}, {}, {}, {}, {}});
    };
    const auto carries = [&](Against kind) {
        return std::any_of(out.begin(), out.end(), [&](const auto &one) { return one.kind == kind; });
    };
    const auto turns = turned(office, coupon.record.id);
    for (const auto &one : turns) {
        if (one.by == Turned::By::elsewhere || (!one.accepted && !one.of_the_test())) continue;
        CarriedFact &fact = add(Against::rejected);
        fact.as = texts_of(one.before);
        fact.changed = one.fields();
        take_stamp(one.stamp, one.why, fact);
    }
    const auto history = office.book().history(coupon.record.id);
    if (coupon.grade && !coupon.grade->passed) take_failing_grades(history, out);
    if (coupon.bends_failed_once() && !carries(Against::bends_failed)) add(Against::bends_failed);
    if (!was_test(history) && coupon.record.get("purpose") != "practice" && !carries(Against::practice))
        add(Against::practice);
    const std::string welded = coupon.record.get("welded");
    const auto earliest = earliest_weld_day(history);
    if (earliest && (welded.empty() || *earliest < parse_day(welded)) && !carries(Against::welded))
        add(Against::welded).on = print(*earliest);
    // What stands beside its verdict here does not go along; the day of the weld has its own word.
    auto all = taken_back(office, coupon.record, turns);
    std::erase_if(all, [](const TakenBack &one) { return one.field == "welded"; });
    const auto gone = taken_back_words(all);
    const auto said = said_and_left(coupon);
    if ((!gone.empty() || !said.empty()) && !carries(Against::left_behind)) {
        CarriedFact &fact = add(Against::left_behind);
        fact.changed = gone;
        fact.why = joined(said, "; ");
    }
    const bool failed = std::any_of(out.begin(), out.end(), [](const auto &one) {
        return one.kind == Against::rejected || one.kind == Against::graded_failed;
    });
    const auto methods =
        failed ? failed_by(office, history, coupon, false).methods : std::vector<std::string>{};
    for (auto &one : out)
        if ((one.kind == Against::rejected || one.kind == Against::graded_failed) && one.methods.empty())
            one.methods = methods;
    take_welder(office, coupon.record.get("welder"), out);
    return out;
}

std::optional<bool> was_test_elsewhere(const CouponRecord &coupon) {
    std::optional<bool> out;
    for (const auto &fact : coupon.before) {
        if (fact.kind == CarriedFact::Kind::practice) return false;
        if (fact.kind == CarriedFact::Kind::failed_beside) continue;
        const auto purpose = fact.as.find("purpose");
        if (!fact.as.empty() && (purpose == fact.as.end() || purpose->second != "practice")) out = true;
    }
    return out;
}

std::vector<Turned> turned_elsewhere(const CouponRecord &coupon) {
    std::vector<Turned> out;
    for (const auto &fact : coupon.before) {
        if (fact.kind != Against::rejected && fact.kind != Against::graded_failed) continue;
        Turned &one = out.emplace_back();
        one.before.id = coupon.id;
        one.before.set_all(fact.as);
        for (const auto &name : fact.changed) one.values.push_back({name, one.before.get(name), ""});
        one.accepted = true;
        one.why = fact.why;
        one.stamp.who = fact.by;
        one.stamp.at = fact.on;
        one.by = Turned::By::elsewhere;
        one.told = words_of(fact);
    }
    return out;
}

} // namespace beadbook
