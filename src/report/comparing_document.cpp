#include "report/comparing_document.hpp"

#include "measure/print.hpp"
#include "measure/text.hpp"
#include "report/criteria_document.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// Two sides as they are called in headings and columns.
struct SideNames {
    std::string first, second;
};

SideNames side_names(const ComparedSets &all, const ComparedClasses &classes) {
    // Two editions, or two texts of one, bear one name.
    const bool alike = all.first->name == all.second->name && all.first->hash != all.second->hash;
    return {(alike ? "first " : "") + all.first->name + " " + all.first->classes[classes.first].id,
            (alike ? "second " : "") + all.second->name + " " + all.second->classes[classes.second].id};
}

/// Of the shortest way to write it exactly, in mm or in: rules name round numbers, and an edge may lie beside
/// one.
std::size_t digits_of(std::int64_t nm) {
    const auto digits = [](std::int64_t value) {
        while (value > 0 && value % 10 == 0) value /= 10;
        return std::to_string(value).size();
    };
    constexpr std::int64_t per_microinch_tenths = nm_per_inch / 100'000;
    const bool whole = nm * 10 % per_microinch_tenths == 0;
    return whole ? std::min(digits(nm), digits(nm * 10 / per_microinch_tenths)) : digits(nm);
}

std::string outcome_words(const ThicknessStretch &one, const SideNames &names) {
    const auto only_in = [](const std::string &name, const SaidOfThing &other) {
        return (other.kind == SaidOfThing::Kind::narrower ? "for all of these only in " : "only in ") + name;
    };
    switch (one.outcome) {
    case CompareOutcome::either: return "stricter for some, looser for others";
    case CompareOutcome::only_first: return only_in(names.first, one.second);
    case CompareOutcome::only_second: return only_in(names.second, one.first);
    default: return std::string(name_of(one.outcome));
    }
}

std::string thing_heading(const ComparedSets &all, const ComparedClasses &classes,
                          const ComparedThing &thing) {
    return types_in_words(thing.types) + ": " + thing_in_words(all, classes, thing) +
           (thing.conditions.empty() ? "" : ", where " + joined(thing.conditions, ", "));
}

Words side_cell(const ComparedSets &all, const CriteriaSet &set, std::size_t class_index,
                const SaidOfThing &said) {
    Words out(said_in_words(all, set, class_index, said));
    if (!said.by_a_rule()) return out;
    const Rule &rule = set.rules[said.rule];
    return out + Words(" [" + authority(rule.clause, rule.standings[class_index]) + "]", Tone::quiet);
}

std::string in_unit(Unit unit) { return unit == Unit::inch ? "inches" : "millimetres"; }

void add_table(Document &doc, const ComparedSets &all, const ComparedClasses &classes,
               const std::vector<const ComparedThing *> &things) {
    const SideNames names = side_names(all, classes);
    Grid table{{{"imperfection"}, {"thickness"}, {names.first}, {names.second}, {"comparison"}}, {}, true};
    for (const ComparedThing *thing : things) {
        std::string heading = thing_heading(all, classes, *thing);
        for (const auto &one : thing->stretches) {
            table.rows.push_back({heading, stretch_in_words(one, all.unit),
                                  side_cell(all, *all.first, classes.first, one.first),
                                  side_cell(all, *all.second, classes.second, one.second),
                                  Words(outcome_words(one, names),
                                        one.outcome == CompareOutcome::equal ? Tone::plain : Tone::strong)});
            heading.clear();
        }
    }
    doc.add(std::move(table));
}

void add_method(Document &doc, const ComparedSets &all, const ComparedClasses &classes, Exam exam) {
    const SideNames names = side_names(all, classes);
    const auto at = static_cast<std::size_t>(exam);
    std::vector<const ComparedThing *> differ, same;
    for (const auto &thing : classes.things)
        if (thing.exam == exam) (thing.all_equal() ? same : differ).push_back(&thing);
    if (differ.empty() && same.empty() && classes.only_first[at].none() && classes.only_second[at].none())
        return;
    doc.heading(names.first + " beside " + names.second + ", " + std::string(name_of(exam)), 2);
    if (differ.empty() && classes.only_first[at].none() && classes.only_second[at].none())
        doc.line("Every limit is equal at every thickness: " + std::to_string(same.size()) + " compared.");
    const std::string here = in_unit(all.unit),
                      there = in_unit(all.unit == Unit::inch ? Unit::millimetre : Unit::inch);
    const auto told = [&](const ComparedThing &thing) {
        return thing_heading(all, classes, thing) +
               (thing.differs_in_other_unit ? " (of work in " + here + " only: in " + there + " it differs)"
                                            : "");
    };
    if (!differ.empty()) add_table(doc, all, classes, differ);
    if (classes.only_first[at].any())
        doc.line("Only " + names.first + " has rules for " + types_in_words(classes.only_first[at]) + ".");
    if (classes.only_second[at].any())
        doc.line("Only " + names.second + " has rules for " + types_in_words(classes.only_second[at]) + ".");
    if (same.empty()) return;
    if (!differ.empty() || classes.only_first[at].any() || classes.only_second[at].any())
        doc.line("Equal at every thickness:");
    for (const ComparedThing *thing : same) doc.item(told(*thing));
}

