#include "operations/on_record.hpp"

#include "facts/exam_standing.hpp"
#include "facts/name_likeness.hpp"
#include "facts/person_name.hpp"
#include "measure/text.hpp"
#include "measure/words_apart.hpp"
#include "operations/entitled.hpp"
#include "operations/equipment.hpp"
#include "operations/people.hpp"
#include "technique/known_conditions.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// Fills gaps of one exam from one subject of the record, and remembers what it filled in.
class Filler {
public:
    Filler(ExamRecord &exam, std::string subject) : exam_(exam), subject_(std::move(subject)) {}

    void condition(const std::string &name, const std::string &on_record) {
        const auto given = exam_.conditions.find(name);
        if (given == exam_.conditions.end()) {
            exam_.conditions.emplace(name, on_record);
            filled_.push_back(name + " " + told_value(name, on_record));
        } else if (!agree(name, given->second, on_record)) {
            refuse(name, given->second, on_record, condition_field + name);
        }
    }

    void level(const std::string &on_record) {
        if (const auto given = exam_.conditions.find("level");
            given != exam_.conditions.end() && !same_level(given->second, on_record))
            refuse("level", given->second, on_record, condition_field + "level");
        if (exam_.level.empty()) {
            exam_.level = on_record;
            filled_.push_back("level " + on_record);
        } else if (!same_level(exam_.level, on_record)) {
            refuse("level", exam_.level, on_record, "level");
        }
    }

    void tell(std::vector<std::string> &notes) const {
        if (!filled_.empty()) notes.push_back("from the record of " + subject_ + ": " + listed(filled_));
    }

private:
    static bool agree(const std::string &name, const std::string &a, const std::string &b) {
        const ConditionInfo &info = *condition_info(name);
        const ConditionValue one = read_condition_value(info, a), other = read_condition_value(info, b);
        return info.kind == ConditionInfo::Kind::day ? one.day == other.day : one.text == other.text;
    }
    [[noreturn]] void refuse(const std::string &name, const std::string &given, const std::string &on_record,
                             const std::string &field) const {
        throw refused(name + ": the exam says " + shown(given) + ", the record of " + subject_ + " says " +
                      on_record + "; leave it out, or mend the record")
            .at(field);
    }

    ExamRecord &exam_;
    std::string subject_;
    std::vector<std::string> filled_;
};

void fill_vision(const PersonRecord &person, const ExamRecord &exam, const Practice *practice, Filler &filler,
                 OnRecord &out) {
    const VisionTest *test = person.vision_on(exam.date);
    if (!test) {
        if (!exam.conditions.contains("vision"))
            out.notes.push_back("no vision test of " + person.name + " on or before " + print(exam.date) +
                                " is on record");
        return;
    }
    filler.condition("vision", print(test->on));
    if (!test->letters.empty()) filler.condition("vision test", test->letters);
    if (vision_over(person, exam.date, practice))
        out.against.push_back({"vision-over", "the last vision test of " + person.name + " on record, of " +
                                                  print(test->on) +
                                                  ", was more than a year before the exam (common practice, "
                                                  "no source), so the exam would not count"});
}

void fill_examiner(Office &office, const PersonRecord &person, ExamRecord &exam, const Practice *practice,
                   OnRecord &out) {
    exam.examiner = person.name;
    out.knows_examiner = true;
    const Entitled entitled = entitled_by_record(office, person, exam.method, exam.date);
    Filler filler(exam, person.name);
    if (const auto &certificate = entitled.certificate) {
        filler.level(certificate->level);
        if (certificate->until) filler.condition("certificate", print(*certificate->until));
    }
    fill_vision(person, exam, practice, filler, out);
    filler.tell(out.notes);
    if (!entitled.objection.empty())
        out.against.push_back(
            {entitled.objection,
             person.name + ", " + std::string(name_of(exam.method)) + " on " + print(exam.date) + ": " +
                 (entitled.certificate ? "on record is " + print(*entitled.certificate) + "; " : "") +
                 why_not_entitled(entitled.objection) + ", so the exam would not count"});
}

