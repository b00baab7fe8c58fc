#pragma once

#include "criteria/model.hpp"
#include "measure/day.hpp"
#include "qualify/weld.hpp"

#include <map>
#include <memory>

namespace beadbook {

/// What a filter asks of one trait: some words, or a size between plain numbers.
struct TraitTest {
    Trait trait = Trait::joint;
    Condition asks;
};

/// Any of the alternatives, each of which asks all of its tests; no alternative at all: every weld.
struct WeldFilter {
    std::vector<std::vector<TraitTest>> alternatives;
    std::string text; ///< as people read it: "joint groove, form tube"
};

/// One line of a standard's table: tests of this kind allow this much of one trait in work of that kind.
struct RangeRule {
    enum class Kind : std::uint8_t {
        any,    ///< no limit
        same,   ///< what was welded in the test
        words,  ///< these words, or by the test's own word
        band,   ///< a range whose edges may speak of the test's sizes
        unread, ///< not known: no limit was read
    };
    std::string id, clause, reading, text;
    Standing standing;
    Where where_from;
    Trait of = Trait::joint;
    WeldFilter test, work;
    Kind kind = Kind::same;
    std::vector<std::string> words;
    std::map<std::string, std::vector<std::string>> by; ///< the test's word -> words of the work
    std::vector<Condition::Edge> band;
};

/// A trait that limits what a welder may do; some only in some work.
struct Variable {
    Trait of = Trait::joint;
    WeldFilter work;
    bool unread = false; ///< how it limits was not read: its last range says so
};

/// What a coupon of a welder's test must go through, by the rules that it is a test of.
struct TestExam {
    std::string id, clause;
    Standing standing;
    std::vector<std::string> one_of; ///< methods, or mechanical
    WeldFilter test;
};

/// Where a number of the rules that are not ranges comes from.
struct Authority {
    std::string clause;
    Standing standing;
};
/// Where no clause of the rules stands behind it, it is our habit.
inline std::string authority(const Authority &from) {
    return from.clause.empty() ? "common practice, no source" : authority(from.clause, from.standing);
}

/// What accepts a test weld by these rules: classes of one criteria set. Judged by anything else, what it
/// made says nothing here.
struct AcceptedBy {
    std::string criteria;
    std::vector<std::string> classes; ///< any of them; empty: every class of the set
    Authority from;
};

/// "iso-5817, class B"; "iso-9606-1-tests".
std::string print(const AcceptedBy &one);

/// A number of coupons, and who asks for it.
struct CouponsAsked {
    int coupons = 1;
    Authority from;
};

/// How an end of a range that a formula works out is compared with a length of the work. Ends that the rules
/// print as a number, and the test's own sizes, are not worked out: they stay as they are.
struct EndComparison {
    enum class Kind : std::uint8_t {
        absolute, ///< as worked out
        rounded,  ///< rounded to `place`, halves to the even one
        wider,    ///< as worked out or rounded, whichever takes in more
    };
    Kind kind = Kind::absolute;
    Exact place; ///< nm, over 0 unless absolute
    std::string text = "absolute";
    std::optional<Authority> from; ///< absent where the rules say nothing: absolute

    /// What is compared in the place of `computed`.
    Exact compared(Compare compare, const Exact &computed) const;
};

/// How long a qualification holds. Periods that the standard does not set are absent.
struct ValidityWay {
    std::string id;
    std::optional<Period> lasts;     ///< from the day of the test weld
    std::optional<Period> use_every; ///< the process must be used, or the welder confirmed, at least so often
    bool whole_months = false;       ///< `use every` counts calendar months, not days
    bool kept_by_use = false;        ///< as long as it is used it goes on beyond `lasts`
    bool same_employer = false;      ///< it holds as long as the welder works for whom it was granted
    Authority from;
    struct Extension {
        int welds = 0; ///< examined and accepted
        Period within, adds;
        std::vector<std::string> one_of; ///< examinations of which each weld needs one; empty: any
        bool as_test = false;            ///< the welds are welded as the test was, but for their sizes
        Authority from;
    };
    std::optional<Extension> extension;
};

struct RetestRules {
    std::optional<CouponsAsked> immediate; ///< for each coupon that failed
    int times = 0; ///< failures that an immediate retest may follow; then training comes first. 0: any number
    std::optional<CouponsAsked> after_training; ///< for each kind of test
    /// An immediate retest is examined by the methods that the failed coupon failed by; absent: not known.
    std::optional<Authority> same_exam;
};

/// A trait that the standard names, and of which nothing that would limit it was read: what the test itself
/// was is certain, all else is not known.
struct UnreadTrait {
    Variable variable; ///< in work that it could limit
    RangeRule own, rest;

    /// In a sentence, which stands among the gaps too.
    const std::string &what() const { return rest.text; }
};

/// One standard's rules for welders, immutable once loaded.
struct RangeRules {
    std::string name, title, edition, source, notes;
    Unit unit = Unit::inch;
    std::array<std::vector<std::string>, word_traits> test_words, work_words; ///< empty: any word
    std::array<std::vector<Exact>, trait_count> usual_sizes;                  ///< coupons that shops weld
    std::map<std::string, std::string> quantities; ///< that symbols of ranges stand for, as they are written
    std::vector<std::string> base_metals; ///< that they cover, as Fact::material has them; empty: any
    std::vector<Variable> variables;
    std::vector<RangeRule> rules;
    EndComparison ends;
    std::vector<TestExam> exams;
    std::vector<AcceptedBy> accepted_by; ///< one of them; empty: not known here
    std::vector<ValidityWay> validity;   ///< the first is the usual one
    RetestRules retest;
    /// Of a qualification that lapsed, because the process was not used; absent: a new test is needed.
    std::optional<CouponsAsked> renewal;
    std::vector<std::string> gaps;
    std::vector<UnreadTrait> unread;
    std::string text, hash;

    /// What a reader must be told of rules that are not shipped; empty of shipped ones
    /// (criteria/provenance.hpp).
    std::string own_file_words() const;
    std::string own_file_mark() const;
    /// What they do not hold of how a test weld is examined and accepted; empty: nothing is missing.
    std::vector<std::string> not_known() const;
    /// What is said of one trait.
    std::vector<const RangeRule *> rules_of(Trait trait) const;
    const ValidityWay *way(std::string_view id) const;
    bool accepts(std::string_view criteria, std::string_view class_id) const;
};

struct LoadedRules {
    std::shared_ptr<const RangeRules> rules;
    std::shared_ptr<const RangeRules> kept; ///< also where there are late errors alone
    std::vector<Issue> issues;
};

/// Reads and compiles one rule set (language: criteria/welder/README.md). Collects all mistakes.
LoadedRules load_range_rules(const std::string &text);
/// A shipped rule set by name, without folder and .yaml; throws std::out_of_range.
std::shared_ptr<const RangeRules> shipped_range_rules(const std::string &name);
const std::vector<std::string> &shipped_range_rule_names();

/// Why rules do not cover a base metal that a text names ("6061 aluminium"); empty if they do, or if it names
/// none that is known.
std::string uncovered_metal(const RangeRules &rules, std::string_view material);

/// Whether the rules know a word for the trait; where they list none they take any.
bool knows_word(const RangeRules &rules, Trait trait, bool of_test, const std::string &word);
/// Refuses a word that the rules do not know for the trait, with the nearest one. Throws InputError.
void check_word(const RangeRules &rules, Trait trait, bool of_test, const std::string &word);

} // namespace beadbook