template <class Say>
void add_only(Document &doc, const SideNames &names, const OnlyInOne &only, const std::string &what,
              Say say) {
    for (const std::size_t i : only.first)
        doc.item("only in " + names.first + ", " + what + ": " + say(false, i));
    for (const std::size_t i : only.second)
        doc.item("only in " + names.second + ", " + what + ": " + say(true, i));
}

/// All that a side leaves out: what differs says little without what stands beside it.
void add_not_counted(Document &doc, const CriteriaSet &set, std::size_t class_index,
                     const std::string &name) {
    bool any = false;
    for (const auto &one : set.relevance) {
        if (!one.classes[class_index]) continue;
        any = true;
        doc.item("not counted in " + name + ": " + one.text + ", of " + subject_words(one.subject) + " [" +
                 authority(one.clause, one.standing) + "]");
    }
    if (!any) doc.item("not counted in " + name + ": nothing, however small it is");
}

void add_rest(Document &doc, const ComparedSets &all, const ComparedClasses &classes) {
    if (!classes.rules.any() && !classes.scope.any() && !classes.required.any() && !classes.relevance.any() &&
        !classes.merges.any())
        return;
    const SideNames names = side_names(all, classes);
    const auto set = [&](bool of_second) -> const CriteriaSet & {
        return of_second ? *all.second : *all.first;
    };
    doc.heading(names.first + " beside " + names.second + ", what else is written otherwise", 2);
    add_only(doc, names, classes.scope, "what it covers", [&](bool s, std::size_t i) {
        const ScopePart &part = set(s).scope[i];
        const std::string only_if = condition_words(part.only_if);
        return part.text + (only_if.empty() ? "" : ", if " + only_if) + " [" +
               authority(part.clause, part.standing) + "]";
    });
    add_only(doc, names, classes.required, "required examination", [&](bool s, std::size_t i) {
        const RequiredExam &exam = set(s).required[i];
        std::vector<std::string> one_of;
        for (const Exam one : exam.one_of) one_of.emplace_back(name_of(one));
        const std::string when = condition_words(exam.when);
        return listed(one_of, "or") + (when.empty() ? "" : ", where " + when) + " [" +
               authority(exam.clause, exam.standing) + "]";
    });
    add_only(doc, names, classes.rules, "rule on the coupon or on several rules", [&](bool s, std::size_t i) {
        const Rule &rule = set(s).rules[i];
        const std::size_t k = s ? classes.second : classes.first;
        const std::string when = condition_words(rule.when);
        return (rule.title.empty() ? rule.id : rule.title) + (when.empty() ? "" : ", where " + when) + ": " +
               rule.limits[k].text + " [" + authority(rule.clause, rule.standings[k]) + "]";
    });
    if (classes.relevance.any()) {
        add_not_counted(doc, *all.first, classes.first, names.first);
        add_not_counted(doc, *all.second, classes.second, names.second);
    }
    add_only(doc, names, classes.merges, "neighbours that count as one", [&](bool s, std::size_t i) {
        const Merge &one = set(s).merges[i];
        return one.when.text + " [" + authority(one.clause, one.standing) + "]";
    });
}

} // namespace

namespace {

/// "any imperfection but not crack or overlap", where few are left out and no dimension is among them.
std::string most_in_words(const TypeSet &types) {
    constexpr std::size_t most_left_out = 6;
    const Vocabulary &all = Vocabulary::shipped();
    std::vector<std::string> without;
    for (std::size_t t = 0; t < all.size(); ++t) {
        const ImperfectionType &type = all[static_cast<TypeId>(t)];
        if (type.measured == types[t]) {
            if (type.measured) return "";
            if (!type.under || types[*type.under]) without.push_back(type.name);
        }
    }
    if (without.size() > most_left_out) return "";
    return "any imperfection" + (without.empty() ? "" : " but not " + listed(without, "or"));
}

} // namespace

std::string types_in_words(const TypeSet &types) {
    const Vocabulary &all = Vocabulary::shipped();
    if (types.count() == all.size()) return "any imperfection";
    if (const std::string most = most_in_words(types); !most.empty()) return most;
    std::vector<std::string> out;
    for (std::size_t t = 0; t < all.size(); ++t) {
        const ImperfectionType &type = all[static_cast<TypeId>(t)];
        if (!types[t] || (type.under && types[*type.under])) continue;
        std::vector<std::string> without; // kinds of it that are not among them
        for (std::size_t k = 0; k < all.size(); ++k) {
            const ImperfectionType &kind = all[static_cast<TypeId>(k)];
            if (!types[k] && kind.under && types[*kind.under] &&
                all.is_a(static_cast<TypeId>(k), static_cast<TypeId>(t)))
                without.push_back(kind.name);
        }
        out.push_back(type.name + (without.empty() ? "" : " but not " + listed(without, "or")));
    }
    return joined(out, "; ");
}