/// The condition that calibrations answer, of several pieces the one that is soonest over.
void fill_calibrations(ExamRecord &exam, std::vector<std::string> &notes) {
    std::map<std::string, std::pair<Day, std::string>> known;
    for (const auto &one : exam.equipment) {
        const EquipmentKind *kind = equipment_kind(one.kind);
        if (!kind || kind->condition.empty()) continue;
        const auto &methods = condition_info(kind->condition)->methods;
        if (std::find(methods.begin(), methods.end(), exam.method) == methods.end()) continue;
        const auto day = kind->condition_is_due ? one.until : one.calibrated;
        if (!day) continue;
        const std::pair<Day, std::string> found{*day, kind->name + " " + one.serial};
        const auto [at, fresh] = known.emplace(kind->condition, found);
        if (!fresh && found.first < at->second.first) at->second = found;
    }
    for (const auto &[condition, found] : known) {
        Filler filler(exam, found.second);
        filler.condition(condition, print(found.first));
        filler.tell(notes);
    }
}

/// Several serials in one word are no piece: what is on record of each would be asked of none.
void check_one_piece(Office &office, const std::string &serial) {
    if (equipment_of(office, serial)) return;
    auto pieces = words_apart(
        serial, [](char c) { return std::string_view("+/;,&|").find(c) != std::string_view::npos; });
    std::erase(pieces, "and");
    const auto known = [&](const std::string &one) { return equipment_of(office, one).has_value(); };
    if (pieces.size() > 1 && std::all_of(pieces.begin(), pieces.end(), known))
        throw refused("equipment '" + shown(serial) + "' is not on record, and " + listed(pieces) +
                      " are; give each by itself")
            .at("equipment");
}

void fill_equipment(Office &office, ExamRecord &exam, std::vector<std::string> &notes) {
    std::vector<EquipmentUsed> all;
    for (auto &one : exam.equipment) {
        check_one_piece(office, one.serial);
        if (const auto known = equipment_of(office, one.serial)) one = used_on(*known, exam.date);
        const bool again = std::any_of(all.begin(), all.end(),
                                       [&](const EquipmentUsed &x) { return x.serial == one.serial; });
        if (!again) all.push_back(std::move(one));
    }
    exam.equipment = std::move(all);
    fill_calibrations(exam, notes);
    for (const auto &caution : exam.cautions()) notes.push_back("caution: " + caution);
}

/// Somebody on record who is written nearly so: in another order, say, or with a slip.
std::string nearest_person(Office &office, const std::string &examiner) {
    const std::string like = person_like(office, examiner);
    return like.empty() ? nearest_word(examiner, office.book().people()) : like;
}

/// Somebody who examined before and is written nearly so; empty for who did so under this very name.
std::string nearest_examiner(Office &office, const std::string &examiner) {
    if (!names_somebody(examiner) || office.ledger().has_examined(examiner)) return "";
    for (const auto &one : office.ledger().examiners())
        if (may_be_taken_for(one, examiner)) return one;
    return "";
}

} // namespace

OnRecord fill_from_record(Office &office, ExamRecord &exam, const Practice *practice) {
    OnRecord out;
    if (const auto person = person_named(office, exam.examiner))
        fill_examiner(office, *person, exam, practice, out);
    else if (const std::string near = nearest_person(office, exam.examiner); !near.empty())
        out.against.push_back(
            {std::string(another_examiner),
             "examiner '" + shown(exam.examiner) + "' is not on record; did you mean '" + near + "'?"});
    else if (const std::string before = nearest_examiner(office, exam.examiner); !before.empty())
        out.against.push_back({std::string(another_examiner), "examiner '" + shown(exam.examiner) +
                                                                  "' has examined nothing yet, and '" +
                                                                  before + "' has; is it another person?"});
    fill_equipment(office, exam, out.notes);
    for (const auto &one : exam.equipment)
        if (const std::string near = equipment_like(office, one.serial); !near.empty())
            out.against.push_back(
                {"another-equipment",
                 "equipment '" + shown(one.serial) + "' is not on record; did you mean '" + near + "'?"});
    return out;
}

bool level_on_record(Office &office, const ExamRecord &exam) {
    const auto person = person_named(office, exam.examiner);
    if (!person) return false;
    const Entitled entitled = entitled_by_record(office, *person, exam.method, exam.date);
    return entitled.objection.empty() &&
           rank_of_level(entitled.certificate->level) >= rank_of_level(exam.level);
}

std::string vision_entered_later(Office &office, const ExamRecord &exam) {
    if (exam.conditions.contains("vision")) return "";
    const auto person = person_named(office, exam.examiner);
    const VisionTest *test = person ? person->vision_on(exam.date) : nullptr;
    return test ? print(test->on) : "";
}

bool is_of_examiner(const std::string &condition) {
    return condition == "level" || condition == "certificate" || condition == "vision" ||
           condition == "vision test";
}

} // namespace beadbook
