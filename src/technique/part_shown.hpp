#pragma once

#include "judge/coupon.hpp"

#include <map>
#include <string>
#include <string_view>

namespace beadbook {

/// Why the images of an exam show a part of the weld only, if its conditions tell so: fewer exposures through
/// both walls of a tube with a girth seam than show all round. Empty: they may show all of it. ASME BPVC V
/// T-271.2, read: two of an ellipse, three else.
std::string part_not_shown(const std::map<std::string, std::string> &conditions, const Coupon &coupon);

/// What such an exam leaves untold, so that nobody can say whether its images show all round: how many
/// exposures there were through both walls; or, of one exposure of a tube whose inside is closed, the view.
/// Empty: nothing. Common practice, no source.
std::string part_perhaps_not_shown(const std::map<std::string, std::string> &conditions,
                                   const Coupon &coupon);

/// Whether a value says that something was not seen or reached: "not visible".
bool tells_unseen(std::string_view value);

/// Whether a condition of people's own name ("coverage", "root") tells how much of the weld was examined, or
/// by its value ("not seen") that not all was. One that says it was all of it does not. Common practice, no
/// source.
bool tells_a_part(std::string_view name, std::string_view value);

} // namespace beadbook
