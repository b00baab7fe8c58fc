#include "criteria/model.hpp"

namespace beadbook {

std::string_view name_of(Standing::Kind kind) {
    switch (kind) {
    case Standing::Kind::read: return "read";
    case Standing::Kind::second_hand: return "second hand";
    case Standing::Kind::memory: return "memory";
    case Standing::Kind::house: return "house";
    case Standing::Kind::common_practice: break;
    }
    return "common practice";
}

std::string authority(const std::string &clause, const Standing &standing) {
    return clause + ", " + std::string(name_of(standing.kind));
}

Dimension Rule::dimension() const {
    switch (kind) {
    case Kind::each: return measure.dimension();
    case Kind::gap: return Dimension::length;
    case Kind::sum: return info(summed).dimension;
    default: return Dimension::number;
    }
}

std::string Gap::conditions_text() const {
    std::string out;
    for (const auto *list : {&when, &where})
        for (const auto &c : *list) out += (out.empty() ? "" : ", ") + c.text;
    if (shape != Shape::unknown) out += (out.empty() ? "" : ", ") + std::string(name_of(shape));
    return out;
}

bool asks_for_side(const Condition &c) {
    return c.kind == Condition::Kind::word &&
           c.slot == fact_count + static_cast<std::size_t>(Attribute::side);
}

const std::vector<std::uint16_t> &CriteriaSet::rules_for(TypeId type, Exam exam) const {
    return by_type_and_exam[type * exam_count + static_cast<std::size_t>(exam)];
}

std::optional<std::size_t> CriteriaSet::class_index(std::string_view id) const {
    for (std::size_t i = 0; i < classes.size(); ++i)
        if (classes[i].id == id) return i;
    return std::nullopt;
}

std::vector<std::string> CriteriaSet::class_names() const {
    std::vector<std::string> out;
    for (const auto &c : classes) out.push_back(c.id);
    return out;
}

} // namespace beadbook
