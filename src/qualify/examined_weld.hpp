#pragma once

#include "measure/day.hpp"

#include <string>
#include <vector>

namespace beadbook {

/// A weld of the work that was examined and accepted, as a person states it.
struct ExaminedWeld {
    Day day;
    std::vector<std::string>
        methods;      ///< short names of examinations; bend, fracture and macro are "mechanical"
    std::string who;  ///< accepted it
    std::string what; ///< which weld, and anything else; may be empty
};

/// Examinations that a statement may name: the methods, ultrasonic testing and mechanical tests.
std::vector<std::string> stated_exams();

/// "2026-10-05 RT accepted by A. Field, line 4 weld 17": the day, one method or more, that it was accepted,
/// by whom. Throws InputError: a part is missing, or the text tells of a rejection or a failure.
ExaminedWeld read_examined_weld(const std::string &text);

} // namespace beadbook
