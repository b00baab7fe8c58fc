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

/// Whether two texts may name one weld: no number or letter of one stands against one of the other ("weld
/// 17", "the weld-17 again"), or, without numbers, no word.
bool same_designation(const std::string &a, const std::string &b);

/// "2026-10-05 RT accepted by A. Field, line 4 weld 17": the day, one method or more, that it was accepted,
/// by whom. Throws InputError: a part is missing, or the text tells of a rejection or a failure.
ExaminedWeld read_examined_weld(const std::string &text);

} // namespace beadbook
