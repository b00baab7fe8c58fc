#pragma once

#include "qualify/range_rules.hpp"

#include <set>
#include <utility>

namespace beadbook {

/// Which datum decided nothing because nobody gave it.
struct Lack {
    enum class Of : std::uint8_t { work, test, rules }; ///< rules: their limit was not read
    Trait trait = Trait::joint;
    Of of = Of::work;
    friend auto operator<=>(const Lack &, const Lack &) = default;
};
/// "the test's layers", "the work's diameter".
std::string name_of(const Lack &lack);

/// Traits that a filter looks at.
void add_traits(const WeldFilter &filter, std::set<Trait> &out);
/// Traits of the work that a variable looks at.
std::set<Trait> work_traits_of(const RangeRules &rules, const Variable &variable);

/// Whether a weld is of the kind that a filter asks for.
Truth passes(const WeldFilter &filter, const Weld &weld);

/// Refuses a word of a test that the rules do not know, where it can bear on what the test qualifies: a range
/// by that trait may be of such a test, or something else asks for it. Throws InputError.
void check_test_word(const RangeRules &rules, Trait trait, const Weld &test);

/// One rule's part of what a test qualifies, worked out for that test.
struct RangePart {
    const RangeRule *rule = nullptr;
    Truth applies = Truth::yes;                   ///< to this test; unknown where the test lacks a datum
    std::vector<std::string> words;               ///< allowed words
    std::vector<std::pair<Compare, Exact>> edges; ///< of a size, as they are compared
    std::vector<Exact> computed;                  ///< the same as the formula gives them
    std::vector<Lack> lacks;
    bool any = false;

    /// Whether some end is compared otherwise than it was worked out.
    bool rounded() const;
    /// May the work have this?
    Truth allows(Trait of, const Weld &work) const;
};

/// All that a test qualifies, by trait.
struct VariableRange {
    const Variable *variable = nullptr;
    std::vector<RangePart> parts; ///< rules that apply to the test, or would if more were known
};
std::vector<VariableRange> range_of(const RangeRules &rules, const Weld &test);
/// One variable's part of it.
VariableRange range_of(const RangeRules &rules, const Variable &variable, const Weld &test);

/// Whether any work that the test qualifies could be limited by the variable: a test in another process says
/// nothing about the transfer of GMAW.
bool may_matter(const std::vector<VariableRange> &range, const Variable &variable);

/// What one variable says of one weld of the work.
struct VariableCover {
    const Variable *variable = nullptr;
    Truth covered = Truth::no;
    const RangeRule *by = nullptr; ///< the rule that allows it
    std::vector<Lack> lacks;       ///< covered is unknown for want of these
};

/// Whether a test covers one weld of the work: every variable must. Missing data never covers.
struct Cover {
    Truth covered = Truth::yes;
    std::vector<VariableCover> variables;
};
Cover covers(const RangeRules &rules, const Weld &test, const Weld &work);
Cover covers(const std::vector<VariableRange> &range, const Weld &work);

/// What one variable alone says; nothing if it does not limit such work.
std::optional<VariableCover> cover_of(const VariableRange &range, const Weld &work);

/// What a part allows, in people's words: "from 0.0302 in to 0.18 in", "F and H", "any". An end that is
/// compared otherwise than it was worked out shows both: "from 0.03 in (computed 0.03015 in)".
std::string print(const RangePart &part, Unit unit);
std::string print(Trait trait, const Exact &value, Unit unit);
/// A weld in one line: "groove, tube, GTAW, 6G, thickness 0.065 in, diameter 2 in".
std::string print(const Weld &weld, Unit unit);

} // namespace beadbook
