#include "operations/coupons.hpp"

#include "criteria/nominal_size.hpp"
#include "facts/deposits.hpp"
#include "facts/plausibility.hpp"
#include "facts/reason.hpp"
#include "measure/text.hpp"
#include "operations/coupon_hints.hpp"
#include "operations/known_words.hpp"
#include "operations/marks.hpp"
#include "operations/rule_words.hpp"
#include "operations/said_by_welder.hpp"
#include "operations/turned_verdicts.hpp"
#include "operations/vouching.hpp"
#include "operations/weld_through.hpp"
#include "records/codecs/bodies.hpp"

#include <algorithm>

namespace beadbook {
namespace {

constexpr const char *mark_like_another = "mark-like-another";
constexpr const char *mark_odd = "mark-odd";

/// The criteria are found, and the class is one of theirs; a file is found again from any folder.
void check_criteria(Catalogue &catalogue, CouponRecord &coupon) {
    const std::string criteria = coupon.get("criteria");
    if (criteria.empty()) {
        if (coupon.get("class").empty()) return;
        throw refused("class '" + shown(coupon.get("class")) + "' of which criteria?").give("criteria");
    }
    const auto set = at_field("criteria", [&] { return catalogue.criteria(criteria); });
    if (means_file(criteria)) coupon.set("criteria", catalogue.outside().absolute(criteria));
    if (const std::string c = coupon.get("class"); !c.empty() && !set->class_index(c))
        throw refused("criteria " + set->name + " have no class '" + shown(c) + "'; they have " +
                      listed(set->class_names()))
            .at("class");
}

/// What was logged must still lie on the weld as it is now described.
void check_still_on_weld(const CouponState &old, const CouponRecord &now) {
    const Coupon facts = now.facts();
    for (const auto &i : old.indications) {
        try {
            replaced_on(i, facts.line, now.unit());
        } catch (const InputError &e) {
            throw refused("with this change indication #" + std::to_string(i.number) +
                          " would not fit: " + e.what());
        }
    }
}

constexpr std::string_view unit_of_another = "unit-of-another-size";

/// Walls and sizes of beads of so many inches whose unit nobody wrote: another size fixed it, and 6 mm are
/// soon 6 in (common practice, no source: no bench welds so thick a coupon).
std::vector<Unlikely> in_unit_of_another(const CouponRequest &request, const CouponRecord &now) {
    std::vector<Unlikely> out;
    if (!now.get("units").empty() || now.fixed_unit() != Unit::inch) return out;
    for (const auto &[name, value] : request.fields) {
        const bool long_by_nature = name == "weld-length" || name == "weld-width" || name == "diameter";
        const auto kept = now.fields.find(name);
        if (long_by_nature || kept == now.fields.end() || !is_bare_length(name, value) ||
            kept->second.value < Exact(2 * nm_per_inch))
            continue;
        out.push_back({std::string(unit_of_another), name + " " + kept->second.text +
                                                         ": its unit is that of another size; is it " +
                                                         value + " mm? write the unit"});
    }
    return out;
}

/// What was set aside for the coupon as it was stays so while it reads the same.
void set_aside(Catalogue &catalogue, const CouponRequest &request, const CouponRecord &before,
               CouponRecord &now) {
    const Plausibility &all = Plausibility::shipped();
    const Day today = catalogue.outside().today();
    std::vector<std::string> known = request.sure_of;
    const auto read_of = [&](const CouponRecord &coupon) {
        auto out = all.of(coupon, today);
        if (std::string why = deposits_over_weld(coupon); !why.empty())
            out.push_back({"deposit-over-weld", std::move(why)});
        return out;
    };
    const auto read_before = read_of(before);
    auto reads_now = read_of(now);
    for (const auto &one : reads_now)
        if (std::find(read_before.begin(), read_before.end(), one) != read_before.end() &&
            is_meant(before.sure, one.rule))
            known.push_back(one.rule);
    for (auto &one : in_unit_of_another(request, now)) reads_now.push_back(std::move(one));
    now.sure = set_aside_by(reads_now, request.sure, known);
    for (const char *who : {welder_like_another, welder_of_another_name})
        if (is_meant(before.sure, who) && before.get("welder") == now.get("welder"))
            now.sure.emplace_back(who);
    // These are about what was typed, which is not seen again.
    for (const std::string_view typed :
         {std::string_view(mark_like_another), std::string_view(mark_odd), unit_of_another})
        if (is_meant(before.sure, typed) && !is_meant(now.sure, typed)) now.sure.emplace_back(typed);
}

/// Finds that were believable, and are not on the coupon as it is described now: asked about, and once they
/// are meant so the coupon keeps which rules that were.
void check_still_believable(const CouponState &old, const CouponChange &request, CouponRecord &now) {
    const Plausibility &all = Plausibility::shipped();
    std::string unsure;
    for (const auto &find : old.indications) {
        const Exam method = old.needed_exam(find.exam).method;
        const auto before = all.of(old.record, find, method, old.indications);
        for (const auto &one : all.of(now, find, method, old.indications)) {
            const bool stood = std::any_of(before.begin(), before.end(),
                                           [&](const Unlikely &was) { return was.rule == one.rule; });
            const bool aside = is_meant(old.record.sure, one.rule);
            if (is_meant(find.sure, one.rule) || (stood && !aside)) continue;
            if (!aside && !request.said.sure)
                unsure +=
                    (unsure.empty() ? "#" : "\n#") + std::to_string(find.number) + ": " + question_of(one);
            else if (!is_meant(now.sure, one.rule))
                now.sure.push_back(one.rule);
        }
    }
    if (!unsure.empty()) throw Unsure(unsure);
}

Done<CouponRecord> take_back_or_restore(Writing &writing, const CouponState &old,
                                        const std::string &withdrawn, const std::string &why) {
    check_may_give_away(writing, old);
    check_may_describe(writing, old, old.record.get("welder"));
    CouponRecord now = old.record;
    now.withdrawn = withdrawn;
    Entry e = codec::entry_of(now);
    e.supersedes = old.record_seq;
    e.reason = why;
    writing.add(std::move(e));
    return {now, {}};
}

/// What it says, for somebody who names what it does not say.
std::string fields_of(const CouponRecord &coupon, const std::string &asked) {
    std::vector<std::string> names;
    for (const auto &[name, value] : coupon.fields) names.push_back(name);
    return names.empty() ? "; it says nothing yet"
                         : "; it says " + listed(names) + did_you_mean(asked, names);
}

void note_welder(const CouponRequest &request, Done<CouponRecord> &done) {
    const auto given = request.fields.find("welder");
    if (given == request.fields.end() || trimmed(given->second) == done.value.get("welder")) return;
    done.notes.push_back("welder '" + shown(given->second) + "' is " + done.value.get("welder"));
}

/// That bends passed is not said by whoever welded them.
void check_bends_said(Writing &writing, const CouponRecord &before, const CouponRecord &now) {
    if (now.get("mechanical") == "passed" && before.get("mechanical") != "passed")
        check_is_another(writing.office(), writing.stamp().who, now.get("welder"),
                         "says that its mechanical tests passed");
}

void note_through(const CouponRequest &request, Done<CouponRecord> &done) {
    if (says_through(request.fields))
        done.notes.push_back("weld-thickness " + done.value.get("weld-thickness") +
                             ", the thinner member: the butt is said to be welded through");
}

} // namespace

CouponRecord described(Catalogue &catalogue, const CouponRequest &request, CouponRecord base,
                       const RangeRules *by) {
    const CouponRecord before = base;
    base.id = request.mark;
    at_field("mark", [&] { check_coupon_id(base.id); });
    auto fields = request.fields;
    // What it is comes from the members; what it was may be the wall of another pipe.
    if (says_through(request.fields)) {
        fields.erase("weld-thickness");
        base.fields.erase("weld-thickness");
    }
    base.set_all(fields);
    for (const auto &[name, value] : fields) base.by_settings.erase(name);
    base.by_settings.insert(request.by_settings.begin(), request.by_settings.end());
    if (says_through(request.fields)) base.set("weld-thickness", through_thickness(base));
    if (request.fields.contains("criteria") || request.fields.contains("class"))
        check_criteria(catalogue, base);
    if (request.fields.contains("process") || request.fields.contains("position"))
        take_known_words(catalogue, base, by);
    for (const char *field : {"filler-group", "filler-type"})
        if (request.fields.contains(field) || request.fields.contains("process"))
            if (std::string why = filler_of_several(base, field); !why.empty()) throw refused(why).at(field);
    if (request.fields.contains("backing") || request.fields.contains("process") ||
        request.fields.contains("sides"))
        if (std::string why = backing_of_later(base); !why.empty()) throw refused(why).at("backing");
    if (request.fields.contains("position") || request.fields.contains("progression"))
        if (std::string why = progression_contradicted(base.get("position"), base.get("progression"));
            !why.empty())
            throw refused(why).at("progression");
    take_weld_along(before, request.fields, base);
    set_aside(catalogue, request, before, base);
    return base;
}

std::vector<std::string> sizes_understood(const std::map<std::string, std::string> &given,
                                          const CouponRecord &kept) {
    std::map<std::string, std::vector<std::string>> by_source;
    const NominalSizes &sizes = NominalSizes::shipped();
    for (const auto &[field, text] : given) {
        const std::string kept_text = kept.get(field);
        const std::string_view called = size_and_name(kept_text).second;
        if (called.empty() || !size_and_name(text).second.empty()) continue;
        if (const auto known = field == "diameter" ? sizes.outside(called) : sizes.wall(called, {}))
            by_source[known->source].push_back(field + ": " + known->called + " is " + known->size);
    }
    std::vector<std::string> out;
    for (const auto &[source, read] : by_source)
        out.push_back(joined(read, ", ") + (read.size() == 1 ? ", the nominal size" : ", the nominal sizes") +
                      "; no mill tolerance is taken off (" + source + ")");
    return out;
}

void check_new(Book &book, const std::string &mark, bool tell_free) {
    if (!book.knows_coupon(mark)) return;
    std::string free = tell_free ? next_mark(mark) : "";
    while (!free.empty() && book.knows_coupon(free)) free = next_mark(free);
    throw refused("coupon " + mark + " is registered already" +
                  (free.empty() ? "" : "; " + free + " is free"))
        .at("mark")
        .mend({"change", {mark}, {}});
}

MarksAlike::MarksAlike(Book &book) : welders_(book) {
    for (auto &mark : book.coupons()) by_seen_.emplace(seen_mark(mark), mark);
}

void MarksAlike::take(CouponRecord &coupon, bool sure, const std::vector<std::string> &sure_of) {
    welders_.take_of_elsewhere(coupon, sure);
    welders_.take(coupon, sure, sure_of);
    std::vector<Unlikely> found;
    if (const std::string why = odd_mark(coupon.id); !why.empty())
        found.push_back({mark_odd, "mark " + coupon.id + ": " + why});
    const auto [other, alone] = by_seen_.emplace(seen_mark(coupon.id), coupon.id);
    if (!alone)
        found.push_back({mark_like_another, "coupon " + coupon.id + ": " + other->second +
                                                " is on record, and differs from it only in capitals, zeros "
                                                "or signs; is it another piece?"});
    for (auto &one : set_aside_by(found, sure, sure_of)) coupon.sure.push_back(std::move(one));
}

Done<CouponRecord> register_coupon(Writing &writing, const CouponRequest &request, CouponRecord base) {
    MarksAlike alike(writing.book());
    return register_coupon(writing, request, std::move(base), alike);
}

Done<CouponRecord> register_coupon(Writing &writing, const CouponRequest &request, CouponRecord base,
                                   MarksAlike &alike) {
    Done<CouponRecord> out{described(writing.catalogue(), request, std::move(base)), {}};
    check_new(writing.book(), out.value.id);
    alike.take(out.value, request.sure, request.sure_of);
    note_welder(request, out);
    check_bends_said(writing, {}, out.value);
    writing.add(codec::entry_of(out.value));
    out.notes = hints_on(writing.catalogue(), out.value);
    for (auto &doubt : doubts_on(writing.catalogue(), out.value)) out.notes.push_back(std::move(doubt));
    note_through(request, out);
    add_notes(out.notes, sizes_understood(request.fields, out.value));
    return out;
}

namespace {

/// Who welded it said nothing of what its exams found while it was another's.
void check_welder_said_nothing(Writing &writing, const CouponState &coupon, const std::string &welder) {
    const auto refuse = [&](const std::string &who, const std::string &what) {
        throw refused("as welder " + shown(welder) + "'s: " + shown(who) + ", " + what +
                      "; nobody says what was found on his own weld (common practice, no source). Another "
                      "person says it anew first, or the coupon is registered anew")
            .at("welder");
    };
    for (const auto &exam : coupon.exams)
        if (exam.finished && is_welder(writing.office(), exam.finished->by, welder))
            refuse(exam.finished->by, "who welded it, finished exam " + std::to_string(exam.number));
    for (const auto &[who, what] : said_by_welder(writing.office(), coupon, welder)) refuse(who, what);
}

/// Whatever it said it says still.
bool only_tells_more(const CouponRecord &before, const CouponRecord &now) {
    return std::all_of(before.fields.begin(), before.fields.end(), [&](const auto &field) {
        const auto still = now.fields.find(field.first);
        return still != now.fields.end() && still->second == field.second;
    });
}

} // namespace

Done<CouponRecord> change_coupon(Writing &writing, const CouponChange &request) {
    const CouponState old = writing.coupon(request.said.mark);
    if (!old.record.withdrawn.empty()) throw is_withdrawn(old.record);
    CouponRecord now = old.record;
    for (const auto &name : request.forget) {
        now.by_settings.erase(name);
        if (request.said.fields.contains(name))
            throw refused("'" + shown(name) + "' is given and to be forgotten; which is meant?").at("forget");
        else if (now.fields.erase(name) == 0)
            throw refused("coupon " + now.id + " has no '" + shown(name) + "' to forget" +
                          fields_of(now, name))
                .at("forget");
    }
    now = described(writing.catalogue(), request.said, std::move(now));
    if (request.said.fields.contains("welder")) {
        WeldersMeant welders(writing.book());
        welders.take(now, request.said.sure, request.said.sure_of);
        if (now.get("welder") != old.record.get("welder")) welders.take_of_elsewhere(now, request.said.sure);
    }
    if (std::find(request.forget.begin(), request.forget.end(), "criteria") != request.forget.end())
        check_criteria(writing.catalogue(), now);
    if (now == old.record)
        throw refused(request.said.fields.empty()
                          ? "this changes nothing: no field of the coupon is given, nor one to forget"
                          : "this changes nothing: the coupon says so already");
    if (now.get("welder") != old.record.get("welder") || now.get("purpose") != old.record.get("purpose"))
        check_may_give_away(writing, old);
    check_may_describe(writing, old, now.get("welder"));
    if (now.get("welder") != old.record.get("welder"))
        check_welder_said_nothing(writing, old, now.get("welder"));
    check_bends_said(writing, old.record, now);
    check_still_on_weld(old, now);
    check_still_believable(old, request, now);
    Entry e = codec::entry_of(now);
    e.supersedes = old.record_seq;
    // What was open and is told now takes nothing back that a reason could be asked for.
    e.reason = request.why.empty() && only_tells_more(old.record, now) ? std::string(told_first)
                                                                       : needed_reason(request.why);
    const auto before = as_it_stands(writing, now.id);
    writing.add(std::move(e));
    Done<CouponRecord> out{now, {}};
    const auto doubted = doubts_on(writing.catalogue(), old.record);
    for (auto &doubt : doubts_on(writing.catalogue(), now))
        if (std::find(doubted.begin(), doubted.end(), doubt) == doubted.end())
            out.notes.push_back(std::move(doubt));
    note_turned_verdicts("this", before, as_it_stands(writing, now.id), out.notes);
    keep_what_may_go(writing, now.id);
    if (now.get("also") != old.record.get("also") && !old.record.get("also").empty())
        out.notes.push_back("called for on this coupon was " + old.record.get("also") + ", and now is " +
                            (now.get("also").empty() ? "nothing" : now.get("also")) +
                            "; whoever grades it is told so");
    note_through(request.said, out);
    note_welder(request.said, out);
    add_notes(out.notes, sizes_understood(request.said.fields, out.value));
    if (const auto unit = now.fixed_unit(); unit && unit != old.record.fixed_unit())
        out.notes.push_back(
            "a bare number is taken in " + std::string(name_of(*unit)) +
            " from now on; what was logged or described before keeps the unit that it was taken in");
    return out;
}

Done<CouponRecord> withdraw_coupon(Writing &writing, const std::string &mark, const std::string &why) {
    const CouponState old = writing.coupon(mark);
    if (!old.record.withdrawn.empty())
        throw refused("coupon " + mark + " is withdrawn already: " + old.record.withdrawn);
    const std::string reason = needed_reason(why);
    return take_back_or_restore(writing, old, reason, reason);
}

Done<CouponRecord> restore_coupon(Writing &writing, const std::string &mark, const std::string &why) {
    const CouponState old = writing.coupon(mark);
    if (old.record.withdrawn.empty()) throw refused("coupon " + mark + " is not withdrawn");
    return take_back_or_restore(writing, old, "", needed_reason(why));
}

Done<Remark> remark_on(Writing &writing, const std::string &mark, const std::string &text) {
    writing.coupon(mark);
    const Remark out{checked_text(text, "remark"), writing.stamp()};
    if (out.text.empty()) throw refused("the remark is empty");
    Entry e;
    e.kind = "remark";
    e.subject = mark;
    e.body = codec::body_of(out);
    writing.add(std::move(e));
    return {out, {}};
}

} // namespace beadbook
