#include "operations/taken_back.hpp"

#include "measure/text.hpp"
#include "operations/judging.hpp"
#include "operations/rule_words.hpp"
#include "operations/slips.hpp"
#include "operations/turned.hpp"
#include "records/codecs/facts.hpp"
#include "records/codecs/typed.hpp"

#include <algorithm>
#include <set>

namespace beadbook {
namespace {

/// Follows a find from coupon to coupon. It may have come back to one, under another number.
std::string became_of(Book &book, MovedTo to) {
    std::string way;
    for (;;) {
        const CouponState there = book.coupon(to.coupon);
        const auto on = std::find_if(there.gone.begin(), there.gone.end(),
                                     [&](const MovedAway &one) { return one.number == to.number; });
        if (on != there.gone.end()) {
            to = {on->coupon, on->to_exam, on->to_number};
            way += "; from there it was moved to #" + std::to_string(to.number) + " of coupon " + to.coupon +
                   ": " + on->why;
            continue;
        }
        if (!there.indication(to.number)) way += "; there it was withdrawn";
        if (!there.record.withdrawn.empty())
            way +=
                "; coupon " + to.coupon + " is withdrawn, and judges it no more: " + there.record.withdrawn;
        return way.empty() ? "" : way.substr(2);
    }
}

/// Exams that a field names: "PT, RT".
std::set<std::string> exams_in(std::string text) {
    std::replace(text.begin(), text.end(), ',', ' ');
    std::set<std::string> out;
    for (const auto word : words_of(text)) out.emplace(word);
    return out;
}

/// What was welded, and what says how it may be examined and judged.
bool bears_on_verdict(std::string_view field) {
    return describes_weld(field) || field == "magnetic" || field == "stress" || field == "weld-length" ||
           field == "weld-width";
}

/// What an entry took off a coupon's description.
TakenBack taken_off(TakenBack::Kind kind, std::string was, const Entry &entry) {
    TakenBack out;
    out.kind = kind;
    out.was = std::move(was);
    out.why = entry.reason;
    out.stamp = stamp_of(entry);
    return out;
}

bool accepted(Office &office, const CouponState &coupon) {
    const JudgedOrNot out = judge_or_tell(office, coupon);
    return out.judged && out.judged->verdict() == Verdict::accept;
}

/// The coupon as it stands, read and judged once, and when that is asked for.
class AsItStands {
public:
    AsItStands(Office &office, const std::string &coupon) : office_(office), coupon_(coupon) {}

