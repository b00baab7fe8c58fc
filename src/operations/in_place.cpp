#include "operations/in_place.hpp"

#include "facts/log_line_hints.hpp"
#include "facts/plausibility.hpp"
#include "measure/text.hpp"
#include "operations/as_before.hpp"
#include "operations/on_record.hpp"
#include "operations/people.hpp"
#include "technique/known_conditions.hpp"

namespace beadbook {
namespace {

/// What a page shows of an exam by this method.
bool is_asked_for(const std::string &condition, Exam method) {
    const ConditionInfo *known = condition_info(condition);
    return known && known->is_of(method);
}

} // namespace

void take_over_who(const ExamRecord &old, const ExamRequest &request, ExamRecord &exam) {
    if (request.says_all) return;
    if (!request.date) exam.date = old.date;
    if (exam.examiner.empty()) exam.examiner = old.examiner;
}

InPlace take_over(Office &office, const ExamRecord &old, const ExamRequest &request, ExamRecord &exam,
                  bool has_practice) {
    InPlace out;
    std::vector<std::string> taken, left;
    const bool all = request.says_all, same_method = exam.method == old.method;
    const auto person = person_named(office, exam.examiner);
    const bool same_person =
        same_word(exam.examiner, old.examiner) || (person && person->name == old.examiner);
    const auto take = [&](const char *name, std::string &to, const std::string &from, bool may = true) {
        if (all || !to.empty() || from.empty()) return;
        if (may) to = from;
        (may ? taken : left).push_back(std::string(name) + " " + shown(from));
    };
    if (!all && !request.date) taken.push_back("day " + print(old.date));
    if (!all && request.examiner.empty() && !old.examiner.empty())
        taken.push_back("examiner " + old.examiner);
    if (!person && !exam.conditions.contains("level"))
        take("level", exam.level, old.level, same_person && same_method);
    take("procedure", exam.procedure, old.procedure, same_method);
    take("note", exam.note, old.note);
    if (request.incomplete.empty()) take("incomplete:", exam.incomplete, old.incomplete);
    if (!all && !has_practice && !old.practice.empty()) {
        if (same_method) {
            exam.practice = old.practice;
            exam.practice_hash = old.practice_hash;
            out.practice = practice_known(office, old);
        }
        (same_method ? taken : left).push_back("practice " + old.practice);
    }
    const bool other_equipment = !exam.equipment.empty();
    const auto answered = answered_by_calibration(old.equipment);
    for (const auto &[name, value] : old.conditions) {
        // What the records of the examiner and of the equipment tell is asked of them anew.
        if (exam.conditions.contains(name) || (person && is_of_examiner(name)) ||
            (answered.contains(name) && !other_equipment) || (all && is_asked_for(name, exam.method)))
            continue;
        const bool may = same_method && !answered.contains(name) && (same_person || !is_of_examiner(name));
        if (may) exam.conditions.emplace(name, value);
        (may ? taken : left).push_back(name + " " + value);
    }
    for (const auto &one : old.equipment) {
        if (all || other_equipment) break;
        if (same_method) exam.equipment.push_back(EquipmentUsed{one.serial, "", {}, {}, false, {}});
        (same_method ? taken : left).push_back("equipment " + one.serial);
    }
    const std::string from = "from exam " + std::to_string(old.number) + " (" +
                             std::string(name_of(old.method)) + "), which it replaces";
    if (!taken.empty()) out.note = "taken over " + from + ": " + listed(taken);
    if (!left.empty())
        out.note +=
            (out.note.empty() ? "not taken over " + from + ": " : "; not taken over: ") + listed(left);
    return out;
}

void check_counted_before(const ExamRecord &old, const ExamRecord &now) {
    if (!old.finished || !now.finished || old.done().counts || !now.done().counts) return;
    throw Unsure("is that meant? " + title_of(old) + " did not count: " + old.done().why_not +
                 "; as it is said now it counts, finished with " +
                 (now.finished->found == 0 ? "none" : std::to_string(now.finished->found)) +
                 " found; is that what it found?");
}

} // namespace beadbook
