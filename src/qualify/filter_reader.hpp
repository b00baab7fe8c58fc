#pragma once

#include "language/fields.hpp"
#include "language/names.hpp"
#include "qualify/range_rules.hpp"

namespace beadbook {

/// What conditions on a weld may speak of: every trait, its words those of tests or of work.
void add_trait_names(const RangeRules &rules, bool of_test, Names &names);

/// A trait by its name, or an issue with the nearest one.
std::optional<Trait> read_trait(const std::string &name, Where where, const std::string &path,
                                Issues &issues);
/// A word alone or a list of words.
std::vector<std::string> read_word_list(const Yaml &node, const std::string &path, Issues &issues);
/// The same under a key, which may be absent, of words that are known: `what` is what each names.
std::vector<std::string> read_known_words(const Fields &fields, std::string_view key,
                                          const std::vector<std::string> &known, const std::string &what,
                                          Issues &issues);

/// The welds that a key speaks of. One condition, or a list of conditions that must all hold:
/// `form is not tube`, `[joint is groove, thickness over 1/8 in]`. Or a map, the same in short: {joint:
/// groove, form: [sheet, plate], thickness: over 1/8 in}. Or a list of maps, of which one must fit.
/// Absent: every weld.
WeldFilter read_filter(const Fields &fields, std::string_view key, const Names &names, Issues &issues);

} // namespace beadbook