    const CouponState &state() {
        if (!state_) state_ = office_.coupon(coupon_);
        return *state_;
    }
    bool is_accepted() {
        if (!accepted_) accepted_ = accepted(office_, state());
        return *accepted_;
    }
    /// Whether it is accepted as it is described, and would not be as an entry found it described.
    bool accepted_since(const std::string &field, const Entry &entry) {
        if (!is_accepted()) return false;
        CouponState before = state();
        before.record.fields[field] = office_.coupon(coupon_, entry.seq).record.fields.at(field);
        return !accepted(office_, before);
    }

private:
    Office &office_;
    const std::string &coupon_;
    std::optional<CouponState> state_;
    std::optional<bool> accepted_;
};

/// Exams that somebody called for, and that nobody calls for any more; and who was said to have welded it,
/// and how, once it was examined, and is said so no more. What was not said then is no other weld.
void take_changed(AsItStands &now, const std::vector<Entry> &history, const CouponRecord &coupon,
                  std::vector<TakenBack> &out) {
    const auto asked = exams_in(coupon.get("also"));
    std::vector<TakenBack> of_weld; // behind the exams
    std::set<std::string> told;
    bool examined = false;
    for (const auto &entry : history) {
        examined = examined || entry.kind == "exam";
        if (entry.kind != "coupon" || !entry.supersedes || is_withdrawal(entry)) continue;
        for (const auto &value : changed_values(history, entry)) {
            const bool who = value.name == "welder";
            const bool how = bears_on_verdict(value.name) && !value.before.empty();
            if (examined && (who || how) && value.before != coupon.get(value.name)) {
                of_weld.push_back(
                    taken_off(who ? TakenBack::Kind::welder : TakenBack::Kind::weld, "", entry));
                if (who) {
                    of_weld.back().was = value.before;
                    of_weld.back().now = value.now;
                } else {
                    tell_values({value}, of_weld.back());
                    of_weld.back().field = value.name;
                    of_weld.back().entry = entry.seq;
                    of_weld.back().made_accept = now.accepted_since(value.name, entry);
                }
            }
            if (value.name != "also") continue;
            const auto now = exams_in(value.now);
            for (const auto &exam : exams_in(value.before))
                if (!now.contains(exam) && !asked.contains(exam) && told.insert(exam).second)
                    out.push_back(taken_off(TakenBack::Kind::called_for, exam, entry));
        }
    }
    out.insert(out.end(), std::make_move_iterator(of_weld.begin()), std::make_move_iterator(of_weld.end()));
}

/// Whether a correction made an exam count: as it was last finished before, it did not, or it was one by
/// another method. What was not said then is filled in, and nothing else.
bool made_count(Office &office, const std::vector<Entry> &history, const CouponState &now,
                const TakenBack &one) {
    const ExamRecord *after = now.exam(one.number);
    if (one.opened_again || one.now.empty() || !after || !after->done().counts) return false;
    std::int64_t finished = 0, next = 0; // the entry by which it was finished, and the one that followed
    bool says_otherwise = false;
    for (const auto &entry : history) {
        if (entry.kind != "exam" || entry.exam != one.number || entry.seq > one.entry) continue;
        if (finished > 0 && next == 0) next = entry.seq;
        if (entry.seq < one.entry && !is_withdrawal(entry) &&
            codec::exam_from(codec::parsed(entry.body)).finished) {
            finished = entry.seq;
            next = 0;
        }
        if (entry.seq != one.entry) continue;
        const auto values = changed_beside_finishing(history, entry);
        says_otherwise = std::any_of(values.begin(), values.end(),
                                     [](const ChangedValue &value) { return !value.before.empty(); });
    }
    if (next == 0 || !says_otherwise) return false;
    const CouponState before = office.coupon(now.record.id, next);
    const ExamRecord *was = before.exam(one.number);
    return was && (!was->done().counts || was->method != after->method);
}

/// The exam that counts by the method of one that was withdrawn and not valid by its practice, and that is
/// held against no practice itself, or against another text of the same, so that nothing tells whether it was
/// made better. Nothing where there is none.
void take_made_again_unheld(Office &office, const CouponState &now, TakenBack &one) {
    if (!one.now.empty()) return;
    const CouponState before = office.coupon(now.record.id, one.entry);
    const ExamRecord *was = before.exam(one.number);
    if (!was || !was->finished || was->practice.empty() || was->invalid.empty()) return;
    const auto again = std::find_if(now.exams.begin(), now.exams.end(), [&](const ExamRecord &exam) {
        const bool other_text = exam.practice == was->practice && exam.practice_hash != was->practice_hash;
        return exam.method == was->method && (exam.practice.empty() || other_text) && exam.done().counts;
    });
    if (again == now.exams.end()) return;
    one.unheld = again->number;
    one.other_text = !again->practice.empty();
    one.was += " (not to be called valid by its practice)";
}

/// A find as it stood before an entry. Throws DataError: it cannot be read on the weld as it is described
/// now.
IndicationRecord find_before(const std::vector<Entry> &history, const Entry &entry,
                             const CouponRecord &coupon) {
    const Entry *old = superseded_by(entry, history);
    auto out = codec::indication_from(codec::parsed(old->body), coupon.facts().line, coupon.unit());
    out.number = old->number.value_or(0);
    out.exam = old->exam.value_or(0);
    return out;
}

/// Whether a correction says all that was said before, and more. What was one size may be a length since.
bool fills_in(const std::vector<ChangedValue> &values) {
    return std::all_of(values.begin(), values.end(), [&](const ChangedValue &value) {
        return value.before.empty() ||
               (value.name == "size" && std::any_of(values.begin(), values.end(), [&](const auto &other) {
                    return other.name == "length" && other.now == value.before;
                }));
    });
}

/// Whether the coupon as it stands, which is accepted, would not be with a find as it stood before an entry.
bool find_made_accept(Office &office, const std::vector<Entry> &history, CouponState now,
                      const Entry &entry) {
    const IndicationRecord *here = is_withdrawal(entry) ? nullptr : now.indication(entry.number.value_or(0));
    if (here && here->exam == entry.exam && fills_in(changed_values(history, entry))) return false;
    try {
        const IndicationRecord before = find_before(history, entry, now.record);
        if (!now.exam(before.exam)) return false; // which is told of the exam
        std::erase_if(now.indications, [&](const auto &one) { return one.number == before.number; });
        now.indications.push_back(before);
    } catch (const DataError &) {
        return true;
    }
    for (auto &exam : now.exams)
        if (exam.finished) exam.finished->found = now.finds_of(exam.number);
    return !accepted(office, now);
}

/// Marks the finds without whose change the coupon would not be accepted, but for slips.
void tell_accepted_since(Office &office, const std::vector<Entry> &history, AsItStands &now,
                         std::vector<TakenBack> &all) {
    const auto slips = slips_in(history, all);
    for (auto &one : all) {
        if (one.kind != TakenBack::Kind::find || slips.contains(one.entry)) continue;
        if (!now.is_accepted()) return;
        const auto entry =
            std::find_if(history.begin(), history.end(), [&](const Entry &e) { return e.seq == one.entry; });
        one.made_accept = find_made_accept(office, history, now.state(), *entry);
    }
}

} // namespace

std::vector<TakenBack> taken_back(Office &office, const CouponRecord &coupon,
                                  const std::vector<Turned> &turns) {
    const auto history = office.book().history(coupon.id);
    auto out = taken_back_in(history, coupon);
    AsItStands now(office, coupon.id);
    for (auto &one : out) {
        if (one.to) one.there = became_of(office.book(), *one.to);
        if (one.kind != TakenBack::Kind::exam) continue;
        one.made_count = made_count(office, history, now.state(), one);
        take_made_again_unheld(office, now.state(), one);
    }
    tell_accepted_since(office, history, now, out);
    for (const auto &one : turns) {
        if (!one.accepted || one.by != Turned::By::description) continue;
        TakenBack back;
        back.kind = TakenBack::Kind::description;
        tell_values(one.values, back);
        back.why = one.why;
        back.stamp = one.stamp;
        out.push_back(std::move(back));
    }
    take_changed(now, history, coupon, out);
    return out;
}

std::vector<TakenBack> taken_back(Office &office, const CouponRecord &coupon) {
    return taken_back(office, coupon, turned(office, coupon.id));
}

std::vector<TakenBack> gone_of(Office &office, const CouponRecord &coupon) {
    const auto turns = turned(office, coupon.id);
    return gone_among(taken_back(office, coupon, turns), turns);
}

std::vector<TakenBack> gone_among(std::vector<TakenBack> all, const std::vector<Turned> &turns) {
    std::set<std::int64_t> made_a_reject_go;
    for (const auto &one : turns) made_a_reject_go.insert(one.entry);
    std::erase_if(all, [&](const TakenBack &one) {
        const bool corrected = one.kind == TakenBack::Kind::find && !one.now.empty() && !one.made_accept,
                   found_nothing = one.kind == TakenBack::Kind::exam && one.finds.empty() &&
                                   !one.made_count && one.unheld == 0;
        return (corrected || found_nothing || one.opened_again) && one.never_logged == 0 &&
               !made_a_reject_go.contains(one.entry);
    });
    return all;
}

std::vector<std::string> taken_back_words(const std::vector<TakenBack> &all) {
    std::vector<std::string> out;
    for (const auto &one : all) {
        if (one.never_logged > 0)
            out.push_back("exam " + std::to_string(one.number) + " was finished with " +
                          counted(static_cast<std::size_t>(one.never_logged), "find") +
                          " that never came on record");
        if (one.opened_again) continue; // what was found then stands
        const char *done = one.now.empty() ? " withdrawn" : " changed";
        const char *since = one.made_accept ? ", and accepted only since" : "";
        switch (one.kind) {
        case TakenBack::Kind::find:
            out.push_back(
                "#" + std::to_string(one.number) +
                (one.to ? " moved to #" + std::to_string(one.to->number) + " of coupon " + one.to->coupon
                        : done) +
                since + (one.planar ? " (" + one.was + ")" : ""));
            break;
        case TakenBack::Kind::exam:
            out.push_back("exam " + std::to_string(one.number) + done +
                          (one.made_count ? ", and counts so only since" : "") +
                          (one.unheld > 0 ? ", which could not be called valid by its practice; exam " +
                                                std::to_string(one.unheld) +
                                                (one.other_text ? " is held against another text of it"
                                                                : " is held against none")
                                          : ""));
            break;
        case TakenBack::Kind::called_for: out.push_back(one.was + " called for and taken off"); break;
        case TakenBack::Kind::welder:
            out.push_back("said to be welded by " + (one.was.empty() ? "nobody" : one.was));
            break;
        case TakenBack::Kind::weld:
            out.push_back("said to be " + said_of_weld(one.field, one.was) + since);
            break;
        case TakenBack::Kind::description: break;
        }
    }
    return out;
}

} // namespace beadbook
