#include "operations/turned.hpp"

#include "measure/text.hpp"
#include "operations/carried_facts.hpp"
#include "operations/judging.hpp"
#include "operations/slips.hpp"
#include "operations/turned_by_text.hpp"
#include "records/codecs/facts.hpp"
#include "records/codecs/typed.hpp"

#include <algorithm>
#include <set>

namespace beadbook {
namespace {

/// Whether its own criteria reject it as it stood before an entry; where they cannot be read, whether they
/// did when it was last judged.
bool rejects(Office &office, const CouponState &state) {
    const JudgedOrNot now = judge_or_tell(office, state);
    if (now.judged) return now.judged->verdict() == Verdict::reject;
    const std::string class_id = state.record.get("class");
    return !state.verdicts.empty() && state.verdicts.back().verdict_of(class_id) == name_of(Verdict::reject);
}

/// The same by the set and for the class that are sought now, whatever was sought when it stood so.
CouponState as_sought_now(CouponState state, const CouponRecord &now) {
    for (const char *field : {"criteria", "class"})
        if (const auto said = now.fields.find(field); said != now.fields.end())
            state.record.fields[field] = said->second;
    return state;
}

/// Whether an entry made a reject go: by what was sought then, by a text of that which is kept, or by what is
/// sought now.
bool made_a_reject_go(Office &office, const CouponState &before, const CouponState &after,
                      const CouponRecord &now, std::string &by_rules) {
    const auto kept = reject_by_kept_text(office, before, after);
    by_rules = kept.value_or("");
    if (kept || (rejects(office, before) && !rejects(office, after))) return true;
    return (before.record.get("criteria") != now.get("criteria") ||
            before.record.get("class") != now.get("class")) &&
           rejects(office, as_sought_now(before, now)) && !rejects(office, as_sought_now(after, now));
}

/// What an entry changes of an exam besides that it is finished, or of a find: under one name.
std::string changed_of_exam(std::span<const Entry> history, const Entry &entry) {
    if (entry.kind == "indication") return "find #" + std::to_string(entry.number.value_or(0));
    return changed_beside_finishing(history, entry).empty() && !is_withdrawal(entry)
               ? ""
               : "exam " + std::to_string(entry.exam.value_or(0));
}

/// Corrections of exams and of what they found, but for slips.
void take_turned_exams(Office &office, const std::vector<Entry> &history, const CouponRecord &now,
                       std::vector<Turned> &out) {
    const auto slips = slips_in(history, taken_back_in(history, now));
    for (const auto &entry : history) {
        if ((entry.kind != "exam" && entry.kind != "indication") || !entry.exam || !entry.supersedes ||
            slips.contains(entry.seq))
            continue;
        const std::string name = changed_of_exam(history, entry);
        if (name.empty()) continue;
        const CouponState before = office.coupon(entry.subject, entry.seq);
        std::string by_rules;
        if (made_a_reject_go(office, before, office.coupon(entry.subject, entry.seq + 1), now, by_rules))
            out.push_back({before.record,
                           {{name, "", ""}},
                           true,
                           entry.reason,
                           stamp_of(entry),
                           Turned::By::exam,
                           entry.seq,
                           std::move(by_rules)});
    }
}

} // namespace

std::vector<std::string> Turned::fields() const {
    std::vector<std::string> out;
    for (const auto &value : values) out.push_back(value.name);
    return out;
}

std::string Turned::words() const {
    if (!told.empty()) return told;
    return "it was rejected by " + criteria_name(before.get("criteria")) + " before its " +
           listed(fields(), "and") + (values.size() == 1 ? " was" : " were") + " changed" +
           (by_rules.empty() ? "" : " (" + by_rules + ")");
}

bool of_the_test(const std::vector<ChangedValue> &values) {
    constexpr std::string_view of_it[] = {
        "welder",   "criteria",     "class",       "process",   "purpose",     "joint",         "joint-form",
        "form",     "position",     "progression", "operation", "backing",     "transfer",      "seam",
        "diameter", "filler-group", "metal-group", "thickness", "thickness-2", "weld-thickness"};
    return std::any_of(values.begin(), values.end(), [&](const ChangedValue &value) {
        // Without a purpose it is the test.
        return (!value.before.empty() || value.name == "purpose") &&
               std::find(std::begin(of_it), std::end(of_it), value.name) != std::end(of_it);
    });
}

std::vector<Turned> turned(Office &office, const std::string &coupon) {
    std::vector<Turned> out;
    const CouponState state = office.coupon(coupon);
    const auto put_back = [&now = state.record](const Turned &one) {
        return std::all_of(one.values.begin(), one.values.end(), [&](const ChangedValue &value) {
            return now.get(value.name) == one.before.get(value.name);
        });
    };
    bool examined = false;
    const auto history = office.book().history(coupon);
    for (const auto &entry : history) {
        examined = examined || entry.kind == "exam";
        if (entry.kind != "coupon" || !examined || is_withdrawal(entry) || !entry.supersedes) continue;
        auto values = changed_values(history, entry);
        // A coupon that is taken back is judged no more, and says nothing else when it is put back.
        std::erase_if(values, [](const ChangedValue &value) { return value.name == "taken back"; });
        if (values.empty()) continue;
        const CouponState before = office.coupon(coupon, entry.seq);
        const CouponState after = office.coupon(coupon, entry.seq + 1);
        std::string by_rules;
        const bool gone = made_a_reject_go(office, before, after, state.record, by_rules);
        if (!gone && !rejects(office, before)) continue;
        Turned one{before.record,   std::move(values),       gone,      entry.reason,
                   stamp_of(entry), Turned::By::description, entry.seq, std::move(by_rules)};
        if (one.accepted || one.of_the_test()) out.push_back(std::move(one));
    }
    // What was put back after the reject was made to go had its use meanwhile.
    if (!out.empty() && rejects(office, state)) std::erase_if(out, put_back);
    auto before = turned_elsewhere(state.record);
    out.insert(out.begin(), std::make_move_iterator(before.begin()), std::make_move_iterator(before.end()));
    take_turned_exams(office, history, state.record, out);
    if (auto one = turned_by_text(office, state)) out.push_back(std::move(*one));
    return out;
}

} // namespace beadbook
