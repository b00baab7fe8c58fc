#include "technique/part_shown.hpp"

#include "technique/known_conditions.hpp"

#include <algorithm>

namespace beadbook {

std::string part_not_shown(const std::map<std::string, std::string> &conditions, const Coupon &coupon) {
    const auto view = conditions.find("view"), exposures = conditions.find("exposures");
    if (view == conditions.end() || exposures == conditions.end() || !coupon.line.closed) return "";
    const auto &through_both = condition_info("view")->of_tube;
    if (std::find(through_both.begin(), through_both.end(), view->second) == through_both.end()) return "";
    const Exact number = read_condition_value(*condition_info("exposures"), exposures->second).amount;
    if (number >= Exact(2)) return "";
    return "by view " + view->second + " one exposure, through both walls, does not show all of a girth weld";
}

} // namespace beadbook
