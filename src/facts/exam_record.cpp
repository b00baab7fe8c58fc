#include "facts/exam_record.hpp"

#include "facts/told_find.hpp"
#include "measure/day.hpp"
#include "measure/parse.hpp"
#include "measure/text.hpp"
#include "technique/known_conditions.hpp"

namespace beadbook {
namespace {

/// A condition's name as it is known, capitals aside; one of people's own as it is.
std::string known_name(const std::string &name) {
    for (const auto &one : condition_infos())
        if (same_word(one.name, name)) return one.name;
    return name;
}

/// A name of people's own with a known one in it (dwell time, penetrant dwell) takes no nought that would be
/// the end of an exam under the known one.
void refuse_nought_of_own(const std::string &name, const std::string &value) {
    for (const auto &one : condition_infos()) {
        const bool holds =
            (" " + lowered(name) + " ").find(" " + lowered(one.name) + " ") != std::string::npos;
        if (!holds || (one.needs_some.empty() && one.never_nought.empty())) continue;
        try {
            const ConditionValue read = read_condition_value(one, value);
            if (one.kind != ConditionInfo::Kind::amount || read.amount != Exact(0)) continue;
        } catch (const InputError &) {
            continue; // of another kind
        }
        throw DataError("condition " + name + "=" + value + ": nobody examines with none; is it " + one.name +
                        "? what was not measured is left out (common practice, no source)");
    }
}

/// What is measured from nothing up cannot be nothing or less, whatever people call it.
void refuse_less_of_own(const std::string &name, const std::string &value) {
    using D = Dimension;
    if (is_bare_number(value)) return;
    const bool below = value.starts_with('-');
    const std::string amount = below ? value.substr(1) : value;
    for (const D kind : {D::time, D::current, D::light, D::irradiance, D::weight, D::field, D::concentration,
                         D::activity, D::radiation, D::dose_rate}) {
        try {
            if (parse_amount(amount, kind) != Exact(0) && !below) continue;
        } catch (const InputError &) {
            continue; // of another kind
        }
        throw DataError(
            "condition " + name + "=" + value + ": " + std::string(name_of(kind)) +
            " is more than nothing; what was not measured is left out (common practice, no source)");
    }
}

} // namespace

std::map<std::string, std::string> ExamRecord::conditions_told() const {
    auto out = conditions;
    if (!level.empty()) out.emplace("level", level);
    return out;
}

std::map<std::string, std::string> ExamRecord::conditions_not_held() const {
    auto out = practice.empty() ? conditions : std::map<std::string, std::string>{};
    std::erase_if(out, [](const auto &one) { return !condition_info(one.first); });
    return out;
}

std::string ExamRecord::level_told() const {
    if (level.empty()) return level;
    if (level_as_typed) return level + " as typed, nobody on record vouches for it";
    if (conditions.contains("vision")) return level;
    return level + (vision_later.empty() ? ", no vision test on record"
                                         : ", vision test of " + vision_later + ", entered after the exam");
}

std::vector<std::string> ExamRecord::cautions() const {
    std::vector<std::string> out;
    for (const auto &one : equipment)
        if (std::string caution = caution_of(one, date); !caution.empty()) out.push_back(std::move(caution));
    return out;
}

std::string title_of(const ExamRecord &exam) {
    return "exam " + std::to_string(exam.number) + " (" + std::string(name_of(exam.method)) + ")";
}

namespace {

void take_condition(ExamRecord &exam, const std::string &name, const std::string &text) {
    const std::string value = checked_text(text, name);
    if (value.empty()) throw DataError("condition " + name + ": nothing given");
    if (const ConditionInfo *known = condition_info(name)) {
        try {
            if (const std::string why = impossible(*known, read_condition_value(*known, value)); !why.empty())
                throw InputError(name + "=" + value + ": " + why +
                                 "; what was not measured is left out (common practice, no source)");
        } catch (const InputError &e) {
            throw DataError(std::string("condition ") + e.what());
        }
    } else {
        // slag=removed, surface=as welded: what the name begins the value takes back.
        if (!told_in(name).empty() && !told_in(name + " " + value).empty())
            throw DataError("condition " + name + "=" + value + ": '" + name +
                            "' is an imperfection and no condition of the exam; what it found is logged");
        refuse_nought_of_own(name, value);
        refuse_less_of_own(name, value);
    }
    if (!exam.conditions.emplace(name, value).second)
        throw DataError("condition " + name + " is given twice");
}

} // namespace

void add_condition(ExamRecord &exam, const std::string &text) {
    const std::size_t equals = text.find('=');
    const std::string name = known_name(checked_text(text.substr(0, equals), "condition"));
    if (equals == std::string::npos || name.empty())
        throw DataError("condition '" + shown(text) + "': write it as name=value, e.g. \"light=1000 lx\"");
    at_field(condition_field + name, [&] { take_condition(exam, name, text.substr(equals + 1)); });
}

} // namespace beadbook
