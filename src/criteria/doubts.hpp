#pragma once

#include "criteria/model.hpp"
#include "criteria/set_below.hpp"
#include "language/issue.hpp"

#include <initializer_list>
#include <optional>
#include <set>

namespace beadbook {

/// The checks that a set may silence with a reason, by their ids.
const std::vector<std::string> &check_names();

/// Doubtful things in a set that loads, told as warnings with the id of the check. What the file silences is
/// not told; a silence that nothing calls for is itself told.
class Doubts {
public:
    Doubts(const CriteriaSet &set, Issues &issues);

    /// `of` is the id of the rule or clause, or the name of the table, that the doubt is about.
    void tell(std::string_view check, const std::string &of, Where where, const std::string &path,
              const std::string &text);
    /// Whether it was told, or would have been but for a silence.
    bool told(std::string_view check, const std::string &of) const;
    void tell_needless();
    /// Those that were told, in their order.
    std::vector<Doubted> unanswered() { return std::move(unanswered_); }

private:
    const CriteriaSet &set_;
    Issues &issues_;
    std::vector<bool> used_;
    std::vector<Doubted> unanswered_;
    std::set<std::pair<std::string, std::string>> told_;
};

/// Whether a quantity stands there alone and is one of these.
bool is_one_of(const std::optional<Slot> &slot, std::initializer_list<Quantity> quantities);

/// Conditions: bands that hold nothing, conditions that never hold together; and rules by their bands: ones
/// that overlap with different limits, holes between them, and rules that stand there twice.
void check_conditions(const CriteriaSet &set, const Vocabulary &vocabulary, Doubts &doubts);
void check_rule_bands(const CriteriaSet &set, Doubts &doubts);
/// Bands of rules that end before the scope does, where nothing else limits the same.
void check_band_ends(const CriteriaSet &set, const Vocabulary &vocabulary, Doubts &doubts);
/// Bands of finds that end where larger ones go on, and nothing says what holds of those. Comes after the
/// checks that tell of such rules more.
void check_find_band_ends(const CriteriaSet &set, const Vocabulary &vocabulary, Doubts &doubts);
/// Rules that can never decide, or always reject; limits that are no measure; coupons outside the scope.
void check_reach(const CriteriaSet &set, Doubts &doubts);
/// Finds of which the set speaks and no rule, or no class; cracks that pass.
void check_coverage(const CriteriaSet &set, const Vocabulary &vocabulary, Doubts &doubts);
/// Finds that do not count, and are over a limit, or larger than anybody leaves out.
void check_relevance(const CriteriaSet &set, const Vocabulary &vocabulary, Doubts &doubts);

/// Limits beside the wall that the set covers, windows, groups and tables that cannot be meant.
void check_belief(const CriteriaSet &set, Doubts &doubts);
/// Limits that nobody would let stand, whatever the wall.
void check_limit_belief(const CriteriaSet &set, Doubts &doubts);
/// What is in the other system of units than all the rest. Comes before the slips that it explains.
void check_units(const CriteriaSet &set, Doubts &doubts);
/// Limits that differ from those beside them as only a slip explains. Comes after the checks that tell of
/// such a limit more.
void check_slips(const CriteriaSet &set, const SetBelow &below, Doubts &doubts);
/// Limits that are a share of something else than those beside them, which are one of the wall. Comes before
/// the order of classes, which such a share turns round.
void check_shares(const CriteriaSet &set, const SetBelow &below, Doubts &doubts);
/// Depths that are the whole of the thinnest walls that the set covers, which some standards mean.
void check_thin_walls(const CriteriaSet &set, Doubts &doubts);
/// Finds of which something is limited, and not how large or how deep they are.
void check_extents(const CriteriaSet &set, const Vocabulary &vocabulary, Doubts &doubts);
/// Finds that are added, counted or spaced, of which only some are held one by one. Comes after the checks
/// that tell of such finds more.
void check_sizes_of_some(const CriteriaSet &set, const Vocabulary &vocabulary, Doubts &doubts);
/// What rules judge and no exam is asked for, and joints of which no rule speaks. Comes after the checks
/// that tell of such exams and bands more.
void check_unexamined(const CriteriaSet &set, Doubts &doubts);
/// Stretches that are shorter than one find in them. Comes after the checks that tell of such finds more.
void check_windows(const CriteriaSet &set, Doubts &doubts);
/// Classes that reject nothing of what the others limit. Comes after the checks of what is covered.
void check_open_classes(const CriteriaSet &set, const Vocabulary &vocabulary, Doubts &doubts);
/// What may reject less than it seems: rules held together, groups counted as one, what never counts.
void check_loopholes(const CriteriaSet &set, const Vocabulary &vocabulary, Doubts &doubts);

} // namespace beadbook
