#include "web/exam_fields.hpp"

#include "measure/text.hpp"
#include "operations/on_record.hpp"
#include "operations/people.hpp"
#include "operations/reading.hpp"

#include <algorithm>

namespace beadbook {
namespace {

std::vector<std::string> practices_for(Catalogue &catalogue, Exam method) {
    std::vector<std::string> out;
    for (const auto &practice : all_practices(catalogue))
        if (practice->method == method) out.push_back(practice->name);
    return out;
}

std::string serials(const ExamRecord &exam) {
    std::vector<std::string> out;
    for (const auto &one : exam.equipment) out.push_back(one.serial);
    return joined(out, ", ");
}

void add_condition(Form &form, const ConditionInfo &condition, const ExamRecord &known) {
    const auto value = known.conditions.find(condition.name);
    Control out{condition_field + condition.name,
                condition.name + (condition.each_time ? ", read each time" : ""),
                value == known.conditions.end() ? "" : value->second,
                Control::Kind::text,
                condition.help,
                condition.words};
    if (condition.kind == ConditionInfo::Kind::day) out.kind = Control::Kind::day;
    form.add(out);
}

/// What was typed is never hidden.
bool tells_conditions(const Visit &visit) {
    const auto pairs = visit.request.form.pairs();
    return std::any_of(pairs.begin(), pairs.end(), [](const auto &one) {
        return one.first.starts_with(condition_field) && !trimmed(one.second).empty();
    });
}

/// A field that was emptied is not taken for who is signed in, or for today, unsaid.
void check_not_emptied(const Visit &visit, const std::string &field, const std::string &wanted) {
    if (visit.request.form.has(field) && visit.field(field).empty()) throw refused(wanted).at(field);
}

} // namespace

void add_exam_fields(Form &form, Visit &visit, const ExamRecord &known) {
    const bool on_record = person_named(visit.office(), known.examiner).has_value();
    form.put("<div class=\"fields\">")
        .add(
            {"examiner", "Examiner", known.examiner, Control::Kind::text, "", visit.office().book().people()})
        .add({"date", "Day", print(known.date), Control::Kind::day});
    if (!on_record) form.add({"level", "Level", known.level, Control::Kind::text, "I, II, III or CWI"});
    form.add({"practice", "Practice", known.practice, Control::Kind::text,
              "that the conditions are held against", practices_for(visit.catalogue(), known.method)})
        .add({"procedure", "Procedure", known.procedure})
        .add({"equipment", "Equipment", serials(known), Control::Kind::text, "serial numbers, with commas",
              visit.office().book().all_equipment()});
    form.put("</div>\n<details" +
             std::string(known.practice.empty() && known.conditions.empty() && !tells_conditions(visit)
                             ? ""
                             : " open") +
             "><summary>Conditions</summary><div class=\"fields\">");
    for (const auto &condition : condition_infos()) {
        // The level stands above; what the record tells of an examiner is not asked again.
        const bool told = condition.name == "level" || (on_record && is_of_examiner(condition.name));
        if (condition.is_of(known.method) && !told) add_condition(form, condition, known);
    }
    form.put("</div>\n")
        .add({"incomplete", "Why it does not count, if it does not", known.incomplete})
        .add({"note", "Note", known.note})
        .put("</details>\n");
}

ExamRequest exam_request_in(const Visit &visit, const std::string &coupon, Exam method) {
    ExamRequest out;
    out.coupon = coupon;
    out.method = method;
    check_not_emptied(visit, "examiner", "who examined it? the field is empty; expected a name");
    check_not_emptied(visit, "date", "on which day was it examined? the field is empty; expected a day");
    if (const std::string day = visit.field("date"); !day.empty()) out.date = parse_day(day);
    out.examiner = visit.field("examiner");
    if (out.examiner.empty()) out.examiner = visit.person();
    out.level = visit.field("level");
    out.practice = visit.field("practice");
    out.procedure = visit.field("procedure");
    out.incomplete = visit.field("incomplete");
    out.note = visit.field("note");
    std::string serials = visit.field("equipment");
    std::replace(serials.begin(), serials.end(), ',', '\n');
    while (!serials.empty()) {
        const std::size_t end = std::min(serials.find('\n'), serials.size());
        if (const auto one = trimmed(std::string_view(serials).substr(0, end)); !one.empty())
            out.equipment.emplace_back(one);
        serials.erase(0, end + 1);
    }
    for (const auto &[name, value] : visit.request.form.pairs())
        if (name.starts_with(condition_field) && !trimmed(value).empty())
            out.conditions.push_back(name.substr(condition_field.size()) + "=" + std::string(trimmed(value)));
    out.as_before = visit.ticked("as-before");
    out.sure = visit.meant("sure");
    out.why = visit.field("why");
    return out;
}

} // namespace beadbook
