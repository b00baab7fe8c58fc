#include "report/coupon_document.hpp"

#include "criteria/provenance.hpp"
#include "facts/log_line.hpp"
#include "measure/text.hpp"
#include "operations/carried_facts.hpp"
#include "operations/marks.hpp"
#include "operations/mechanical.hpp"
#include "records/changed_values.hpp"
#include "report/exam_words.hpp"
#include "report/own_file.hpp"
#include "report/photo_document.hpp"
#include "report/standing_document.hpp"
#include "report/weld_map.hpp"
#include "technique/known_conditions.hpp"

#include <algorithm>

namespace beadbook {
namespace {

Words exam_words(const ExamRecord &e) {
    return Words::of_exam("Exam " + std::to_string(e.number), e.number) +
           (": " + std::string(name_of(e.method)) + " on " + print(e.date) +
            (e.examiner.empty() ? "" : " by " + e.examiner) +
            (e.level.empty() ? "" : ", level " + e.level_told()) +
            (e.procedure.empty() ? "" : ", procedure " + e.procedure) + "; " + finished_words(e) +
            (e.incomplete.empty() ? "" : "; does not count: " + e.incomplete));
}

/// "(moved from exam 1 of coupon T-7: wrong film)".
std::string find_text(const CouponState &coupon, const IndicationRecord &i) {
    std::string out = "#" + std::to_string(i.number) + " " + print_log_line(i);
    if (const auto &from = i.moved_from)
        out += " (moved from exam " + std::to_string(from->exam) +
               (from->coupon == coupon.record.id
                    ? ""
                    : " of coupon " + from->coupon + ", #" + std::to_string(from->number)) +
               ": " + from->why + ")";
    if (!i.sure.empty()) out += " (" + sure_text(i.sure) + ")";
    return out;
}

std::string moved_text(const MovedAway &gone) {
    return "#" + std::to_string(gone.number) + " was moved to exam " + std::to_string(gone.to_exam) +
           (gone.coupon.empty() ? "" : " of coupon " + gone.coupon + ", #" + std::to_string(gone.to_number)) +
           ": " + gone.why;
}

void add_exam(Document &doc, const CouponState &coupon, const ExamRecord &e) {
    std::vector<Bullet> under;
    if (!e.sure.empty()) under.push_back({sure_text(e.sure), "", {}});
    if (e.finished && !e.open.empty()) under.push_back({"does not count: " + e.open, "", {}});
    if (!e.practice.empty())
        under.push_back(
            {"by practice " + practice_told(e) + ": " + (e.invalid.empty() ? "valid" : e.invalid), "", {}});
    for (const auto &[name, value] : e.conditions)
        under.push_back({name + ": " + told_value(name, value), "", {}});
    for (const auto &one : e.equipment)
        under.push_back({"with " + (one.kind.empty() ? "equipment" : one.kind) + " " + one.serial, "", {}});
    for (const auto &one : e.cautions())
        under.push_back({Words("caution: " + one, Tone::cannot_say), "", {}});
    if (!e.note.empty()) under.push_back({"note: " + e.note, "", {}});
    bool any = false;
    for (const auto &i : coupon.indications) {
        if (i.exam != e.number) continue;
        under.push_back({find_text(coupon, i), "", {}});
        any = true;
    }
    for (const auto &gone : coupon.moved_away())
        if (gone.exam == e.number) under.push_back({moved_text(gone), "", {}});
    if (!any)
        under.push_back({!e.finished             ? "nothing is logged"
                         : !e.incomplete.empty() ? "incomplete: " + e.incomplete
                         : e.done().counts       ? "none found"
                                                 : "none found, which proves nothing: it does not count",
                         "",
                         {}});
    doc.item(exam_words(e), "", std::move(under));
}

std::vector<std::string> marks_of(const std::vector<CouponRecord> &coupons) {
    std::vector<std::string> out;
    for (const auto &coupon : coupons) out.push_back(coupon.id);
    return out;
}

} // namespace

std::string who_words(const Stamp &stamp) { return stamp.who + (stamp.signed_in ? ", signed in" : ""); }

std::string sure_text(const std::vector<std::string> &rules) {
    return rules.empty() ? "" : "sure in spite of " + listed(rules, "and");
}

Words verdict_words(Verdict verdict) {
    return {std::string(name_of(verdict)), verdict == Verdict::accept   ? Tone::accept
                                           : verdict == Verdict::reject ? Tone::reject
                                                                        : Tone::cannot_say};
}

std::string against_text(const Grade &g) {
    std::vector<std::string> against;
    if (g.against_verdict) against.emplace_back("the verdict");
    if (g.against_mechanical) against.emplace_back("failed mechanical tests");
    std::string out = against.empty() ? "" : "against " + listed(against);
    if (g.after_fail) out += (out.empty() ? "" : ", ") + std::string("graded failed before");
    if (g.after_turn)
        out += (out.empty() ? "" : ", ") + std::string("rejected until it or its criteria read otherwise");
    return out;
}

Words mechanical_words(const std::string &result, const Stamp &said,
                       const std::vector<std::string> &asked_by) {
    const std::string by = said.who.empty() ? "" : ", as " + said.who + " said on " + said.at.substr(0, 10);
    if (result == "failed")
        return Words("Mechanical tests: ") + Words("failed", Tone::reject) +
               "; the verdict does not go by them, and no accept outweighs them" + by;
    if (!result.empty()) return Words("Mechanical tests: ") + result + by;
    return asked_by.empty() ? Words()
                            : Words("Mechanical tests: none on record; of such a test they are asked by " +
                                    listed(asked_by));
}

std::string by_other_text(const GradeStanding &standing) {
    return standing.by_other.empty() || standing.state == GradeStanding::State::again
               ? ""
               : "by " + standing.by_other + ", look at it again";
}

std::string grade_text(const Grade &g) {
    const std::string against = against_text(g);
    return g.decision() + " for class " + g.class_id + " by " + who_words(g.stamp) +
           (against.empty() ? "" : ", " + against) + (g.remark.empty() ? "" : ": " + g.remark);
}

namespace {

std::string finds_ever_text(const std::vector<int> &finds) {
    std::vector<std::string> numbers;
    for (const int number : finds) numbers.push_back("#" + std::to_string(number));
    return numbers.empty() ? "" : ", under which " + listed(numbers, "and") + " had been on record,";
}

} // namespace

std::string taken_back_text(const TakenBack &one) {
    if (one.kind == TakenBack::Kind::description)
        return "It was rejected until " + one.stamp.who + " changed " + one.was + " to " + one.now + " on " +
               one.stamp.at.substr(0, 10) + ": " + one.why;
    if (one.kind == TakenBack::Kind::called_for)
        return one.was + " was called for on this coupon until " + one.stamp.who + " took that off on " +
               one.stamp.at.substr(0, 10) + ": " + one.why;
    if (one.kind == TakenBack::Kind::welder)
        return "It was said to be welded by " + (one.was.empty() ? "nobody" : one.was) + " until " +
               one.stamp.who + " said " + (one.now.empty() ? "nobody" : one.now) + " on " +
               one.stamp.at.substr(0, 10) + ": " + one.why;
    if (one.kind == TakenBack::Kind::weld)
        return "When it was examined it was said to be " + said_of_weld(one.field, one.was) + ", until " +
               one.stamp.who + " said " + one.now + " on " + one.stamp.at.substr(0, 10) +
               (one.made_accept ? ", and it is accepted only since: " : ": ") + one.why;
    const std::string number = std::to_string(one.number);
    if (one.opened_again)
        return "Exam " + number + " was " + one.was + " and opened again by " + one.stamp.who + " on " +
               one.stamp.at.substr(0, 10) + ": " + one.why;
    const std::string done = one.to ? "moved to exam " + std::to_string(one.to->exam) + " of coupon " +
                                          one.to->coupon + ", #" + std::to_string(one.to->number) + ","
                             : one.now.empty() ? "withdrawn"
                                               : "corrected to " + one.now;
    return (one.kind == TakenBack::Kind::exam ? "Exam " + number + " was recorded as "
                                              : "#" + number + " was logged as ") +
           one.was + finds_ever_text(one.finds) + " and " + done + " by " + one.stamp.who + " on " +
           one.stamp.at.substr(0, 10) + (one.made_accept ? ", and it is accepted only since: " : ": ") +
           one.why + (one.there.empty() ? "" : "; " + one.there);
}

void add_taken_back(Document &doc, const std::vector<TakenBack> &things) {
    for (const auto &one : things) doc.line(taken_back_text(one));
}

void add_described_since(Document &doc, const std::vector<DescribedSince> &changes,
                         const std::string &since) {
    for (const auto &one : changes) {
        std::vector<std::string> values;
        for (const auto &value : one.values)
            values.push_back(value.name + " " + (value.before.empty() ? "nothing" : value.before) + " -> " +
                             (value.now.empty() ? "nothing" : value.now));
        doc.line(Words("The coupon is described otherwise than at " + since + ": " + joined(values, ", ") +
                           ", by " + one.stamp.who + " on " + one.stamp.at.substr(0, 10) + ": " + one.why,
                       Tone::cannot_say));
    }
}

Document document_of(const Registered &done) {
    const std::string &id = done.coupon.id;
    return Document{}.line("coupon " + id + " registered; next: beadbook exam " + id + " " + done.next +
                           ", with its examiner");
}

Document document_of(const RegisteredMany &done) {
    return Document{}.line(counted(done.coupons.size(), "coupon") +
                           " registered: " + marks_text(marks_of(done.coupons)));
}

Document document_of(const Changed &done) {
    return Document{}.line("coupon " + done.coupon.id + " changed; the old entry is kept");
}

Document document_of(const ChangedMany &done) {
    return Document{}.line(counted(done.coupons.size(), "coupon") +
                           " changed: " + marks_text(marks_of(done.coupons)) + "; the old entries are kept");
}

Document document_of(const CouponWithdrawn &done) {
    return Document{}.line("coupon " + done.coupon.id +
                           " withdrawn; it stays on record, is judged no more and proves nothing");
}

Document document_of(const CouponRestored &done) {
    return Document{}.line("coupon " + done.coupon.id + " restored");
}

Document document_of(const Remark &) { return Document{}.line("remark kept"); }

Words grade_words(const Grade &grade, const GradeStanding &standing) {
    Words out = grade_text(grade);
    if (!standing.why.empty()) out += Words("; to be graded again: " + standing.why, Tone::cannot_say);
    if (const std::string by_other = by_other_text(standing); !by_other.empty())
        out += Words("; it was given " + by_other, Tone::cannot_say);
    return out;
}

Words grade_mark(const GradeStanding &standing) {
    const std::string by_other = by_other_text(standing);
    return standing.state == GradeStanding::State::again ? Words(" (to be graded again)", Tone::cannot_say)
           : by_other.empty()                            ? Words()
                                                         : Words(" (" + by_other + ")", Tone::cannot_say);
}

std::string welder_words(const std::string &mark, const std::string &name) {
    return mark + (name.empty() ? "" : ", " + name);
}

void add_facts(Document &doc, const CouponRecord &coupon, const std::string &welder_name) {
    for (const auto &field : coupon_fields()) {
        const std::string_view name = field.name;
        if (const std::string value = coupon.get(field.name); !value.empty())
            doc.pair(field.name, name == "criteria" ? criteria_name(value) : value,
                     name == "welder" ? welder_name : "");
    }
}

Document document_of(const CouponSheet &sheet) {
    const CouponState &c = sheet.coupon;
    Document doc;
    doc.title = "Coupon " + c.record.id;
    doc.heading(doc.title);
    add_facts(doc, c.record, sheet.welder_name);
    if (!c.record.withdrawn.empty()) doc.line(Words("Withdrawn: " + c.record.withdrawn, Tone::cannot_say));
    if (!c.record.sure.empty()) doc.line("The coupon: " + sure_text(c.record.sure));
    if (const auto &by = c.record.by_settings; !by.empty())
        doc.line("Filled in from settings when it was registered, and said by nobody: " +
                 listed({by.begin(), by.end()}, "and"));
    if (!sheet.said_before_correction.empty())
        doc.line(Words("It was " + sheet.said_before_correction, Tone::cannot_say));
    for (const auto &e : c.exams) add_exam(doc, c, e);
    // The finds stand above in words.
    if (!c.indications.empty()) add_map(doc, weld_map(c.record.facts(), c.found(), c.record.unit()), "");
    add_photos(doc, photos_of(c));
    for (const auto &fact : c.record.before)
        doc.line(
            Words("The coupon: " + words_of(fact), stands_against(fact) ? Tone::cannot_say : Tone::plain));
    add_taken_back(doc, sheet.taken_back);
    for (const auto &r : c.remarks)
        doc.line("Remark by " + who_words(r.stamp) + " at " + r.stamp.at + ": " + r.text);
    if (!c.verdicts.empty()) {
        const StoredVerdict &v = c.verdicts.back();
        std::string classes;
        for (const auto &k : v.classes) classes += (classes.empty() ? " " : "; ") + k.id + " " + k.verdict;
        const std::string own = own_file_mark(v.set, v.hash);
        const std::int64_t changed = c.first_change_after(v.seq);
        doc.line("Verdict on record, " +
                 (changed > 0 ? "as of " + v.stamp.at + ", before entry " + std::to_string(changed) + ","
                              : v.stamp.at) +
                 " by " + who_words(v.stamp) + ", " + v.set + (own.empty() ? "" : " (" + own + ")") + ":" +
                 classes +
                 (changed > 0 ? "; what is on record was changed since, and it was not judged again" : "") +
                 (std::find(sheet.older_than_filled.begin(), sheet.older_than_filled.end(), v.seq) !=
                          sheet.older_than_filled.end()
                      ? "; it is older than what is filled in the blanks of its set"
                      : ""));
    }
    if (const Words line =
            mechanical_words(c.record.get("mechanical"), c.mechanical_said, sheet.mechanical_asked_by);
        !line.empty())
        doc.line(line);
    if (c.grade) doc.line(Words("Grade: ") + grade_words(*c.grade, sheet.grade_standing));
    add_described_since(doc, sheet.described_since, c.grade ? "its grade" : "its last verdict");
    for (const auto &held : sheet.qualified)
        doc.item(Words("proves of welder " + held.mark + " " + title_of(held) + ": ") + held_in_a_cell(held),
                 "", aside_bullets(held.aside, held.rules.get()));
    return doc;
}

namespace {

/// What a first entry says in one line; what a later one changed in a line each.
void add_values(Document &doc, const std::vector<Entry> &history, const Entry &e) {
    const std::string indent(6, ' ');
    const auto changes = changed_values(history, e);
    if (!stands_for_another(history, e)) {
        std::string all;
        for (const auto &one : changes) all += (all.empty() ? "" : "; ") + one.name + ": " + one.now;
        if (!all.empty()) doc.line(indent + all);
        return;
    }
    if (changes.empty() && e.kind == "grade" && !is_withdrawal(e)) doc.line(indent + "the same as before");
    for (const auto &one : changes)
        doc.line(indent + one.name + ": " + (one.before.empty() ? "nothing" : one.before) + " -> " +
                 (one.now.empty() ? "nothing" : one.now));
}

} // namespace

Document document_of(const std::vector<Entry> &history) {
    Document doc;
    for (const auto &e : history) {
        std::string text = std::to_string(e.seq) + "  " + e.at + "  " + e.who +
                           (stamp_of(e).signed_in ? " (signed in)  " : " (typed name)  ") + e.kind;
        if (e.exam) text += " exam " + std::to_string(*e.exam);
        if (e.number) text += " #" + std::to_string(*e.number);
        if (is_withdrawal(e)) text += moved_to(e) ? " moved away" : " withdrawn";
        if (e.supersedes)
            text += "  (instead of entry " + std::to_string(*e.supersedes) + ": " + e.reason + ")";
        doc.line(text);
        add_values(doc, history, e);
    }
    return doc;
}

} // namespace beadbook
