#include "technique/part_shown.hpp"

#include "measure/text.hpp"
#include "technique/known_conditions.hpp"

#include <algorithm>
#include <array>

namespace beadbook {
namespace {

constexpr std::array names_of_a_part{
    "coverage", "covered",    "extent",       "examined",    "root",         "cap",
    "face",     "side",       "sides",        "portion",     "part",         "area",
    "access",   "accessible", "inaccessible", "seen",        "visible",      "obscured",
    "hidden",   "limitation", "limitations",  "restriction", "restrictions", "missed",
    "left",     "skipped",    "unexamined",   "obstruction", "obstructions"};
constexpr std::array values_of_a_part{
    "not seen",    "not examined", "not looked", "not accessible", "not visible",  "not inspected",
    "not covered", "no access",    "partial",    "partly",         "part",         "parts",
    "hidden",      "obscured",     "half",       "missed",         "inaccessible", "skipped"};
constexpr std::array values_of_all{"100 %",  "100%", "full", "all",  "complete", "whole",
                                   "entire", "both", "yes",  "seen", "examined", "accessible"};

template <std::size_t N>
bool has_one(const std::string &text, const std::array<const char *, N> &words) {
    const std::string apart = " " + text + " ";
    return std::any_of(words.begin(), words.end(), [&](const std::string word) {
        return apart.find(" " + word + " ") != std::string::npos;
    });
}

} // namespace

std::string part_not_shown(const std::map<std::string, std::string> &conditions, const Coupon &coupon) {
    const auto view = conditions.find("view"), exposures = conditions.find("exposures");
    if (view == conditions.end() || exposures == conditions.end() || !coupon.line.closed) return "";
    const auto &through_both = condition_info("view")->of_tube;
    if (std::find(through_both.begin(), through_both.end(), view->second) == through_both.end()) return "";
    const Exact number = read_condition_value(*condition_info("exposures"), exposures->second).amount;
    if (number >= Exact(2)) return "";
    return "by view " + view->second + " one exposure, through both walls, does not show all of a girth weld";
}

bool tells_a_part(std::string_view name, std::string_view value) {
    const std::string named = lowered(name), said = lowered(trimmed(value));
    if (has_one(said, values_of_a_part)) return true;
    return has_one(named, names_of_a_part) &&
           std::find(values_of_all.begin(), values_of_all.end(), said) == values_of_all.end();
}

} // namespace beadbook
