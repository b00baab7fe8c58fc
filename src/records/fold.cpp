#include "records/fold.hpp"

#include "records/codecs/facts.hpp"
#include "records/codecs/owners_copy.hpp"
#include "records/codecs/people.hpp"
#include "records/codecs/photo.hpp"
#include "records/codecs/typed.hpp"
#include "records/codecs/verdict.hpp"
#include "records/codecs/welder.hpp"

#include <algorithm>
#include <set>
#include <utility>

namespace beadbook {
namespace {

/// Puts a numbered thing in its place, instead of the one of its number.
template <class List, class T>
void put(List &list, T thing) {
    const auto at = std::lower_bound(list.begin(), list.end(), thing.number,
                                     [](const auto &x, int n) { return x.number < n; });
    if (at != list.end() && at->number == thing.number)
        *at = std::move(thing);
    else
        list.insert(at, std::move(thing));
}

/// Takes one standing entry into the coupon's state.
void take(CouponState &state, const Entry &e, const WeldLine &line, const Vocabulary &vocabulary) {
    const auto body = [&] { return codec::parsed(e.body); };
    if (e.kind == "exam") {
        ExamRecord exam = codec::exam_from(body());
        if (exam.finished && e.who != exam.finished->by) exam.finished->told_by = e.who;
        state.exam_seq[exam.number] = e.seq;
        put(state.exams, exam);
    } else if (e.kind == "indication") {
        IndicationRecord found = codec::indication_from(body(), line, state.record.unit(), vocabulary);
        state.indication_seq[found.number] = e.seq;
        if (const IndicationRecord *old = state.indication(found.number)) --state.finds[old->exam];
        ++state.finds[found.exam];
        put(state.indications, std::move(found));
    } else if (e.kind == "remark") {
        state.remarks.push_back(codec::remark_from(body(), stamp_of(e)));
    } else if (e.kind == "verdict") {
        state.verdicts.push_back(codec::verdict_from(e));
    } else if (e.kind == "grade") {
        const bool failed_before = state.grade && (!state.grade->passed || state.grade->after_fail);
        state.grade = codec::grade_from(body(), stamp_of(e));
        state.grade->seq = e.seq;
        state.grade->after_fail = state.grade->passed && failed_before;
    }
}

/// A photo that was withdrawn stays, and says so.
void take_photo(CouponState &state, const Entry &e) {
    if (!is_withdrawal(e)) {
        PhotoRecord photo = codec::photo_from(e);
        state.photo_seq[photo.number] = e.seq;
        return put(state.photos, std::move(photo));
    }
    for (auto &photo : state.photos)
        if (photo.number == e.number) photo.withdrawn = e.reason;
}

void note(CouponState &state, const Entry &e) {
    state.last_seq = e.seq;
    if (!e.reason.empty()) state.whys.push_back({e.kind, e.exam.value_or(0), e.number.value_or(0), e.reason});
    if (e.kind == "photo") take_photo(state, e);
    if (const auto to = moved_to(e))
        state.gone.push_back(
            {e.number.value_or(0), e.exam.value_or(0), to->coupon, to->exam, to->number, e.reason});
    if (e.kind == "exam") state.last_exam = std::max(state.last_exam, e.exam.value_or(0));
    if (e.kind == "indication") state.last_indication = std::max(state.last_indication, e.number.value_or(0));
}

template <class F>
auto readable(const std::string &subject, F f) {
    try {
        return f();
    } catch (const std::exception &e) {
        throw StoreError(subject + ": an entry cannot be read: " + e.what());
    }
}

std::set<std::int64_t> superseded_in(std::span<const Entry> entries) {
    std::set<std::int64_t> out;
    for (const auto &e : entries)
        if (e.supersedes) out.insert(*e.supersedes);
    return out;
}

/// What the coupon is now, and what it was once said to be that a grade must not lose.
void take_description(CouponState &state, const Entry &e) {
    CouponRecord said = codec::coupon_from(codec::parsed(e.body));
    if (said.bends_failed() ||
        std::any_of(said.before.begin(), said.before.end(),
                    [](const CarriedFact &one) { return one.kind == CarriedFact::Kind::bends_failed; }))
        state.mechanical_failed = e.seq;
    if (said.get("mechanical") != state.record.get("mechanical")) state.mechanical_said = stamp_of(e);
    const auto sought = [](const CouponRecord &record) {
        return std::pair(record.get("criteria"), record.get("class"));
    };
    if (state.record_seq > 0 && sought(state.record) != sought(said)) state.sought_changed = e.seq;
    state.record = std::move(said);
    state.record_seq = e.seq;
}

} // namespace

CouponState fold_coupon(std::span<const Entry> entries, const Vocabulary &vocabulary) {
    return readable(entries.empty() ? "coupon" : "coupon " + entries.front().subject, [&] {
        const auto superseded = superseded_in(entries);
        CouponState state;
        // The coupon first: places on it are read with its length.
        for (const auto &e : entries)
            if (e.kind == "coupon" && !is_withdrawal(e)) take_description(state, e);
        const WeldLine line = state.record.facts().line;
        for (const auto &e : entries) {
            note(state, e);
            if (!superseded.contains(e.seq) && !is_withdrawal(e)) take(state, e, line, vocabulary);
        }
        return state;
    });
}

bool take_entry(CouponState &state, const Entry &e, const Vocabulary &vocabulary) {
    if (e.kind == "coupon") return false;
    return readable("coupon " + state.record.id, [&] {
        note(state, e);
        if (!is_withdrawal(e)) {
            take(state, e, state.record.facts().line, vocabulary);
        } else if (e.kind == "exam") {
            std::erase_if(state.exams, [&](const ExamRecord &x) { return x.number == e.exam; });
            state.exam_seq.erase(e.exam.value_or(0));
        } else if (e.kind == "indication") {
            if (const IndicationRecord *old = state.indication(e.number.value_or(0)))
                --state.finds[old->exam];
            std::erase_if(state.indications, [&](const IndicationRecord &x) { return x.number == e.number; });
            state.indication_seq.erase(e.number.value_or(0));
        }
        return true;
    });
}

std::set<int> exams_touched(const CouponState &before, const Entry &e) {
    std::set<int> out;
    if (e.exam) out.insert(*e.exam);
    if (e.kind == "indication")
        if (const IndicationRecord *old = before.indication(e.number.value_or(0))) out.insert(old->exam);
    return out;
}

std::vector<std::string> names_ever(const std::string &mark, std::span<const Entry> entries) {
    std::vector<std::string> out;
    for (const auto &e : entries) {
        if (e.kind != "welder" || is_withdrawal(e)) continue;
        std::string name = codec::welder_from(mark, codec::parsed(e.body)).name;
        if (std::find(out.begin(), out.end(), name) == out.end()) out.push_back(std::move(name));
    }
    return out;
}

namespace {

/// A qualification by its number, whether or not it was retracted since.
QualificationRecord granted_ever(std::span<const Entry> entries, int number) {
    const auto found = std::find_if(entries.begin(), entries.end(), [&](const Entry &e) {
        return e.kind == "qualification" && e.number == number && !is_withdrawal(e);
    });
    return found == entries.end() ? QualificationRecord{}
                                  : codec::qualification_from(codec::parsed(found->body));
}

} // namespace

WelderState fold_welder(const std::string &mark, std::span<const Entry> entries) {
    return readable("welder " + mark, [&] {
        const auto superseded = superseded_in(entries);
        WelderState out;
        std::string latest;
        for (const auto &e : entries) {
            latest = std::max(latest, e.at);
            if (e.number) out.last_number = std::max(out.last_number, *e.number);
            if (const Entry *old = is_withdrawal(e) ? superseded_by(e, entries) : nullptr;
                old && old->kind == "revocation") {
                WelderEvent event = codec::event_from(*old);
                QualificationRecord of = granted_ever(entries, event.qualification);
                out.revocations_gone.push_back({std::move(event), e.reason, std::move(of)});
            }
            if (superseded.contains(e.seq) || is_withdrawal(e)) continue;
            if (e.kind == "welder") {
                out.record = codec::welder_from(mark, codec::parsed(e.body));
                out.record_seq = e.seq;
            } else if (e.kind == "qualification") {
                out.qualifications.push_back(codec::qualification_from(codec::parsed(e.body)));
                out.granted[out.qualifications.back().number] = stamp_of(e);
                out.hashes[out.qualifications.back().number] = e.hash;
                out.entries[out.qualifications.back().number] = e.seq;
            } else {
                out.events.push_back(codec::event_from(e));
                if (latest > e.at) out.events.back().not_before = latest;
            }
        }
        return out;
    });
}

PersonState fold_person(const std::string &name, std::span<const Entry> entries) {
    return readable("person " + name, [&] {
        PersonState out;
        for (const auto &e : entries) out = {codec::person_from(name, codec::parsed(e.body)), e.seq};
        return out;
    });
}

EquipmentState fold_equipment(const std::string &serial, std::span<const Entry> entries) {
    return readable("equipment " + serial, [&] {
        EquipmentState out;
        for (const auto &e : entries) out = {codec::equipment_from(serial, codec::parsed(e.body)), e.seq};
        return out;
    });
}

OwnersCopyState fold_owners_copy(const std::string &set, std::span<const Entry> entries) {
    return readable("criteria " + set, [&] {
        const auto superseded = superseded_in(entries);
        OwnersCopyState out;
        for (const auto &e : entries) {
            if (is_withdrawal(e)) continue;
            // What was replaced must be readable too.
            if (e.kind == "confirmation") {
                auto record = codec::confirmation_from(e);
                if (!superseded.contains(e.seq))
                    out.confirmations.push_back({std::move(record), e.seq, e.hash, stamp_of(e)});
            } else {
                auto record = codec::filling_from(e);
                if (!superseded.contains(e.seq))
                    out.fillings.push_back({std::move(record), e.seq, e.hash, stamp_of(e)});
            }
        }
        return out;
    });
}

} // namespace beadbook
