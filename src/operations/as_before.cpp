#include "operations/as_before.hpp"

#include "measure/text.hpp"
#include "operations/on_record.hpp"
#include "operations/people.hpp"
#include "records/codecs/facts.hpp"
#include "records/codecs/typed.hpp"
#include "technique/known_conditions.hpp"

#include <algorithm>

namespace beadbook {
namespace {

bool is_shipped(const std::string &practice) {
    const auto &names = shipped_practice_names();
    return std::find(names.begin(), names.end(), practice) != names.end();
}

Entry last_exam(Office &office, const ExamRecord &exam) {
    if (exam.examiner.empty()) throw lacking("examiner", "whose last exam? name the examiner");
    const auto out = office.ledger().last_exam_by(exam.examiner, std::string(name_of(exam.method)));
    if (!out)
        throw refused("no " + std::string(name_of(exam.method)) + " by " + shown(exam.examiner) +
                      " is on record, whose practice and conditions could be taken")
            .at("as-before");
    return *out;
}

} // namespace

std::set<std::string> answered_by_calibration(const std::vector<EquipmentUsed> &equipment) {
    std::set<std::string> out;
    for (const auto &one : equipment)
        if (const EquipmentKind *kind = equipment_kind(one.kind)) out.insert(kind->condition);
    return out;
}

std::shared_ptr<const Practice> practice_known(Office &office, const ExamRecord &exam) {
    const std::string &hash = exam.practice_hash;
    if (hash.empty()) return office.catalogue().practice(exam.practice);
    if (auto kept = office.catalogue().kept_practice(office.ledger(), hash)) return kept;
    if (!is_shipped(exam.practice)) return nullptr;
    auto shipped = office.catalogue().practice(exam.practice);
    return shipped->hash == hash ? shipped : nullptr;
}

AsBefore fill_as_before(Office &office, ExamRecord &exam, bool names_practice) {
    const auto person = person_named(office, exam.examiner);
    if (person) exam.examiner = person->name;
    const ExamRecord last = codec::exam_from(codec::parsed(last_exam(office, exam).body));
    AsBefore out;
    std::vector<std::string> taken, left;
    if (!names_practice && !last.practice.empty()) {
        // A shipped one as it is today: what it asks may have grown.
        out.practice = is_shipped(last.practice) ? office.catalogue().practice(last.practice)
                                                 : practice_known(office, last);
        if (!out.practice)
            throw refused("the text of practice " + last.practice + " is not in this record")
                .give("practice");
        taken.push_back("practice " + last.practice);
    }
    const auto take = [&](const char *name, std::string &to, const std::string &from) {
        if (!to.empty() || from.empty()) return;
        to = from;
        taken.push_back(std::string(name) + " " + from);
    };
    take("procedure", exam.procedure, last.procedure);
    if (!person && !exam.conditions.contains("level")) take("level", exam.level, last.level);
    const bool own_equipment = !exam.equipment.empty();
    const auto answered = answered_by_calibration(last.equipment);
    for (const auto &[name, value] : last.conditions) {
        const ConditionInfo *info = condition_info(name);
        if (exam.conditions.contains(name) || (person && is_of_examiner(name)) || answered.contains(name))
            continue;
        if (info && info->each_time) {
            left.push_back(name);
            continue;
        }
        exam.conditions.emplace(name, value);
        taken.push_back(name + " " + value);
    }
    for (const auto &one : last.equipment) {
        if (own_equipment) break;
        exam.equipment.push_back(EquipmentUsed{one.serial, "", {}, {}, false, {}});
        taken.push_back("equipment " + one.serial);
    }
    // Without its coupon: of many exams at once it is said once.
    out.notes.push_back("from the last " + std::string(name_of(exam.method)) + " by " + exam.examiner +
                        ", of " + print(last.date) + ": " + (taken.empty() ? "nothing" : listed(taken)) +
                        (left.empty() ? "" : "; to be read anew: " + listed(left)));
    return out;
}

} // namespace beadbook