std::string thing_in_words(const ComparedSets &all, const ComparedClasses &classes,
                           const ComparedThing &thing) {
    const CriteriaSet &set = thing.of_second ? *all.second : *all.first;
    const Rule &rule = set.rules[thing.rule];
    if (rule.kind == Rule::Kind::presence) return "any occurrence";
    std::string out = measure_words(rule);
    if (const auto slot = rule.measure.text.empty() ? std::nullopt : rule.measure.lone_quantity())
        out = std::string(info(static_cast<Quantity>(*slot)).name);
    if (const Window *window = rule.window(thing.of_second ? classes.second : classes.first))
        out += window->kind == Window::Kind::whole_weld ? " over the whole weld" : " in any " + window->text;
    out += line_words(rule);
    if (rule.prorated) out += ", in proportion on a shorter weld";
    return out;
}

std::string stretch_in_words(const ThicknessStretch &stretch, Unit unit) {
    const auto shorter = [&](std::int64_t nm, const char *with, std::int64_t beside, const char *without) {
        const bool at = digits_of(nm) <= digits_of(beside);
        return (at ? with : without) + print_exact(Exact(at ? nm : beside), Dimension::length, unit);
    };
    if (stretch.to && *stretch.to == stretch.from)
        return "at " + print_exact(Exact(stretch.from), Dimension::length, unit);
    std::string out;
    if (stretch.from > 1) out = shorter(stretch.from, "from ", stretch.from - 1, "over ");
    if (stretch.to)
        out += (out.empty() ? "" : " ") + shorter(*stretch.to, "to ", *stretch.to + 1, "to under ");
    return out.empty() ? "any thickness" : out;
}

std::string said_in_words(const ComparedSets &all, const CriteriaSet &set, std::size_t class_index,
                          const SaidOfThing &said) {
    switch (said.kind) {
    case SaidOfThing::Kind::none: return "none";
    case SaidOfThing::Kind::free: return "no limit";
    case SaidOfThing::Kind::ask: return "a person decides";
    case SaidOfThing::Kind::not_said: return "not said";
    case SaidOfThing::Kind::gap: return "a known gap of the set";
    case SaidOfThing::Kind::narrower: return "only under further conditions";
    case SaidOfThing::Kind::no_rule: return "no such rule";
    case SaidOfThing::Kind::outside: return "outside what it covers";
    case SaidOfThing::Kind::measured: {
        const Rule &rule = set.rules[said.rule];
        return measure_words(rule) + " " + std::string(name_of(rule.compare)) + " " +
               rule.limits[class_index].text;
    }
    case SaidOfThing::Kind::no_row:
        return set.rules[said.rule].limits[class_index].text + ": no row for such a thickness";
    case SaidOfThing::Kind::blank:
        return set.rules[said.rule].limits[class_index].text + ": blank, to be filled from your copy";
    case SaidOfThing::Kind::value: break;
    }
    const Rule &rule = set.rules[said.rule];
    const auto number = [&](const Exact &value) { return print(value, rule.dimension(), all.unit); };
    std::string out = std::string(name_of(rule.compare)) + " " + rule.limits[class_index].text;
    for (const auto &named : set.formulas)
        if (named.name == rule.limits[class_index].text) out += " = " + named.text;
    for (const std::size_t other : said.also)
        out += ", and " + set.rules[other].limits[class_index].text + " by " + set.rules[other].id;
    const Formula &limit = rule.limits[class_index].formula;
    if (limit.is_constant())
        return all.unit == set.unit ? out : out + " (" + number(limit.constant_limit(rule.compare)) + ")";
    const std::string from = said.from ? number(*said.from) : "", to = said.to ? number(*said.to) : "";
    if (from.empty() && to.empty()) return out;
    if (to.empty()) return out + " (" + from + " and on)";
    if (from.empty()) return out + " (to " + to + ")";
    return out + " (" + (from == to ? from : from + " to " + to) + ")";
}

Document document_of(const ComparedSets &all) {
    Document doc;
    doc.title = all.first == all.second ? all.first->name + ", classes side by side"
                                        : all.first->name + " beside " + all.second->name;
    doc.heading(doc.title);
    doc.pair(all.first->name, all.first->title + " (" + all.first->edition + ")");
    if (all.first != all.second)
        doc.pair(all.second->name, all.second->title + " (" + all.second->edition + ")");
    doc.line(
        "Limit by limit, of two members as thick as that, welded through, to 1 m. An outcome is the first "
        "column's beside the second's, at these thicknesses only: of a set as a whole nothing is said. "
        "'or equal': the limits hang on the find itself or on facts that are not told.");
    for (const auto &classes : all.classes) {
        for (const Exam exam : all_exams()) add_method(doc, all, classes, exam);
        add_rest(doc, all, classes);
    }
    if (!all.otherwise.empty()) doc.heading("Of the sets as a whole, written otherwise", 2);
    for (const auto &one : all.otherwise) {
        const auto said = [](const std::string &text) { return text.empty() ? "nothing" : "'" + text + "'"; };
        doc.item(one.what + ": " + said(one.first) + " beside " + said(one.second));
    }
    return doc.caution();
}

} // namespace beadbook
