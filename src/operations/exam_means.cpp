#include "operations/exam_means.hpp"

#include "facts/exam_standing.hpp"
#include "facts/person_name.hpp"
#include "facts/plausibility.hpp"
#include "measure/text.hpp"
#include "operations/entitled.hpp"
#include "operations/equipment.hpp"
#include "operations/people.hpp"
#include "records/codecs/people.hpp"
#include "records/codecs/typed.hpp"
#include "records/fold.hpp"
#include "technique/known_conditions.hpp"
#include "technique/part_shown.hpp"

#include <algorithm>

namespace beadbook {
namespace {

constexpr std::string_view from_practice = " (common practice, no source)";

Objection objection_of_metal(const CouponRecord &coupon, const ExamRecord &exam) {
    const std::string_view why = info(exam.method).needs_magnetic;
    const std::string said = coupon.get("magnetic");
    if (why.empty() || said == "yes") return {};
    if (said == "no") return {std::string(why) + std::string(from_practice), {}};
    return {"the coupon does not say whether its metal is magnetic; give 'magnetic', yes or no" +
                std::string(from_practice),
            lack_of(Fact::magnetic)};
}

/// The examiner as on record. One who was taken for another than the one on record, for sure, is a stranger.
std::optional<PersonRecord> examiner_on_record(Office &office, const ExamRecord &exam,
                                               std::optional<std::int64_t> before) {
    const auto people = office.book().people();
    std::string name = word_among(exam.examiner, people);
    if (name.empty() && !is_meant(exam.sure, another_examiner))
        for (const auto &one : people)
            if (same_person(one, exam.examiner)) name = one;
    return name.empty() ? std::nullopt : person_before(office, name, before);
}

/// What the record of people says of the examiner, as an id of why_not_entitled.
std::string objection_of_people(Office &office, const ExamRecord &exam, const Practice *practice,
                                std::optional<std::int64_t> before) {
    const auto person = examiner_on_record(office, exam, before);
    if (!person) return "";
    const Entitled entitled = entitled_by_record(office, *person, exam.method, exam.date, before);
    if (!entitled.objection.empty()) return entitled.objection;
    return vision_over(*person, exam.date, practice) ? "vision-over" : "";
}

std::shared_ptr<const Practice> practice_of(Office &office, const ExamRecord &exam) {
    if (exam.practice_hash.empty()) return nullptr;
    return office.catalogue().kept_practice(office.ledger(), exam.practice_hash);
}

std::string objection_of_equipment(const ExamRecord &exam) {
    for (const auto &used : exam.equipment)
        if (!may_be_used(used, exam.date)) return caution_of(used, exam.date);
    return "";
}

/// What a condition says by itself, whatever a practice asks of it.
std::string objection_of(const ConditionInfo &info, const ConditionValue &value, const ExamRecord &exam,
                         const Practice *practice) {
    const auto &some = info.needs_some;
    if (info.kind == ConditionInfo::Kind::amount)
        return value.amount == Exact(0) && std::find(some.begin(), some.end(), exam.method) != some.end()
                   ? "of nothing there is no " + std::string(name_of(exam.method))
                   : "";
    if (info.name == "level" && !may_judge_alone(exam.method, value.text).value_or(false))
        return "that level does not judge alone";
    if ((info.name == "certificate" || info.name == "meter due") && value.day < exam.date)
        return "it was over on the day of the exam";
    if (info.name == "vision" && !speaks_of(practice, "vision") &&
        value.day + parse_period("1 year") < exam.date)
        return "the test was more than a year before the exam";
    return "";
}

std::string objection_of_conditions(const ExamRecord &exam, const Practice *practice) {
    for (const auto &[name, text] : exam.conditions) {
        const ConditionInfo *info = condition_info(name);
        if (!info) continue;
        try {
            const std::string why = objection_of(*info, read_condition_value(*info, text), exam, practice);
            if (!why.empty())
                return "condition " + name + "=" + text + ": " + why + std::string(from_practice);
        } catch (const InputError &) {
            continue; // written before the words were fixed
        }
    }
    return "";
}

/// Why the examiner is not entitled by what was said of him after the exam was entered: a certificate that
/// had ended by then or was taken off, a lower level.
std::string no_longer_entitled(Office &office, const ExamRecord &exam, std::int64_t before) {
    const auto person = person_before(office, exam.examiner, {});
    if (!person) return "";
    auto history = office.book().person_history(person->name);
    leave_out_since(history, before);
    std::string out;
    for (auto e = history.rbegin(); e != history.rend(); ++e) {
        const PersonRecord then = codec::person_from(person->name, codec::parsed(e->body));
        const Entitlement entitled = entitlement(then, exam.method, exam.date);
        if (out.empty() && entitled.objection == "certificate-later") continue;
        if (entitled.objection != "certificate-none")
            return why_not_entitled(out.empty() ? entitled.objection : out);
        out = entitled.objection;
    }
    return ""; // somebody whose certificate for the method was never on record has lost none
}

/// The same of a word by which nobody can have seen all of the weld; it is asked about when an exam is
/// entered, which an older one never was, nor one of a coupon that was described otherwise since.
std::string not_seen_by_conditions(const CouponRecord &coupon, const ExamRecord &exam,
                                   const Practice *practice) {
    if (!exam.incomplete.empty()) return "";
    for (const auto &[name, text] : exam.conditions)
        if (const ConditionInfo *info = condition_info(name); info && !speaks_of(practice, name))
            if (const std::string why = undone(*info, exam.conditions); !why.empty())
                return "condition " + name + "=" + text + ": " + why + std::string(from_practice);
    try {
        if (const std::string part = part_not_shown(exam.conditions, coupon.facts());
            !part.empty() && !speaks_of(practice, "exposures"))
            return "condition exposures=" + exam.conditions.at("exposures") + ": " + part +
                   std::string(from_practice);
    } catch (const InputError &) {
        return ""; // written before the words were fixed
    }
    return "";
}

} // namespace

std::string not_seen(Office &office, const CouponRecord &coupon, const ExamRecord &exam) {
    return not_seen_by_conditions(coupon, exam, practice_of(office, exam).get());
}

std::vector<std::string> names_behind(Office &office, const std::string &text,
                                      std::optional<std::int64_t> before) {
    std::vector<std::string> out{text};
    for (const auto part : names_in(text)) {
        const std::string mark(part);
        if (mark.find(' ') != std::string::npos || !office.book().knows_welder(mark)) continue;
        auto history = office.book().welder_history(mark);
        leave_out_since(history, before);
        for (auto &name : names_ever(mark, history)) out.push_back(std::move(name));
    }
    return out;
}

bool welded_by(Office &office, const CouponRecord &coupon, const std::string &person,
               std::optional<std::int64_t> before) {
    const std::string welder = coupon.get("welder");
    if (person.empty() || welder.empty()) return false;
    const auto examiners = names_behind(office, person, before);
    auto welders = names_behind(office, welder, before);
    for (const auto &fact : coupon.before) // where the coupon comes from, its welder was called so
        if (fact.kind == CarriedFact::Kind::welder) welders.push_back(fact.by);
    return std::any_of(examiners.begin(), examiners.end(), [&](const std::string &one) {
        return std::any_of(welders.begin(), welders.end(),
                           [&](const std::string &other) { return same_person(one, other); });
    });
}

std::string vision_taken_off(Office &office, const ExamRecord &exam, std::optional<std::int64_t> before) {
    const auto named = exam.conditions.find("vision");
    const auto person =
        named == exam.conditions.end() ? std::nullopt : examiner_on_record(office, exam, before);
    if (!person) return "";
    const auto holds = [&](const PersonRecord &one) {
        return std::any_of(one.vision.begin(), one.vision.end(),
                           [&](const VisionTest &test) { return print(test.on) == named->second; });
    };
    auto history = office.book().person_history(person->name);
    leave_out_since(history, before);
    const bool once = std::any_of(history.begin(), history.end(), [&](const Entry &entry) {
        return holds(codec::person_from(person->name, codec::parsed(entry.body)));
    });
    return once && !holds(*person) ? "the vision test of " + named->second +
                                         " that it names was taken off the record of " + person->name
                                   : "";
}

std::string finished_by_welder(Office &office, const CouponRecord &coupon, const ExamRecord &exam,
                               std::optional<std::int64_t> before) {
    return exam.finished && welded_by(office, coupon, exam.finished->by, before)
               ? "who said what it found welded this coupon" + std::string(from_practice)
               : "";
}

Objection objection_to(Office &office, const CouponRecord &coupon, const ExamRecord &exam,
                       std::optional<std::int64_t> before) {
    if (auto metal = objection_of_metal(coupon, exam); !metal.why.empty()) return metal;
    if (exam.finished && !is_somebody(office, exam.finished->by))
        return {"nobody who can be asked said that it is finished", {}};
    if (welded_by(office, coupon, exam.examiner, before))
        return {"its examiner welded this coupon" + std::string(from_practice), {}};
    const auto practice = practice_of(office, exam);
    std::string why = why_not_entitled(objection_of_people(office, exam, practice.get(), before));
    if (why.empty()) why = objection_of_equipment(exam);
    if (why.empty()) why = objection_of_conditions(exam, practice.get());
    if (why.empty()) why = vision_taken_off(office, exam, before);
    if (why.empty()) why = not_seen_by_conditions(coupon, exam, practice.get());
    if (why.empty()) why = finished_by_welder(office, coupon, exam, before);
    return {std::move(why), {}};
}

std::string against_examiner(Office &office, const CouponRecord &coupon, const ExamRecord &exam) {
    if (exam.open.empty()) return ""; // it would say so
    if (welded_by(office, coupon, exam.examiner)) return std::string(welded_it);
    return objection_of_people(office, exam, practice_of(office, exam).get(), {});
}

std::string against_judging(Office &office, const ExamRecord &exam, const std::string &who, Day on) {
    if (same_person(exam.examiner, who)) return ""; // what speaks against the examiner speaks for itself
    const auto person = person_named(office, who);
    if (!person || person->certificates.empty()) return "";
    ExamRecord by_him = exam;
    by_him.examiner = person->name;
    by_him.date = on;
    by_him.sure.clear();
    return why_not_entitled(objection_of_people(office, by_him, practice_of(office, exam).get(), {}));
}

void read_equipment_anew(Office &office, ExamRecord &exam, std::optional<std::int64_t> before) {
    for (auto &one : exam.equipment) {
        const auto known = equipment_of(office, one.serial);
        if (!known) continue;
        auto history = office.book().equipment_history(known->serial);
        leave_out_since(history, before);
        if (!history.empty()) one = used_on(fold_equipment(known->serial, history).record, exam.date);
    }
}

std::string objection_of_ninth(Office &office, const ExamRecord &exam, std::int64_t before) {
    for (const auto &used : exam.equipment)
        if (used.until && *used.until < exam.date) return caution_of(used, exam.date);
    return no_longer_entitled(office, exam, before);
}

} // namespace beadbook
