#include "operations/coupon_hints.hpp"

#include "criteria/lint.hpp"
#include "facts/coupon_weld.hpp"
#include "facts/deposits.hpp"
#include "judge/item.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <set>

namespace beadbook {
namespace {

/// The thinner of the members as it was written; empty if none is known.
std::string thinner_text(const CouponRecord &coupon) {
    const CouponValue *out = nullptr;
    for (const char *name : {"thickness", "thickness-2"})
        if (const auto at = coupon.fields.find(name); at != coupon.fields.end())
            if (!out || at->second.value < out->value) out = &at->second;
    return out ? out->text : "";
}

bool may_be_butt(const CouponRecord &coupon) {
    const std::string form = coupon.get("joint-form");
    return coupon.get("joint") == "groove" && (form.empty() || form == "butt");
}

std::shared_ptr<const CriteriaSet> criteria_of(Catalogue &catalogue, const CouponRecord &coupon) {
    if (coupon.get("criteria").empty()) return nullptr;
    try {
        return catalogue.criteria(coupon.get("criteria"));
    } catch (const Refusal &) {
        return nullptr; // a file that is gone: judging says so
    }
}

/// A metal group that some rules know only in parts: II, where they have IIa and IIb.
std::vector<std::string> half_groups(Catalogue &catalogue, const std::string &given) {
    std::vector<std::string> out;
    if (given.empty()) return out;
    for (const auto &name : shipped_range_rule_names()) {
        const auto &known = catalogue.rules(name)->test_words[index_of(Trait::metal_group)];
        std::vector<std::string> parts;
        for (const auto &word : known)
            if (word.starts_with(given) && word.size() == given.size() + 1 && word.back() >= 'a')
                parts.push_back(word);
        const bool whole = std::find(known.begin(), known.end(), given) != known.end();
        if (!whole && !parts.empty())
            out.push_back("metal-group " + shown(given) + " is none of " + name + ", which has " +
                          listed(parts, "or") + ": by it such a test qualifies nobody");
    }
    return out;
}

/// The first process of the coupon that these rules do not know, as they say so; empty: they know all.
std::string process_not_known(const RangeRules &rules, const std::vector<Weld> &welds) {
    try {
        for (const auto &weld : welds) check_word(rules, Trait::process, true, weld.word(Trait::process));
    } catch (const InputError &e) {
        return e.what();
    }
    return "";
}

/// A process that rules for welders call otherwise, on a coupon by the criteria of their test welds. Of other
/// criteria nobody can say by which rules it will be asked. Empty: there is none.
std::string process_called_otherwise(Catalogue &catalogue, const CouponRecord &coupon) {
    const bool test = !coupon.get("process").empty() && coupon.get("purpose") != "practice";
    const auto set = test ? criteria_of(catalogue, coupon) : nullptr;
    if (!set) return "";
    const auto made_for_tests = [&](const AcceptedBy &one) {
        return one.criteria == set->name && one.classes.empty();
    };
    std::string why;
    std::vector<std::string> by;
    for (const auto &name : shipped_range_rule_names()) {
        const auto rules = catalogue.rules(name);
        if (std::none_of(rules->accepted_by.begin(), rules->accepted_by.end(), made_for_tests)) continue;
        const std::string unknown = process_not_known(*rules, welds_of(coupon));
        if (unknown.empty()) continue;
        if (why.empty()) why = unknown;
        by.push_back(name);
    }
    return why.empty() ? "" : why + "; called so, the test qualifies nobody by " + listed(by, "or");
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

std::string through_thickness(const CouponRecord &coupon) {
    if (!may_be_butt(coupon))
        throw refused("weld-thickness full: only of a groove weld in a butt it is the thinner member")
            .at("weld-thickness");
    std::string out = thinner_text(coupon);
    if (out.empty())
        throw refused("weld-thickness full: the thickness of the members is not known").at("weld-thickness");
    if (coupon.get("thickness").empty())
        throw refused("weld-thickness full: thickness-2 is " + out +
                      ", and the other member may be thinner; which thickness has it?")
            .give("thickness");
    return out;
}

std::vector<std::string> doubts_on(Catalogue &catalogue, const CouponRecord &coupon) {
    std::vector<std::string> out;
    const std::string joint = coupon.get("joint"), welded = coupon.get("welded");
    if (!coupon.get("fillet-size").empty() && !joint.empty() && joint != "fillet")
        out.push_back("a fillet size is of a fillet, and the joint is " + joint);
    if (!welded.empty() && parse_day(welded) > catalogue.outside().today())
        out.push_back("it is said to be welded on " + welded + ", which is to come");
    if (std::string less = deposits_under_weld(coupon); !less.empty()) out.push_back(std::move(less));
    for (auto &one : half_groups(catalogue, coupon.get("metal-group"))) out.push_back(std::move(one));
    if (std::string one = process_called_otherwise(catalogue, coupon); !one.empty())
        out.push_back(std::move(one));
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
            if (judged.said(static_cast<Slot>(fact)) == 0) untold.emplace_back(info(fact).name);
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
    if (coupon.get("form") == "tube" && coupon.get("joint") == "groove" && coupon.get("seam").empty())
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
