#include "operations/examining.hpp"

#include "facts/exam_standing.hpp"
#include "facts/person_name.hpp"
#include "facts/person_record.hpp"
#include "facts/reason.hpp"
#include "measure/text.hpp"
#include "operations/as_before.hpp"
#include "operations/entitled.hpp"
#include "operations/exam_means.hpp"
#include "operations/exam_mends.hpp"
#include "operations/finishing.hpp"
#include "operations/in_place.hpp"
#include "operations/on_record.hpp"
#include "operations/people.hpp"
#include "operations/said_beside.hpp"
#include "operations/turned_verdicts.hpp"
#include "operations/vouching.hpp"
#include "records/codecs/bodies.hpp"
#include "technique/known_conditions.hpp"
#include "technique/part_shown.hpp"

#include <algorithm>
#include <utility>

namespace beadbook {
namespace {

void check_method(const Practice &practice, Exam method) {
    if (practice.method != method)
        throw refused("practice " + practice.name + " is for " + std::string(name_of(practice.method)) +
                      ", not for " + std::string(name_of(method)))
            .at("practice");
}

/// A level that says nothing, or two that differ, are asked again while somebody still knows it.
void check_level(const ExamRecord &exam) {
    const auto condition = exam.conditions.find("level");
    if (exam.level.empty()) return;
    const std::string odd = no_word_of_level(exam.level);
    if (!odd.empty())
        throw refused(
            "level: '" + shown(exam.level) + "' is no level" +
            (odd == exam.level ? "" : ", for '" + shown(odd) + "' stands beside one") +
            "; expected I, II or III, or CWI or SCWI, alone or with its scheme (\"ISO 9712 level 2\")")
            .at("level");
    if (condition != exam.conditions.end() && !same_level(condition->second, exam.level))
        throw refused("level: the exam says " + shown(exam.level) + ", and its condition level says " +
                      shown(condition->second) + "; leave out the one that is not so")
            .at("level");
}

/// An exam is somebody's who can be asked.
void check_examiner(Office &office, const ExamRecord &exam) {
    if (!exam.examiner.empty() && !is_somebody(office, exam.examiner))
        throw refused("'" + shown(exam.examiner) +
                      "' names nobody; who examined? a person's name is expected, such as \"A. Field\"")
            .at("examiner");
    check_names_one(office, exam.examiner, "examiner");
}

/// Asked of a weld without a day alone; nothing while the coupon is being taken in.
std::optional<Day> registered_on(Office &office, const CouponRecord &coupon) {
    if (!coupon.get("welded").empty() || !office.book().knows_coupon(coupon.id)) return std::nullopt;
    return parse_day(std::string_view(office.book().history(coupon.id).front().at).substr(0, 10));
}

/// What nobody would believe of the exam at first sight; who examines his own weld is asked about as well.
std::vector<Unlikely> unlikely_of(Office &office, const CouponRecord &coupon, const ExamRecord &exam,
                                  const Practice *practice) {
    auto out =
        Plausibility::shipped().of(coupon, exam, office.outside().today(), registered_on(office, coupon));
    if (welded_by(office, coupon, exam.examiner))
        out.push_back({"examined-own-weld", exam.examiner +
                                                " welded this coupon, and nobody examines his own weld "
                                                "(common practice, no source), so the exam would not count"});
    else if (is_welder(office, exam.examiner, coupon.get("welder")))
        out.push_back({"looks-like-welder", "examiner '" + shown(exam.examiner) +
                                                "': " + why_not_entitled("looks-like-welder") +
                                                ", so the exam would not count"});
    else if (const std::string name = taken_for_welder(office, exam.examiner, coupon.get("welder"));
             !name.empty())
        out.push_back(
            {"examiner-like-welder", "examiner '" + shown(exam.examiner) + "' may be " + shown(name) +
                                         ", who welded this coupon, and nobody examines his own weld "
                                         "(common practice, no source); is it another person?"});
    for (const auto &[name, text] : exam.conditions)
        if (const ConditionInfo *known = condition_info(name))
            // How old a check may be, a practice says that speaks of it.
            for (const auto &why :
                 {unbelievable(*known, text), unbelievable_of_form(*known, text, coupon.get("form")),
                  speaks_of(practice, name) ? "" : unbelievably_old(*known, text, exam.date)})
                if (!why.empty()) out.push_back({"condition-beyond-belief", why});
    return out;
}

/// A finish that comes from elsewhere is of a day from the exam's to today, and somebody's.
void check_finished(Office &office, const ExamRecord &exam, Day today) {
    if (!exam.finished) return;
    check_names_one(office, exam.finished->by, "finished by");
    if (!exam.finished->on) return;
    const Day on = *exam.finished->on;
    if (on < exam.date || on > today)
        throw refused("finished on " + print(on) + ", and the exam is of " + print(exam.date) +
                      (on > today ? "; that day is to come" : "; it cannot end before it begins"))
            .at("finished on");
}

/// What nobody finished is open, whatever it is said to have found.
void open_if_nobody_finished(Office &office, ExamRecord &exam, std::vector<std::string> &notes) {
    const std::string name = "exam " + (exam.number > 0 ? std::to_string(exam.number) + " (" : "(") +
                             std::string(name_of(exam.method)) + ") is ";
    if (!exam.finished) {
        notes.push_back(name + "open: it does not say how many it found, or none; it counts once it is "
                               "finished with that");
        return;
    }
    const bool unnamed = std::exchange(exam.finished->unnamed, false);
    const std::string &by = exam.finished->by;
    if (is_somebody(office, by)) {
        if (unnamed)
            notes.push_back(name + "finished with " + std::to_string(exam.finished->found) + " found by " +
                            by + ", its examiner, because nothing says who finished it (finished by)");
        return;
    }
    notes.push_back(
        name +
        "open: " + (by.empty() ? "it names nobody who finished it" : "'" + shown(by) + "' finishes nothing"));
    exam.finished.reset();
}

/// Blanks are no reason, and none would make the exam complete.
std::string why_incomplete(const std::string &given) {
    std::string out = checked_reason(given, "incomplete");
    if (out.empty() && !given.empty()) throw lacking("incomplete", "why does the exam not count?");
    return out;
}

/// What a condition says of the exam by itself, and a practice that it goes by leaves to us.
void check_conditions(const CouponRecord &coupon, const ExamRecord &exam, const Practice *practice) {
    for (const auto &[name, text] : exam.conditions) {
        const ConditionInfo *known = condition_info(name);
        const std::string said = "condition " + shown(name) + "=" + shown(text) + ": ";
        if (!known && exam.incomplete.empty() && tells_a_part(name, text))
            throw refused(said +
                          "that tells how much was examined, which nothing holds it against; say with the "
                          "exam what was left out, so that it does not count, or leave the condition out "
                          "if all was examined")
                .give("incomplete");
        if (!known) continue;
        if (known->before_exam && read_condition_value(*known, text).day > exam.date)
            throw refused(said + "that is after the exam of " + print(exam.date) +
                          "; the last one before it is asked for")
                .at(condition_field + name);
        if (const std::string why = contradicted(*known, exam.conditions); !why.empty())
            throw refused(why + "; leave out the one that is not so").at(condition_field + name);
        if (const std::string why = undone(*known, exam.conditions);
            !why.empty() && exam.incomplete.empty() && !speaks_of(practice, name))
            throw refused(said + why +
                          " (common practice, no source); say with the exam why it does not count")
                .give("incomplete");
    }
    if (const std::string part = part_not_shown(exam.conditions, coupon.facts());
        !part.empty() && exam.incomplete.empty() && !speaks_of(practice, "exposures"))
        throw refused(
            "condition exposures=" + exam.conditions.at("exposures") + ": " + part +
            " (common practice, no source); say how many there were, or say with the exam why it does "
            "not count")
            .give("incomplete");
}

/// The request as a record, and the practice that it names.
ExamRecord record_of(const ExamRequest &request, const Outside &outside) {
    ExamRecord out;
    out.method = request.method;
    out.date = request.date.value_or(outside.today());
    out.examiner = checked_text(request.examiner, "examiner");
    out.level = checked_text(request.level, "level");
    out.procedure = checked_text(request.procedure, "procedure");
    out.note = checked_text(request.note, "note");
    if (!same_word(request.incomplete, "no")) out.incomplete = why_incomplete(request.incomplete);
    for (const auto &condition : request.conditions) add_condition(out, condition);
    for (const auto &serial : request.equipment) {
        out.equipment.push_back(EquipmentUsed{checked_text(serial, "equipment"), "", {}, {}, false, {}});
        if (out.equipment.back().serial.empty())
            throw lacking("equipment", "which equipment? its serial number");
    }
    return out;
}

std::shared_ptr<const Practice> practice_for(Catalogue &catalogue, const ExamRequest &request) {
    if (request.practice.empty()) return nullptr;
    const auto out = catalogue.practice(request.practice);
    check_method(*out, request.method);
    return out;
}

std::vector<std::string> slips(const ExamRecord &exam) {
    std::vector<std::string> names, out;
    for (const auto &c : condition_infos()) names.push_back(c.name);
    for (const auto &[name, value] : exam.conditions)
        if (const std::string near = nearest_word(name, names); !condition_info(name) && !near.empty())
            out.push_back("condition '" + shown(name) + "' is kept as a name of your own; did you mean '" +
                          near + "'?");
    return out;
}

/// What is taken, and was perhaps not meant.
std::vector<std::string> doubts_of_exam(const CouponState &coupon, const ExamRecord &exam, int replaces) {
    std::vector<std::string> out = slips(exam);
    const std::string method(name_of(exam.method));
    for (const auto &[name, value] : exam.conditions)
        if (const ConditionInfo *known = condition_info(name); known && !known->is_of(exam.method))
            out.push_back("condition '" + name + "' says nothing of " + method);
    const std::string_view magnetic = info(exam.method).needs_magnetic;
    const std::string said = coupon.record.get("magnetic");
    if (!magnetic.empty() && said == "no")
        out.push_back(method + " of a coupon that is not magnetic does not count: " + std::string(magnetic));
    if (!magnetic.empty() && said.empty())
        out.push_back(method + " counts once the coupon says that it is magnetic (magnetic: yes)");
    for (const auto *open : coupon.open_exams())
        if (replaces == 0 && open->method == exam.method)
            out.push_back("exam " + named({open}) + " of coupon " + coupon.record.id +
                          " is open too; this one is another exam beside it");
    return out;
}

/// An exam as it is asked for, filled in from the examiner's last one and from what is on record.
struct Asked {
    ExamRecord exam;
    std::shared_ptr<const Practice> practice;
    std::vector<Unlikely> against;
    std::vector<std::string> notes;
};

Asked asked_for(Office &office, const ExamRequest &request) {
    Asked out{record_of(request, office.outside()), practice_for(office.catalogue(), request), {}, {}};
    std::optional<ExamRecord> old;
    if (request.replaces > 0) {
        old = office.coupon(request.coupon).needed_exam(request.replaces);
        take_over_who(*old, request, out.exam);
    }
    if (request.as_before) {
        AsBefore before = fill_as_before(office, out.exam, !request.practice.empty());
        if (!out.practice) out.practice = std::move(before.practice);
        out.notes = std::move(before.notes);
    }
    if (old) {
        InPlace taken = take_over(office, *old, request, out.exam, out.practice != nullptr);
        if (!out.practice) out.practice = std::move(taken.practice);
        if (!taken.note.empty()) out.notes.push_back(std::move(taken.note));
    }
    OnRecord known = fill_from_record(office, out.exam, out.practice.get());
    out.against = std::move(known.against);
    out.notes.insert(out.notes.end(), known.notes.begin(), known.notes.end());
    return out;
}

/// What nobody would believe of the exam, and what speaks against its examiner.
std::vector<Unlikely> doubted(Office &office, const CouponRecord &coupon, const ExamRecord &exam,
                              const Practice *practice, std::vector<Unlikely> against) {
    auto out = unlikely_of(office, coupon, exam, practice);
    out.insert(out.end(), against.begin(), against.end());
    return out;
}

/// An exam that names another one than who signed in, and did not before.
bool is_begun_for_another(const Writing &writing, const CouponState &coupon, const ExamRecord &exam,
                          int replaces) {
    if (!is_anothers(exam, writing.stamp())) return false;
    return replaces == 0 || !same_person(coupon.needed_exam(replaces).examiner, exam.examiner);
}

} // namespace

std::vector<std::string> conditions_to_ask(Office &office, const ExamRequest &request) {
    const Asked asked = asked_for(office, request);
    if (!asked.practice) throw lacking("practice", "which conditions are asked for hangs on the practice");
    return conditions_wanted(*asked.practice, asked.exam.conditions_told(), asked.exam.date,
                             office.coupon(request.coupon).record.facts());
}

Done<ExamRecord> record_exam(Writing &writing, const ExamRequest &request) {
    Asked asked = asked_for(writing.office(), request);
    ExamRecord &exam = asked.exam;
    const CouponState &state = writing.coupon(request.coupon);
    check_level(exam);
    check_examiner(writing.office(), exam);
    check_day(exam, state.record, writing.outside().today());
    check_conditions(state.record, exam, asked.practice.get());
    hold_words_against_finds(state, exam, request.replaces, request.found, request.why, asked.against);
    if (is_begun_for_another(writing, state, exam, request.replaces))
        asked.against.push_back({"examined-by-another", "examiner '" + shown(exam.examiner) + "', and " +
                                                            writing.stamp().who +
                                                            " is signed in: what it found is then said by "
                                                            "that examiner, or by a keeper for a reason"});
    exam.sure = set_aside_of_exam(
        writing.office(), exam,
        doubted(writing.office(), state.record, exam, asked.practice.get(), std::move(asked.against)),
        request.sure);
    if (request.replaces > 0) check_may_judge(writing, state, state.needed_exam(request.replaces));
    if (request.found) {
        check_may_finish(writing, exam, request.why);
        if (*request.found > 0 && request.replaces == 0 && !exam.examiner.empty())
            throw refused("an exam begins without finds, so it cannot be finished with " +
                          std::to_string(*request.found) +
                          " at once; record it open, log what it found, and finish it then")
                .at("found");
        check_finish(exam, *request.found, state.finds_of(request.replaces));
        exam.finished = ExamFinished{*request.found, writing.outside().today(), writing.stamp().who,
                                     checked_reason(request.why, "reason")};
        check_may_judge(writing, state, exam);
    }
    if (const auto &practice = asked.practice) {
        exam.practice = practice->name;
        exam.practice_hash = practice->hash;
        writing.ledger().keep_criteria(practice->hash, practice->name, practice->text);
    }
    std::vector<std::string> notes = std::move(asked.notes);
    for (auto &doubt : doubts_of_exam(state, exam, request.replaces)) notes.push_back(std::move(doubt));
    if (request.replaces > 0) {
        const ExamRecord old = state.needed_exam(request.replaces);
        exam.number = old.number;
        if (old.finished && !exam.finished)
            notes.push_back("exam " + named({&old}) + " was finished with " +
                            std::to_string(old.finished->found) +
                            " found, and this entry in its place does not say how many: it is open again, "
                            "and counts once it is finished");
        Entry e = codec::entry_of(request.coupon, exam);
        e.supersedes = state.exam_seq.at(exam.number);
        e.reason = needed_reason(request.why);
        const auto before = as_it_stands(writing, request.coupon);
        writing.add(std::move(e));
        if (request.found_as_before && !request.sure)
            check_counted_before(old, writing.coupon(request.coupon).needed_exam(exam.number));
        note_turned_verdicts("this entry", before, as_it_stands(writing, request.coupon), notes);
    } else {
        exam.number = state.last_exam + 1;
        writing.add(codec::entry_of(request.coupon, exam));
    }
    return {writing.coupon(request.coupon).needed_exam(exam.number), std::move(notes)};
}

ReadyExam ready_exam(Office &office, const CouponRecord &coupon, ExamRecord exam, bool sure) {
    check_level(exam);
    check_examiner(office, exam);
    const Day today = office.outside().today();
    check_not_to_come(exam, today);
    exam.incomplete = why_incomplete(exam.incomplete);
    check_finished(office, exam, today);
    if (exam.finished)
        check_is_another(office, exam.finished->by, coupon.get("welder"), "says what an exam found",
                         "finished by");
    const auto practice = exam.practice.empty() ? nullptr : practice_known(office, exam);
    OnRecord known = fill_from_record(office, exam, practice.get());
    // The weld's day may have been corrected since where it comes from: it says so, and does not count.
    if (auto one = before_its_weld(exam, coupon)) known.against.push_back(std::move(*one));
    if (exam.finished) hold_words_against_none(exam, exam.finished->found, known.against);
    std::vector<std::string> before = std::exchange(exam.sure, {});
    if (is_meant(before, welded_it)) before.emplace_back("examined-own-weld"); // nobody asks of it again
    exam.sure =
        set_aside_by(doubted(office, coupon, exam, practice.get(), std::move(known.against)), sure, before);
    // Of an examiner who is not on record here, what another record said stays; who welded it is told by the
    // welders of that record alone.
    for (auto &id : before)
        if ((id == welded_it || (!known.knows_examiner && !why_not_entitled(id).empty())) &&
            !is_meant(exam.sure, id))
            exam.sure.push_back(std::move(id));
    const auto conditions = std::exchange(exam.conditions, {});
    for (const auto &[name, value] : conditions) add_condition(exam, name + "=" + value);
    check_conditions(coupon, exam, practice.get());
    ReadyExam out{std::move(exam), nullptr, std::move(known.notes)};
    if (out.record.practice.empty()) {
        if (!out.record.practice_hash.empty())
            throw refused("a practice hash without the practice's name").at("practice");
    } else if ((out.practice = practice_known(office, out.record))) {
        check_method(*out.practice, out.record.method);
        out.record.practice_hash = out.practice->hash;
    } else {
        out.notes.push_back("the text of practice " + out.record.practice +
                            " is not in this record, so whether the exam was valid cannot be said");
    }
    for (auto &slip : slips(out.record)) out.notes.push_back(std::move(slip));
    open_if_nobody_finished(office, out.record, out.notes);
    return out;
}

void withdraw_exam(Writing &writing, const std::string &coupon, int number, const std::string &why) {
    const CouponState &state = writing.coupon(coupon);
    check_may_judge(writing, state, state.needed_exam(number));
    for (const auto &i : state.indications)
        if (i.exam == number)
            throw refused("exam " + std::to_string(number) + " found indication #" +
                          std::to_string(i.number) + "; withdraw its indications first");
    Entry e = withdrawal_of(state.exam_seq.at(number), "exam", coupon, number, why);
    e.exam = number;
    writing.add(std::move(e));
}

} // namespace beadbook
