#include "technique/part_shown.hpp"

#include "measure/text.hpp"
#include "technique/known_conditions.hpp"

#include <algorithm>
#include <array>
#include <cstdio>

namespace beadbook {
namespace {

/// Wherever they stand in a name, and as a whole name.
constexpr std::array words_of_a_part{
    "coverage",   "covered",     "examined", "excluded",   "extent",  "fraction",     "inspected",
    "limitation", "limitations", "missed",   "omitted",    "percent", "portion",      "scan",
    "scanned",    "share",       "skipped",  "unexamined", "viewed",  "inaccessible", "obscured"};
constexpr std::array names_of_a_part{
    "access", "accessible", "area",      "cap",         "checked", "face",    "faces",    "hidden",
    "left",   "left out",   "looked at", "obstruction", "only",    "part",    "readable", "restriction",
    "root",   "seen",       "side",      "sides",       "tested",  "visible", "zone"};
constexpr std::array values_of_the_unseen{
    "not seen",    "not examined", "not looked",  "not accessible", "not visible",  "not inspected",
    "not covered", "not reached",  "not shown",   "not readable",   "not scanned",  "no access",
    "hidden",      "obscured",     "invisible",   "missed",         "inaccessible", "skipped",
    "omitted",     "aborted",      "interrupted", "unreadable"};
constexpr std::array values_of_a_part{"partial", "partly", "half",     "fail", "fails",  "failed",
                                      "failing", "reject", "rejected", "lost", "spoilt", "unusable"};
constexpr std::array values_of_all{"100 %",  "100%", "full", "all",  "complete", "whole",
                                   "entire", "both", "yes",  "seen", "examined", "accessible"};

template <std::size_t N>
bool has_one(const std::string &text, const std::array<const char *, N> &words) {
    const std::string apart = " " + text + " ";
    return std::any_of(words.begin(), words.end(), [&](const std::string word) {
        return apart.find(" " + word + " ") != std::string::npos;
    });
}

/// "3 of 4 films"
bool is_less_than_all(const std::string &said) {
    int some = 0, all = 0;
    return std::sscanf(said.c_str(), "%d of %d", &some, &all) == 2 && some < all;
}

bool is_through_both(const std::string &view) {
    const auto &through_both = condition_info("view")->of_tube;
    return std::find(through_both.begin(), through_both.end(), view) != through_both.end();
}

Exact exposures_in(const std::string &told) {
    return read_condition_value(*condition_info("exposures"), told).amount;
}

bool is_closed_inside(const Coupon &coupon) {
    return coupon.facts[static_cast<Slot>(Fact::inside)] == word_index(info(Fact::inside), "closed");
}

/// What was written before the words were fixed is no number.
bool is_one(const std::string &exposures) {
    try {
        return exposures_in(exposures) == Exact(1);
    } catch (const InputError &) {
        return false;
    }
}

} // namespace

std::string part_not_shown(const std::map<std::string, std::string> &conditions, const Coupon &coupon) {
    const auto view = conditions.find("view"), exposures = conditions.find("exposures");
    if (view == conditions.end() || exposures == conditions.end() || !coupon.line.closed) return "";
    if (!is_through_both(view->second)) return "";
    const Exact number = exposures_in(exposures->second);
    if (number >= Exact(view->second == "ellipse" ? 2 : 3)) return "";
    return "by view " + view->second +
           (number > Exact(1) ? " two exposures, through both walls, do"
                              : " one exposure, through both walls, does") +
           " not show all of a girth weld";
}

std::string part_perhaps_not_shown(const std::map<std::string, std::string> &conditions,
                                   const Coupon &coupon) {
    if (!coupon.line.closed) return "";
    const auto view = conditions.find("view"), exposures = conditions.find("exposures");
    const bool closed_inside = is_closed_inside(coupon);
    const bool told = exposures != conditions.end();
    if (view == conditions.end())
        return told && closed_inside && is_one(exposures->second)
                   ? "nobody told the view: one exposure through both walls does not show all of a girth weld"
                   : "";
    if (view->second == "panoramic")
        return closed_inside ? "by view panoramic the source stands inside, which is said to be closed" : "";
    if (told && (is_through_both(view->second) || !is_one(exposures->second))) return "";
    return "by view " + view->second +
           (told ? " one exposure shows a part of a girth weld"
                 : ", nobody told how many exposures there were: each shows a part of a girth weld");
}

std::string root_perhaps_not_seen(Exam method, const std::vector<ExamDone> &all, const Coupon &coupon) {
    const bool fillet =
        coupon.facts[static_cast<Slot>(Fact::joint)] == word_index(info(Fact::joint), "fillet");
    const bool shown = std::any_of(all.begin(), all.end(), [](const ExamDone &exam) {
        return info(exam.method).volume && exam.counts && !exam.pending;
    });
    return method == Exam::VT && !fillet && !shown && is_closed_inside(coupon)
               ? "the inside is said to be closed, so that the root was not seen by eye"
               : "";
}

bool tells_unseen(std::string_view value) { return has_one(lowered(trimmed(value)), values_of_the_unseen); }

bool tells_a_part(std::string_view name, std::string_view value) {
    const std::string named = lowered(name), said = lowered(trimmed(value));
    if (tells_unseen(value) || has_one(said, values_of_a_part) || is_less_than_all(said)) return true;
    const auto is_one = [](const std::string &text, const auto &list) {
        return std::find(list.begin(), list.end(), text) != list.end();
    };
    return (has_one(named, words_of_a_part) || is_one(named, names_of_a_part)) &&
           !is_one(said, values_of_all);
}

} // namespace beadbook
