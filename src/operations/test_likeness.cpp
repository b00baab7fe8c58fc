#include "operations/test_likeness.hpp"

#include "criteria/weld_words.hpp"
#include "measure/text.hpp"
#include "qualify/contradicting_words.hpp"
#include "qualify/range.hpp"

#include <algorithm>
#include <optional>
#include <set>

namespace beadbook {
namespace {

/// Whether a test qualifies work like that in one trait.
bool takes(Trait trait, const RangeRules &rules, const Weld &test, const Weld &work) {
    return std::any_of(rules.variables.begin(), rules.variables.end(), [&](const Variable &variable) {
        if (variable.of != trait) return false;
        const VariableRange range = range_of(rules, variable, test);
        return std::any_of(range.parts.begin(), range.parts.end(), [&](const RangePart &part) {
            return part.applies == Truth::yes && part.allows(trait, work) == Truth::yes;
        });
    });
}

bool one_form(const RangeRules *rules, const Weld &a, const Weld &b) {
    if (!rules || same_word(a.word(Trait::form), "tube") || same_word(b.word(Trait::form), "tube"))
        return false;
    // What no rule tells apart is one: a sheet is a thin plate.
    if (std::none_of(rules->variables.begin(), rules->variables.end(),
                     [](const Variable &variable) { return variable.of == Trait::form; }))
        return true;
    Weld other = a; // alike in all else: only the form is asked about
    other.word(Trait::form) = b.word(Trait::form);
    return takes(Trait::form, *rules, a, other) && takes(Trait::form, *rules, other, a);
}

/// What the rules let a test in its position do: the words of each of their parts. Nothing if they cannot
/// say.
std::optional<std::vector<std::vector<std::string>>> allowed_positions(const RangeRules &rules,
                                                                       const Weld &test) {
    std::vector<std::vector<std::string>> out;
    for (const auto &variable : rules.variables) {
        if (variable.of != Trait::position) continue;
        for (const auto &part : range_of(rules, variable, test).parts) {
            if (part.applies == Truth::unknown) return std::nullopt;
            out.push_back(part.any ? std::vector<std::string>{"any"} : part.words);
        }
    }
    return out.empty() ? std::nullopt : std::optional(std::move(out));
}

/// Of a test in several positions and one in none of them, the rules tell whether they are one test by what
/// they let each do: 6G and 2G+5G.
Truth same_positions(const Weld &a, const Weld &b, const RangeRules *rules) {
    const std::string &one = a.word(Trait::position), &other = b.word(Trait::position);
    const Truth same = same_position(one, other);
    if (same != Truth::no || (!several_positions(one) && !several_positions(other))) return same;
    if (!rules) return Truth::unknown;
    Weld there = a; // alike in all else: only the position is asked about
    there.word(Trait::position) = other;
    const auto allowed = allowed_positions(*rules, a), too = allowed_positions(*rules, there);
    return !allowed || !too ? Truth::unknown : *allowed == *too ? Truth::yes : Truth::no;
}

Truth same_trait(Trait trait, const Weld &a, const Weld &b, const RangeRules *rules) {
    const std::string &one = a.word(trait), &other = b.word(trait);
    if (trait == Trait::process ? same_process(one, other) : same_word(one, other)) return Truth::yes;
    if (!a.knows(trait) || !b.knows(trait)) return Truth::unknown;
    if (trait == Trait::position) return same_positions(a, b, rules);
    return trait == Trait::form && one_form(rules, a, b) ? Truth::yes : Truth::no;
}

Truth same_in(const std::vector<Trait> &traits, const std::vector<Weld> &test, const Weld &weld,
              const RangeRules *rules, std::vector<std::string> &lacks) {
    Truth out = Truth::no;
    for (const auto &one : test) {
        Truth same = Truth::yes;
        std::vector<std::string> open;
        for (const Trait trait : traits) {
            const Truth is = same_trait(trait, one, weld, rules);
            if (is == Truth::unknown) open.push_back("the " + std::string(info(trait).name));
            same = both(same, is);
        }
        if (same == Truth::yes) return same;
        if (same == Truth::no) continue;
        out = same;
        for (auto &lack : open)
            if (std::find(lacks.begin(), lacks.end(), lack) == lacks.end()) lacks.push_back(std::move(lack));
    }
    return out;
}

} // namespace

Truth same_kind(const std::vector<Weld> &test, const Weld &weld, const RangeRules *rules,
                std::vector<std::string> &lacks) {
    return same_in({Trait::process, Trait::joint, Trait::form, Trait::position}, test, weld, rules, lacks);
}

Truth same_but_for_position(const std::vector<Weld> &test, const Weld &weld, const RangeRules *rules) {
    std::vector<std::string> lacks;
    return same_in({Trait::process, Trait::joint, Trait::form}, test, weld, rules, lacks);
}

std::vector<std::string> told_otherwise(const Weld &weld, const Weld &test) {
    std::vector<std::string> out;
    for (std::size_t i = 0; i < word_traits; ++i) {
        const auto trait = static_cast<Trait>(i);
        const std::string &is = weld.word(trait), &was = test.word(trait);
        const bool alike = trait == Trait::process    ? same_process(is, was)
                           : trait == Trait::position ? same_position(is, was) == Truth::yes
                                                      : same_meaning(trait, is, was);
        if (was.empty() || alike) continue;
        out.push_back(std::string(info(trait).name) + " " +
                      (is.empty() ? "not told, and it was " : is + ", not ") + was);
    }
    return out;
}

namespace {

/// Positions of work like that weld that a test in its position allows; "any" for all of them. What cannot be
/// said of the test for want of a datum is allowed if `perhaps`.
std::set<std::string> positions_for(const RangeRules &rules, const Weld &test, const Weld &work,
                                    bool perhaps) {
    std::set<std::string> out;
    for (const auto &variable : rules.variables) {
        if (variable.of != Trait::position) continue;
        for (const auto &part : range_of(rules, variable, test).parts) {
            if ((part.applies == Truth::unknown && !perhaps) ||
                (part.rule && passes(part.rule->work, work) == Truth::no))
                continue;
            if (part.any) out.insert("any");
            out.insert(part.words.begin(), part.words.end());
        }
    }
    return out;
}

/// Whether nothing that the rules say of a trait keeps a test from work like that.
bool may_take(Trait trait, const RangeRules &rules, const Weld &test, const Weld &work) {
    return std::all_of(rules.variables.begin(), rules.variables.end(), [&](const Variable &variable) {
        if (variable.of != trait) return true;
        const auto cover = cover_of(range_of(rules, variable, test), work);
        return !cover || cover->covered != Truth::no;
    });
}

/// A failed test by the rules' own words for its position, of which there may be several: PH as 5G. Itself if
/// they know its word, or have none for it.
std::vector<Weld> in_words_of(const RangeRules &rules, const Weld &failed) {
    const std::string &position = failed.word(Trait::position);
    if (knows_word(rules, Trait::position, true, position)) return {failed};
    std::vector<Weld> out;
    for (const auto &word : rules.test_words[index_of(Trait::position)]) {
        const std::string_view way = progression_of(word);
        if (!same_meaning(Trait::position, word, position) || same_position(word, position) != Truth::yes ||
            (!way.empty() && failed.knows(Trait::progression) &&
             !same_word(failed.word(Trait::progression), way)))
            continue;
        out.push_back(failed);
        out.back().word(Trait::position) = word;
    }
    return out.empty() ? std::vector{failed} : out;
}

/// Positions of such work that a test of that kind qualifies for, in whatever position it is welded: flat
/// ones. That they are taken in tells nothing of what failed.
std::set<std::string> positions_of_each(const RangeRules &rules, const Weld &test, const Weld &work) {
    std::optional<std::set<std::string>> out;
    Weld there = test;
    for (const auto &word : rules.test_words[index_of(Trait::position)]) {
        there.word(Trait::position) = word;
        const auto its = positions_for(rules, there, work, false);
        if (its.empty()) continue;
        if (!out) out = its;
        std::erase_if(*out, [&](const std::string &one) { return !its.contains(one); });
    }
    return out.value_or(std::set<std::string>{});
}

/// Whether a test may stand for a failed one of another kind by process, joint and form.
bool may_stand_for(const RangeRules &rules, const Weld &test, const Weld &failed) {
    if (!same_process(failed.word(Trait::process), test.word(Trait::process))) return false;
    if (!same_word(failed.word(Trait::joint), test.word(Trait::joint)) &&
        !may_take(Trait::joint, rules, test, failed))
        return false;
    // As of a retest, the sizes of one form tell nothing; but plate stands for large tubes alone.
    return same_word(failed.word(Trait::form), test.word(Trait::form)) ||
           (may_take(Trait::form, rules, test, failed) && may_take(Trait::diameter, rules, test, failed));
}

} // namespace

bool takes_in(const RangeRules &rules, const Weld &test, const Weld &failed) {
    if (!may_stand_for(rules, test, failed)) return false;
    const auto mine = positions_for(rules, test, failed, true);
    const auto all = in_words_of(rules, failed);
    return std::any_of(all.begin(), all.end(), [&](const Weld &one) {
        const auto its = positions_for(rules, one, one, false);
        return !its.empty() &&
               (mine.contains("any") || std::includes(mine.begin(), mine.end(), its.begin(), its.end()));
    });
}

std::vector<std::string> takes_some(const RangeRules &rules, const Weld &test, const Weld &failed) {
    std::set<std::string> out;
    const auto add = [&](const Weld &work) {
        const auto mine = positions_for(rules, test, work, true);
        const auto usual = positions_of_each(rules, failed, work);
        for (const auto &one : in_words_of(rules, failed))
            for (const auto &its : positions_for(rules, one, work, false))
                if ((mine.contains("any") || mine.contains(its)) && !usual.contains(its)) out.insert(its);
    };
    if (may_stand_for(rules, test, failed)) {
        add(failed);
    } else if (same_word(test.word(Trait::joint), failed.word(Trait::joint)) &&
               may_stand_for(rules, failed, test)) {
        add(test); // a plate after a tube that failed: both are for work on plate
    }
    return {out.begin(), out.end()};
}

bool takes_in(const RangeRules &rules, const Weld &test, const std::vector<Weld> &failed) {
    return std::any_of(failed.begin(), failed.end(),
                       [&](const Weld &one) { return takes_in(rules, test, one); });
}

std::vector<std::string> welded_otherwise(const Weld &weld, const std::vector<Weld> &test) {
    constexpr Trait alike[] = {Trait::progression, Trait::backing, Trait::transfer, Trait::filler_group,
                               Trait::metal_group};
    std::optional<std::vector<std::string>> out;
    for (const auto &one : test) {
        if (!same_process(one.word(Trait::process), weld.word(Trait::process))) continue;
        std::vector<std::string> otherwise;
        for (const Trait trait : alike)
            if (one.knows(trait) && weld.knows(trait) && !same_word(one.word(trait), weld.word(trait)))
                otherwise.push_back(std::string(info(trait).name) + " " + weld.word(trait) + ", not " +
                                    one.word(trait));
        if (!out || otherwise.size() < out->size()) out = std::move(otherwise);
    }
    return out.value_or(std::vector<std::string>{});
}

Truth retests(const std::vector<Weld> &test, const Weld &weld, const RangeRules *rules,
              std::vector<std::string> &lacks) {
    const Truth same = same_kind(test, weld, rules, lacks);
    return same == Truth::yes && !welded_otherwise(weld, test).empty() ? Truth::no : same;
}

} // namespace beadbook
