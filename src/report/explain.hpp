#pragma once

#include "report/paint.hpp"
#include "report/sentence.hpp"

#include <string>

namespace beadbook {

/// All classes with every reason and what it rests on: for the technician and the instructor.
std::string explain_judgement(const Case &c, const Judgement &judgement, const Paint &paint);

/// One page for the welder: accepted or not against the class sought, where on the weld, why in plain words,
/// what usually causes it, what to change, and which classes it does make.
std::string explain_to_welder(const Case &c, const Judgement &judgement, std::size_t class_index,
                              const Paint &paint);

/// The weld as a line with the indications' numbers where they are. Empty if nothing has a place.
std::string weld_strip(const Case &c);

} // namespace beadbook
