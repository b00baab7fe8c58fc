#include "qualify/range_rules.hpp"

#include "criteria/provenance.hpp"
#include "criteria/shipped.hpp"
#include "criteria/weld_words.hpp"
#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// What the rules call the process that a word means: GTAW where they want ISO 4063 numbers, or the reverse.
std::string same_process(const std::string &word, const std::vector<std::string> &known) {
    const std::string_view called = process_called(word);
    std::vector<std::string> out;
    if (!called.empty())
        for (const auto &one : known)
            if (process_called(one) == called)
                out.push_back(one + (one == "141"   ? " (with filler)"
                                     : one == "142" ? " (without filler)"
                                                    : ""));
    if (out.empty()) return did_you_mean(word, known);
    const bool said_of_itself = out.size() == 1 && out.front() == called;
    return "; " + (said_of_itself ? shown(word) : std::string(called)) + " is here " + listed(out, "or");
}

bool named_as_shipped(const RangeRules &rules) {
    const auto &names = shipped_range_rule_names();
    return std::binary_search(names.begin(), names.end(), rules.name);
}

bool is_shipped(const RangeRules &rules) {
    return named_as_shipped(rules) && rules.text == shipped_file("welder/" + rules.name + ".yaml");
}

} // namespace

std::vector<std::string> RangeRules::not_known() const {
    std::vector<std::string> out;
    if (exams.empty()) out.emplace_back("which examinations a test weld needs");
    if (accepted_by.empty()) out.emplace_back("what a test weld is accepted by");
    return out;
}

std::vector<const RangeRule *> RangeRules::rules_of(Trait trait) const {
    std::vector<const RangeRule *> out;
    for (const auto &rule : rules)
        if (rule.of == trait) out.push_back(&rule);
    for (const auto &one : unread)
        if (one.variable.of == trait) out.insert(out.end(), {&one.own, &one.rest});
    return out;
}

const ValidityWay *RangeRules::way(std::string_view id) const {
    const auto found =
        std::find_if(validity.begin(), validity.end(), [&](const ValidityWay &w) { return w.id == id; });
    return found == validity.end() ? nullptr : &*found;
}

std::string print(const AcceptedBy &one) {
    return one.criteria + (one.classes.empty() ? "" : ", class " + listed(one.classes, "or"));
}

bool RangeRules::accepts(std::string_view criteria, std::string_view class_id) const {
    return accepted_by.empty() ||
           std::any_of(accepted_by.begin(), accepted_by.end(), [&](const AcceptedBy &one) {
               return one.criteria == criteria &&
                      (one.classes.empty() ||
                       std::find(one.classes.begin(), one.classes.end(), class_id) != one.classes.end());
           });
}

bool knows_word(const RangeRules &rules, Trait trait, bool of_test, const std::string &word) {
    const auto &known = (of_test ? rules.test_words : rules.work_words)[index_of(trait)];
    return known.empty() || std::find(known.begin(), known.end(), word) != known.end();
}

void check_word(const RangeRules &rules, Trait trait, bool of_test, const std::string &word) {
    if (knows_word(rules, trait, of_test, word)) return;
    const auto &known = (of_test ? rules.test_words : rules.work_words)[index_of(trait)];
    std::string hint = trait == Trait::process ? same_process(word, known) : did_you_mean(word, known);
    // 6G is no slip of PG.
    const std::string position(trait == Trait::position ? position_called(word) : "");
    if (!hint.empty() && !position.empty() && std::find(known.begin(), known.end(), position) == known.end())
        hint = "; it is another position than these";
    throw InputError(std::string(info(trait).name) + ": '" + shown(word) + "' is not known to " + rules.name +
                     (of_test ? " for a test" : " for work") + "; expected " + listed(known, "or") + hint);
}

std::string uncovered_metal(const RangeRules &rules, std::string_view material) {
    const WordBits named = materials_in(material);
    if (rules.base_metals.empty() || named == 0) return "";
    for (const auto &metal : rules.base_metals)
        if ((named & materials_in(metal)) != 0) return "";
    return "material: '" + shown(material) + "' is not covered by " + rules.name + ", which is for " +
           listed(rules.base_metals);
}

std::string RangeRules::own_file_words() const {
    return is_shipped(*this) ? "" : beadbook::own_file_words("rules", name, named_as_shipped(*this), hash);
}

std::string RangeRules::own_file_mark() const {
    return is_shipped(*this) ? "" : beadbook::own_file_mark(named_as_shipped(*this), hash);
}

} // namespace beadbook
