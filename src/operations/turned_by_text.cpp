#include "operations/turned_by_text.hpp"

#include "criteria/owners_copy.hpp"
#include "criteria/shipped.hpp"
#include "operations/judging.hpp"
#include "operations/owners_copy.hpp"
#include "records/codecs/facts.hpp"
#include "records/codecs/typed.hpp"
#include "records/fold.hpp"

#include <algorithm>
#include <set>

namespace beadbook {
namespace {

bool rejected_by(const CouponState &state, const std::shared_ptr<const CriteriaSet> &set) {
    Judged judged = judge_by(state, set);
    judged.sought = set->class_index(state.record.get("class"));
    return judged.verdict() == Verdict::reject;
}

/// "rules a and b of text 3f2a9c1b; #1 and #3": what rejects it by a set; without a class, of any.
std::string rules_in(const CouponState &state, const std::shared_ptr<const CriteriaSet> &set) {
    const Judged judged = judge_by(state, set);
    const auto sought = set->class_index(state.record.get("class"));
    std::set<std::string> rules;
    std::set<int> finds;
    for (std::size_t k = 0; k < judged.judgement.classes.size(); ++k)
        for (const auto &one : judged.judgement.classes[k].findings) {
            if ((sought && k != *sought) || one.effect != Verdict::reject || one.rule < 0) continue;
            rules.insert(set->rules[static_cast<std::size_t>(one.rule)].id);
            finds.insert(one.indications.begin(), one.indications.end());
        }
    if (rules.empty()) return "";
    std::vector<std::string> numbers;
    for (const int find : finds) numbers.push_back("#" + std::to_string(find));
    return (rules.size() == 1 ? "rule " : "rules ") + listed({rules.begin(), rules.end()}, "and") +
           " of text " + set->hash.substr(0, 8) + (numbers.empty() ? "" : "; " + listed(numbers, "and"));
}

/// As its verdict says, where the text that it went by cannot be read.
bool rejected_then(const CouponState &state, const StoredVerdict &verdict) {
    const std::string class_id = state.record.get("class"), reject(name_of(Verdict::reject));
    if (!verdict.verdict_of(class_id).empty()) return verdict.verdict_of(class_id) == reject;
    return std::all_of(verdict.classes.begin(), verdict.classes.end(),
                       [&](const auto &one) { return one.verdict == reject; });
}

/// What can be said of a reject by a text of which something is not known.
std::string told_of_unknown(const StoredVerdict &verdict, bool whose, bool text) {
    return "it was rejected by " + verdict.set + " (" + verdict.edition + ") in the verdict of " +
           verdict.stamp.at.substr(0, 10) +
           (whose ? ", of which an older program did not keep whether it went by the coupon's own file"
                  : "") +
           (text ? ", and the text of that set cannot be read any more" : "") +
           "; another text accepts it now";
}

/// By a verdict that is on record.
std::optional<Turned> turned_since_verdict(Office &office, const CouponState &state,
                                           const std::shared_ptr<const CriteriaSet> &today) {
    for (auto before = state.verdicts.rbegin(); before != state.verdicts.rend(); ++before) {
        const bool same_text = before->hash == today->hash;
        if (same_text && before->filled == today->fillings) continue;
        const bool own = went_by_own(office, state, *before, *today);
        if (!own && !may_have_gone_by_own(office, state, *before, *today)) continue;
        const auto text = office.catalogue().kept_criteria(office.ledger(), before->hash);
        const auto then =
            same_text && text ? with_owners_copy(text, {before->filled, {}}) : office.with_copy(text);
        if (then ? !rejected_by(state, then) : !rejected_then(state, *before)) continue;
        const ChangedValue value =
            same_text ? ChangedValue{"filled number", "", ""}
                      : ChangedValue{"criteria text", before->hash.substr(0, 12), today->hash.substr(0, 12)};
        Turned out{state.record, {value}, true, "", before->stamp, Turned::By::text, 0};
        if (then) out.by_rules = rules_in(state, then);
        if (!own || !then) out.told = told_of_unknown(*before, !own, !then);
        return out;
    }
    return std::nullopt;
}

/// The first entry that says what an exam of it found; 0: nobody did.
std::int64_t first_found(const std::vector<Entry> &history) {
    for (const auto &entry : history)
        if (entry.kind == "indication" || (entry.kind == "exam" && !is_withdrawal(entry) &&
                                           codec::exam_from(codec::parsed(entry.body)).finished))
            return entry.seq;
    return 0;
}

/// By numbers that stood in the blanks when it had been examined, though nobody judged it by them.
std::optional<Turned> turned_by_filling(Office &office, const CouponState &state,
                                        const std::shared_ptr<const CriteriaSet> &today) {
    if (today->blanks.empty()) return std::nullopt;
    const auto copy = office.book().copy_history(today->name);
    if (copy.empty()) return std::nullopt;
    const std::int64_t found = first_found(office.book().history(state.record.id));
    const auto text = office.catalogue().criteria(state.record.get("criteria"));
    for (std::size_t i = copy.size(); i-- > 0;) {
        if (found == 0 || copy[i].seq < found) break;
        if (copy[i].kind == "confirmation" || !copy[i].supersedes) continue;
        const auto then = fold_owners_copy(today->name, std::span(copy).first(i));
        if (rejected_by(state, with_owners_copy(text, copy_that_bears(then, *text))))
            return Turned{state.record,
                          {{"filled number", "", ""}},
                          true,
                          copy[i].reason,
                          stamp_of(copy[i]),
                          Turned::By::text,
                          0};
    }
    return std::nullopt;
}

/// Whether the coupon named the same criteria as it does when a verdict was taken.
bool named_then(Office &office, const CouponState &state, const StoredVerdict &one) {
    return office.coupon(state.record.id, one.seq).record.get("criteria") == state.record.get("criteria");
}

} // namespace

bool went_by_own(Office &office, const CouponState &state, const StoredVerdict &one,
                 const CriteriaSet &today) {
    if (one.set == today.name) return true;
    return one.own && named_then(office, state, one);
}

std::optional<std::string> reject_by_kept_text(Office &office, const CouponState &before,
                                               const CouponState &after) {
    const bool other_criteria = before.record.get("criteria") != after.record.get("criteria");
    std::set<std::string> seen;
    for (const auto &verdict : before.verdicts) {
        if (!verdict.own || !seen.insert(verdict.hash).second || !named_then(office, before, verdict))
            continue;
        const auto then = office.with_copy(office.catalogue().kept_criteria(office.ledger(), verdict.hash));
        if (!then || !rejected_by(before, then)) continue;
        const auto now = other_criteria ? office.criteria_or_none(after.record.get("criteria")) : then;
        if (!now || !rejected_by(after, now)) return rules_in(before, then);
    }
    return std::nullopt;
}

bool may_have_gone_by_own(Office &office, const CouponState &state, const StoredVerdict &one,
                          const CriteriaSet &today) {
    const auto &shipped = shipped_sets();
    return !one.own_said && one.set != today.name &&
           std::find(shipped.begin(), shipped.end(), one.set) == shipped.end() &&
           named_then(office, state, one);
}

std::optional<Turned> turned_by_text(Office &office, const CouponState &state) {
    const auto today = office.criteria_or_none(state.record.get("criteria"));
    if (!today) return std::nullopt;
    auto out = turned_since_verdict(office, state, today);
    if (!out) out = turned_by_filling(office, state, today);
    return out && !rejected_by(state, today) ? out : std::nullopt;
}

} // namespace beadbook
