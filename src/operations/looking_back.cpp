#include "operations/looking_back.hpp"

#include "operations/coupon_lines.hpp"
#include "operations/said_by_welder.hpp"
#include "operations/turned.hpp"

#include <algorithm>
#include <set>

namespace beadbook {
namespace {

/// Whether an entry says something otherwise than one before it. That an exam was finished is nothing else.
bool says_otherwise(const std::vector<Entry> &history) {
    return std::any_of(history.begin(), history.end(), [&](const Entry &entry) {
        if (!entry.supersedes) return false;
        return entry.kind == "coupon" || entry.kind == "indication" ||
               (entry.kind == "exam" && (is_withdrawal(entry) || !entry.reason.empty() ||
                                         !changed_beside_finishing(history, entry).empty()));
    });
}

/// By another text of its criteria, or by other numbers in their blanks.
bool judged_by_another_text(const CouponState &coupon, const CriteriaSet &set) {
    return std::any_of(coupon.verdicts.begin(), coupon.verdicts.end(), [&](const StoredVerdict &one) {
        return (one.own || !one.own_said || one.set == set.name) &&
               (one.hash != set.hash || one.filled != set.fillings);
    });
}

/// A slip of the hand that was undone before anybody relied on it.
bool is_slip(const TakenBack &one) {
    using Kind = TakenBack::Kind;
    return (one.kind == Kind::weld && !one.made_accept) || (one.kind == Kind::welder && one.was.empty()) ||
           (one.kind == Kind::find && !one.to && !one.planar && !one.made_accept);
}

/// Of what came from elsewhere its cautions tell already.
std::vector<std::string> gone_words(const std::vector<TakenBack> &all, const std::vector<Turned> &turns) {
    std::vector<std::string> out;
    std::set<std::int64_t> told;
    for (const auto &one : turns) {
        if (!one.accepted || one.by == Turned::By::elsewhere) continue;
        out.push_back(one.words());
        told.insert(one.entry);
    }
    auto gone = gone_among(all, turns);
    // A crack that is something else now, whatever was sought when it was called one.
    for (const auto &one : all)
        if (one.kind == TakenBack::Kind::find && one.planar && !one.now.empty() && !one.made_accept)
            gone.push_back(one);
    std::erase_if(gone, [&](const TakenBack &one) { return told.contains(one.entry) || is_slip(one); });
    for (auto &one : taken_back_words(gone)) out.push_back(std::move(one));
    return out;
}

bool has_a_past(Office &office, const CouponState &coupon, const Judged &judged) {
    return judged_by_another_text(coupon, *judged.set) ||
           says_otherwise(office.book().history(coupon.record.id));
}

} // namespace

void look_back(Office &office, const CouponState &coupon, Judged &judged) {
    for (const auto &[who, what] : said_by_welders(office, coupon, Fellows::who_examined))
        judged.against.push_back(who + ", " + what + " (common practice, no source: another says it)");
    if (judged.accepts_any() && !line_follows(office, coupon))
        judged.against.push_back(line_does_not_follow(coupon.record.id));
    if (!has_a_past(office, coupon, judged)) return;
    const auto turns = turned(office, coupon.record.id);
    judged.taken_back = taken_back(office, coupon.record, turns);
    if (!judged.accepts_any()) return;
    judged.gone = gone_words(judged.taken_back, turns);
    for (const auto &one : turns)
        if (one.by == Turned::By::text && one.accepted) judged.rejected_by_text = one.words();
    for (const auto &one : judged.taken_back)
        if (auto &fields = judged.said_otherwise;
            !one.field.empty() && std::find(fields.begin(), fields.end(), one.field) == fields.end())
            fields.push_back(one.field);
}

std::vector<std::string> beside_accept(Office &office, const CouponState &coupon) {
    const JudgedOrNot now = judge_with_cautions(office, coupon);
    if (!now.judged || !now.judged->accepts_any()) return {};
    std::vector<std::string> out = now.judged->gone;
    if (const auto &fields = now.judged->said_otherwise; !fields.empty())
        out.push_back(listed(fields, "and") + " said otherwise since it was examined");
    std::set<std::string> rules;
    for (const auto &one : coupon.assurances()) rules.insert(one.rules.begin(), one.rules.end());
    if (!rules.empty())
        out.push_back("taken as meant so in spite of " + listed({rules.begin(), rules.end()}, "and"));
    for (auto &caution : now.judged->cautions()) out.push_back(std::move(caution));
    return out;
}

JudgedOrNot judge_looking_back(Office &office, const CouponState &coupon, const JudgeRequest &request) {
    JudgedOrNot out = judge_or_tell(office, coupon, request);
    if (out.judged) look_back(office, coupon, *out.judged);
    return out;
}

JudgedOrNot judge_with_cautions(Office &office, const CouponState &coupon, const JudgeRequest &request) {
    JudgedOrNot out = judge_or_tell(office, coupon, request);
    if (!out.judged || !out.judged->accepts_any()) return out;
    look_back(office, coupon, *out.judged);
    out.judged->taken_back.clear();
    return out;
}

} // namespace beadbook
