#include "operations/rule_words.hpp"

#include "facts/plausibility.hpp"
#include "measure/text.hpp"
#include "operations/known_words.hpp"
#include "qualify/contradicting_words.hpp"

#include <algorithm>

namespace beadbook {
namespace {

constexpr std::string_view weld_fields[] = {
    "process",    "operation", "transfer",       "position", "progression", "rotated",     "joint",
    "form",       "sides",     "thickness",      "runs",     "thickness-2", "diameter",    "layers",
    "backing",    "filler",    "filler-group",   "welded",   "filler-type", "metal-group", "material",
    "joint-form", "seam",      "weld-thickness", "throat",   "fillet-size"};

/// A position that tells its progression by its name tells the one that is said beside it.
void check_progression(const CouponRecord &test, const std::string &position, const RuleWords &words) {
    const std::string why = progression_contradicted(position, test.get("progression"));
    if (why.empty()) return;
    for (const char *field : {"progression", "position"})
        if (words.contains(field)) throw refused(why).at(field).mend({"change", {test.id}, {field, "why"}});
}

/// A word of the rules that goes with the coupon's own words, and not with what else the coupon says.
void check_believable(const CouponRecord &before, const CouponRecord &test, const std::string &field) {
    const auto stood = Plausibility::shipped().of(before, Day{});
    for (const auto &one : Plausibility::shipped().of(test, Day{})) {
        const auto is = [&](const std::string &rule) { return rule == one.rule; };
        if (std::any_of(stood.begin(), stood.end(), [&](const Unlikely &was) { return is(was.rule); }) ||
            std::any_of(test.sure.begin(), test.sure.end(), is))
            continue;
        throw refused("coupon " + test.id + ", with " + field + " '" + shown(test.get(field)) +
                      "': " + one.reading)
            .at(field)
            .mend({"change", {test.id}, {field, "why"}});
    }
}

} // namespace

std::string progression_contradicted(const std::string &position, const std::string &progression) {
    const std::string by_position(progression_of(position));
    if (by_position.empty() || !contradict(Trait::progression, by_position, progression)) return "";
    return "position " + position + " is welded " + by_position + ", and progression is '" +
           shown(progression) + "'";
}

bool describes_weld(std::string_view field) {
    return std::find(std::begin(weld_fields), std::end(weld_fields), field) != std::end(weld_fields);
}

const std::vector<Trait> &rule_words() {
    static const std::vector<Trait> out{Trait::transfer,    Trait::position,    Trait::progression,
                                        Trait::rotated,     Trait::metal_group, Trait::filler_group,
                                        Trait::filler_type, Trait::backing,     Trait::runs};
    return out;
}

void take_rule_words(CouponRecord &test, const RuleWords &words, const RangeRules &rules) {
    const std::string position = test.get("position");
    for (const Trait trait : rule_words()) {
        const std::string field = field_of(trait);
        const auto given = words.find(field);
        if (given == words.end()) continue;
        const std::string own = test.get(field);
        const bool of_these_rules = knows_word(rules, trait, true, own);
        if (!own.empty() && own != given->second && (of_these_rules || contradict(trait, own, given->second)))
            throw refused("coupon " + test.id + " says " + field + " '" + shown(own) + "'" +
                          (of_these_rules ? "" : ", and that is not '" + shown(given->second) + "'"))
                .at(field)
                .mend({"change", {test.id}, {field, "why"}});
        const CouponRecord before = test;
        test.set(field, given->second);
        check_believable(before, test, field);
    }
    check_progression(test, test.get("position"), words);
    check_progression(test, position, words);
    // Told by the coupon's own word for the position: PJ, which these rules call 5G.
    const auto &known = rules.test_words[index_of(Trait::progression)];
    if (const std::string by_position(progression_of(position));
        words.contains("position") && test.get("progression").empty() &&
        std::find(known.begin(), known.end(), by_position) != known.end())
        test.set("progression", by_position);
}

RuleWords words_of_test(const CouponRecord &test) {
    RuleWords out;
    for (const Trait trait : rule_words())
        if (const std::string word = test.get(field_of(trait)); !word.empty()) out[field_of(trait)] = word;
    return out;
}

RuleWords words_beside(RuleWords words, const CouponRecord &coupon) {
    std::erase_if(words, [&](const auto &word) {
        const std::string own = coupon.get(word.first);
        return !own.empty() && own != word.second;
    });
    return words;
}

} // namespace beadbook
