#include "operations/coupon_hints.hpp"

#include "criteria/lint.hpp"
#include "facts/coupon_weld.hpp"
#include "facts/deposits.hpp"
#include "judge/item.hpp"
#include "measure/text.hpp"
#include "operations/rule_words.hpp"
#include "operations/weld_through.hpp"
#include "qualify/range.hpp"

#include <algorithm>
#include <set>

namespace beadbook {
namespace {

std::shared_ptr<const CriteriaSet> criteria_of(Catalogue &catalogue, const CouponRecord &coupon) {
    if (coupon.get("criteria").empty()) return nullptr;
    try {
        return catalogue.criteria(coupon.get("criteria"));
    } catch (const Refusal &) {
        return nullptr; // a file that is gone: judging says so
    }
}

/// Shipped rules for welders that accept a test by the coupon's criteria: those that were made for tests, and
/// those of a class where the coupon tells a group that only rules for welders ask. Of others nobody can say
/// by which rules it will be asked.
std::vector<std::shared_ptr<const RangeRules>> rules_of_tests(Catalogue &catalogue,
                                                              const CouponRecord &coupon) {
    std::vector<std::shared_ptr<const RangeRules>> out;
    const auto set = coupon.get("purpose") == "practice" ? nullptr : criteria_of(catalogue, coupon);
    if (!set) return out;
    const std::string sought = coupon.get("class");
    const bool of_welder = !coupon.get("metal-group").empty() || !coupon.get("filler-group").empty();
    const auto goes_with = [&](const AcceptedBy &one) {
        const auto &classes = one.classes;
        return one.criteria == set->name &&
               (classes.empty() || (of_welder && (sought.empty() || std::find(classes.begin(), classes.end(),
                                                                              sought) != classes.end())));
    };
    for (const auto &name : shipped_range_rule_names())
        if (const auto rules = catalogue.rules(name);
            std::any_of(rules->accepted_by.begin(), rules->accepted_by.end(), goes_with))
            out.push_back(rules);
    return out;
}

/// A metal group that some rules know only in parts: II, where they have IIa and IIb. By the rules that the
/// coupon's criteria go with, or by all where nobody can say by which it will be asked.
std::vector<std::string> half_groups(Catalogue &catalogue, const CouponRecord &coupon) {
    std::vector<std::string> out;
    const std::string given = coupon.get("metal-group");
    if (given.empty()) return out;
    auto all = rules_of_tests(catalogue, coupon);
    if (all.empty())
        for (const auto &name : shipped_range_rule_names()) all.push_back(catalogue.rules(name));
    for (const auto &rules : all) {
        const auto &known = rules->test_words[index_of(Trait::metal_group)];
        std::vector<std::string> parts;
        for (const auto &word : known)
            if (word.starts_with(given) && word.size() == given.size() + 1 && word.back() >= 'a')
                parts.push_back(word);
        const bool whole = std::find(known.begin(), known.end(), given) != known.end();
        if (!whole && !parts.empty())
            out.push_back("metal-group " + shown(given) + " is none of " + rules->name + ", which has " +
                          listed(parts, "or") + ": by it such a test qualifies nobody");
    }
    return out;
}

/// The first word of the coupon in a trait that these rules do not know, as they say so; empty: they know it.
std::string word_not_known(const RangeRules &rules, Trait trait, const std::vector<Weld> &welds) {
    try {
        for (const auto &weld : welds)
            if (weld.knows(trait)) check_test_word(rules, trait, weld);
    } catch (const InputError &e) {
        return e.what();
    }
    return "";
}

/// Words that the rules which the coupon's criteria go with call otherwise: its test would qualify nobody.
std::vector<std::string> called_otherwise(Catalogue &catalogue, const CouponRecord &coupon) {
    std::vector<std::string> out;
    const auto all = rules_of_tests(catalogue, coupon);
    if (all.empty()) return out;
    const auto welds = welds_of(coupon);
    const auto &in_their_words = rule_words();
    for (std::size_t i = 0; i < word_traits; ++i) {
        const auto trait = static_cast<Trait>(i);
        if (coupon.get(field_of(trait)).empty()) continue;
        std::string why;
        std::vector<std::string> by;
        for (const auto &rules : all) {
            const std::string unknown = word_not_known(*rules, trait, welds);
            if (unknown.empty()) continue;
            if (why.empty()) why = unknown;
            by.push_back(rules->name);
        }
        if (by.empty()) continue;
        const bool may_be_given =
            std::find(in_their_words.begin(), in_their_words.end(), trait) != in_their_words.end();
        out.push_back(why + "; called so, the test qualifies nobody by " + listed(by, "or") +
                      (may_be_given ? ", unless their word for it is told when it is to qualify" : ""));
    }
    return out;
}

/// Exams that are called for on the coupon, and whose finds no rule of its criteria judges.
std::vector<std::string> judged_by_nothing(const CriteriaSet &set, const CouponRecord &record) {
    const Coupon coupon = record.facts();
    const auto judges = [&](const Rule &rule, std::size_t exam) {
        Missing ignored;
        return rule.kind != Rule::Kind::coupon && rule.kind != Rule::Kind::combine &&
               rule.subject.exams[exam] && holds_for(rule.when, coupon, {}, {}, ignored) != Truth::no;
    };
    std::vector<std::string> out;
    for (std::size_t exam = 0; exam < exam_count; ++exam)
        if (coupon.called_for[exam] && std::none_of(set.rules.begin(), set.rules.end(),
                                                    [&](const Rule &rule) { return judges(rule, exam); }))
            out.emplace_back(name_of(static_cast<Exam>(exam)));
    return out;
}

/// What the rules of the class that is sought, or of any, go by and the coupon does not tell.
Missing asked_of(const CriteriaSet &set, const CouponRecord &record, const std::set<Quantity> &told_already) {
    const Coupon coupon = record.facts();
    const auto sought = set.class_index(record.get("class"));
    Missing all;
    const auto decides = [&](const std::vector<Condition> &when) {
        Missing lacks;
        const Truth truth = holds_for(when, coupon, {}, {}, lacks);
        if (truth != Truth::no) all |= lacks;
        return truth != Truth::no;
    };
    const auto need = [&](const Formula &formula) {
        for (const Slot slot : formula.quantities()) all |= Missing::quantity(slot);
    };
    for (const auto &part : set.scope)
        if (decides(part.only_if)) decides(part.when);
    for (std::size_t k = 0; k < set.classes.size(); ++k) {
        if (sought && *sought != k) continue;
        for (const auto &required : set.required)
            if (required.classes[k]) decides(required.when);
        for (const auto &rule : set.rules) {
            if (rule.limits[k].kind == Limit::Kind::other || !decides(rule.when)) continue;
            if (rule.limits[k].kind == Limit::Kind::value) need(rule.limits[k].formula);
            if (const Window *window = rule.window(k)) need(window->length);
            if (rule.kind == Rule::Kind::each) need(rule.measure);
            if (rule.prorated) all |= lack_of(Quantity::weld_length);
            // Which finds it speaks of may hang on the weld, too.
            for (const auto &condition : rule.where) {
                if (condition.kind != Condition::Kind::comparison) continue;
                need(condition.left);
                for (const auto &edge : condition.edges) need(edge.right);
            }
        }
    }
    Missing own;
    for (std::size_t i = 0; i < quantity_count; ++i) {
        const auto quantity = static_cast<Quantity>(i);
        if (info(quantity).scope == Scope::coupon && !told_already.contains(quantity) &&
            all.has(lack_of(quantity)) && !coupon.values.has(quantity))
            own |= lack_of(quantity);
    }
    for (std::size_t i = 0; i < fact_count; ++i)
        if (const auto fact = static_cast<Fact>(i);
            all.has(lack_of(fact)) && coupon.said(static_cast<Slot>(i)) == 0)
            own |= lack_of(fact);
    return own;
}

} // namespace

std::vector<std::string> doubts_on(Catalogue &catalogue, const CouponRecord &coupon) {
    std::vector<std::string> out;
    const std::string joint = coupon.get("joint"), welded = coupon.get("welded");
    if (!coupon.get("fillet-size").empty() && !joint.empty() && joint != "fillet")
        out.push_back("a fillet size is of a fillet, and the joint is " + joint);
    if (!welded.empty() && parse_day(welded) > catalogue.outside().today())
        out.push_back("it is said to be welded on " + welded + ", which is to come");
    if (std::string less = deposits_under_weld(coupon); !less.empty()) out.push_back(std::move(less));
    const auto halves = half_groups(catalogue, coupon);
    out.insert(out.end(), halves.begin(), halves.end());
    for (auto &one : called_otherwise(catalogue, coupon))
        if (halves.empty() || !one.starts_with(info(Trait::metal_group).name)) out.push_back(std::move(one));
    if (const auto set = criteria_of(catalogue, coupon))
        if (const auto methods = judged_by_nothing(*set, coupon); !methods.empty())
            out.push_back("called for is " + listed(methods) + ", and " + set->name +
                          " has no rule for what that finds: any find leaves the verdict at cannot say");
    const std::string material = coupon.get("material");
    if (!material.empty() && !coupon.get("criteria").empty() &&
        coupon.facts().said(static_cast<Slot>(Fact::material)) == 0)
        out.push_back("material '" + shown(material) +
                      "' names no metal that criteria could ask for; write beside it which metal it is: " +
                      listed(info(Fact::material).words, "or"));
    return out;
}

std::vector<std::string> hints_on(Catalogue &catalogue, const CouponRecord &coupon) {
    std::vector<std::string> out;
    const auto set = criteria_of(catalogue, coupon);
    if (set && set->scope_not_read()) {
        const Coupon judged = coupon.facts();
        std::vector<std::string> untold;
        for (const Fact fact : {Fact::joint, Fact::material})
            if (judged.said(static_cast<Slot>(fact)) == 0 && coupon.get(std::string(info(fact).name)).empty())
                untold.emplace_back(info(fact).name);
        if (!untold.empty())
            out.push_back(set->name + " accepts nothing of a weld whose " + joined(untold, " and ") +
                          " nobody told");
    }
    const std::string thinner = thinner_text(coupon);
    std::set<Quantity> told;
    if (set && speaks_of(*set, Quantity::weld_thickness) && may_be_butt(coupon) && !thinner.empty() &&
        coupon.get("weld-thickness").empty()) {
        told.insert(Quantity::weld_thickness);
        out.push_back("weld-thickness is not said, and " + set->name +
                      " goes by it: if the butt is welded through it "
                      "is " +
                      thinner +
                      ", the thinner member (weld-thickness full); a weld that is not would "
                      "get limits too wide");
    }
    if (const Missing lacks = set ? asked_of(*set, coupon, told) : Missing{}; lacks.any())
        out.push_back("for a verdict " + set->name +
                      " may ask for what is not told yet: " + listed(names_of(lacks)));
    if (coupon.get("form") == "tube" && !coupon.get("joint").empty() && coupon.get("seam").empty())
        out.push_back("seam is not said: " +
                      std::string(goes_round(coupon.get("position"))
                                      ? "a tube in position " + coupon.get("position") + " has a girth seam"
                                      : "girth if the weld goes round the tube"));
    if (set && !coupon.fixed_unit())
        out.push_back("no unit is fixed for bare numbers, which are refused then: " + set->name +
                      " is written in " + std::string(name_of(set->unit)));
    return out;
}

} // namespace beadbook
