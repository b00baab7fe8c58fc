#include "criteria/methods.hpp"

#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {

std::string_view name_of(Exam exam) { return info(exam).name; }

std::optional<Exam> exam_named(std::string_view name) {
    const std::string_view word = trimmed(name);
    if (word.empty()) return std::nullopt;
    for (const Exam exam : all_exams()) {
        const auto &also = info(exam).also;
        if (same_word(name_of(exam), word) ||
            std::any_of(also.begin(), also.end(), [&](auto one) { return same_word(one, word); }))
            return exam;
    }
    return std::nullopt;
}

std::vector<Exam> all_exams() {
    std::vector<Exam> out;
    for (std::size_t i = 0; i < exam_count; ++i) out.push_back(static_cast<Exam>(i));
    return out;
}

std::vector<std::string> exam_names() {
    std::vector<std::string> out;
    for (const auto &method : method_table) out.emplace_back(method.name);
    return out;
}

std::string exam_names_text() { return listed(exam_names(), "or"); }

std::vector<std::string> stand_ins_for(Exam exam) {
    constexpr auto crack = static_cast<std::size_t>(Nature::crack);
    const Method &asked = info(exam);
    std::vector<std::string> out;
    for (const auto &method : method_table)
        if (method.needs_magnetic.empty() && method.surface == asked.surface &&
            method.volume == asked.volume && method.sights[crack].grade >= asked.sights[crack].grade)
            out.emplace_back(method.name);
    return out;
}

} // namespace beadbook
