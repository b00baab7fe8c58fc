#pragma once

#include "judge/coupon.hpp"

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace beadbook {

/// Why the images of an exam show a part of the weld only, if its conditions tell so: fewer exposures through
/// both walls of a tube with a girth seam than show all round. Empty: they may show all of it. ASME BPVC V
/// T-271.2, read: two of an ellipse, three else.
std::string part_not_shown(const std::map<std::string, std::string> &conditions, const Coupon &coupon);

/// Why nobody can say whether the images of a girth weld show all round: not told how many there were, but by
/// a panoramic view; one alone through a single wall; a source inside a tube that is closed; or, of one
/// exposure of such a tube, the view not told. Empty: nothing. Common practice, no source.
std::string part_perhaps_not_shown(const std::map<std::string, std::string> &conditions,
                                   const Coupon &coupon);

/// Why nobody saw the root by eye, if the coupon is told so: a tube that is closed inside. A fillet has its
/// root in the metal, and what an exam through the wall shows needs no eye. Empty: nothing. Common practice,
/// no source.
std::string root_perhaps_not_seen(Exam method, const std::vector<ExamDone> &all, const Coupon &coupon);

/// Whether a value says that something was not seen or reached: "not visible".
bool tells_unseen(std::string_view value);

/// Whether a condition of people's own name ("coverage", "root") tells how much of the weld was examined, or
/// by its value ("not seen") that not all was. One that says it was all of it does not. Common practice, no
/// source.
bool tells_a_part(std::string_view name, std::string_view value);

} // namespace beadbook
