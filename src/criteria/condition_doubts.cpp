// Conditions that never hold, or always do.
#include "criteria/limit_order.hpp"
#include "criteria/own_measure.hpp"
#include "criteria/scoped_rule.hpp"
#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {
namespace {

Condition at_most(Quantity less, Quantity more) {
    Condition out;
    out.left = formula_of(less);
    out.edges = {{Compare::at_most, formula_of(more)}};
    return out;
}

/// Of an imperfection: its size is its largest dimension along the surface, and its length the longer side.
const std::vector<Condition> &by_its_sides() {
    static const std::vector<Condition> all{at_most(Quantity::width, Quantity::length),
                                            at_most(Quantity::length, Quantity::size),
                                            at_most(Quantity::width, Quantity::size)};
    return all;
}

/// Only then can its sides tell.
bool speaks_of_sides(const std::vector<Condition> &conditions) {
    return std::any_of(conditions.begin(), conditions.end(), [](const Condition &c) {
        return c.uses(slot_of(Quantity::width)) || c.uses(slot_of(Quantity::length)) ||
               c.uses(slot_of(Quantity::size));
    });
}

bool never_hold(std::vector<Condition> conditions, bool of_imperfections) {
    if (of_imperfections && speaks_of_sides(conditions))
        conditions.insert(conditions.end(), by_its_sides().begin(), by_its_sides().end());
    const auto never = [&](Unit unit) { return possible(where_hold(conditions, unit)) == false; };
    return never(Unit::inch) && never(Unit::millimetre);
}

/// Whatever is measured: what it denies cannot be.
bool always_holds(const Condition &c, bool of_imperfections) {
    if (c.kind != Condition::Kind::comparison) return false;
    return std::all_of(c.edges.begin(), c.edges.end(), [&](const Condition::Edge &edge) {
        Condition denied = c;
        const Compare opposite = edge.compare == Compare::over       ? Compare::at_most
                                 : edge.compare == Compare::at_least ? Compare::under
                                 : edge.compare == Compare::under    ? Compare::at_least
                                                                     : Compare::over;
        denied.edges = {{opposite, edge.right}};
        return never_hold({denied}, of_imperfections);
    });
}

void check_list(const std::vector<Condition> &conditions, bool of_imperfections, const std::string &of,
                Where where, const std::string &path, Doubts &doubts) {
    for (const auto &c : conditions)
        if (scope_of({c}).empty())
            return doubts.tell("empty-band", of, where, path, "'" + c.text + "' never holds");
    for (const auto &c : conditions)
        if (never_hold({c}, of_imperfections))
            return doubts.tell("never-together", of, where, path, "'" + c.text + "' never holds");
    for (std::size_t i = 0; i < conditions.size(); ++i)
        for (std::size_t k = i + 1; k < conditions.size(); ++k)
            if (scope_of({conditions[i], conditions[k]}).empty() ||
                never_hold({conditions[i], conditions[k]}, of_imperfections))
                return doubts.tell("never-together", of, where, path,
                                   "'" + conditions[i].text + "' and '" + conditions[k].text +
                                       "' never hold together");
    if (scope_of(conditions).empty() || never_hold(conditions, of_imperfections))
        return doubts.tell("never-together", of, where, path, "its conditions never hold all together");
}

/// In a gap it is how "of any size" is written.
void check_always(const std::vector<Condition> &conditions, bool of_imperfections, const std::string &of,
                  Where where, const std::string &path, Doubts &doubts) {
    for (const auto &c : conditions)
        if (always_holds(c, of_imperfections))
            return doubts.tell("always-holds", of, where, path,
                               "'" + c.text + "' holds always, so it asks for nothing: is the number right?");
}

/// Two words that no coupon has both of.
struct Apart {
    Fact fact;
    std::initializer_list<const char *> words;
    Fact other;
    std::initializer_list<const char *> other_words;
};
const Apart apart[] = {
    {Fact::seam, {"girth"}, Fact::form, {"sheet", "plate"}},
    {Fact::joint, {"groove", "plug"}, Fact::position, {"1F", "2F", "3F", "4F", "5F"}},
    {Fact::magnetic, {"yes"}, Fact::material, {"titanium", "aluminium", "magnesium", "copper", "zirconium"}},
};

/// It asks for nothing but these.
bool asks_for(const Condition &c, Fact fact, std::initializer_list<const char *> words) {
    if (c.kind != Condition::Kind::word || c.slot != static_cast<Slot>(fact)) return false;
    std::uint64_t all = 0;
    for (const char *word : words) all |= std::uint64_t{1} << word_index(info(fact), word);
    return (c.fitting & ~all) == 0;
}

/// Of the coupon, where own conditions and the scope ask for words that no coupon has both of.
void check_words_apart(const CriteriaSet &set, const std::vector<Condition> &own, const std::string &of,
                       Where where, const std::string &path, Doubts &doubts) {
    std::vector<Condition> all = own;
    for (const auto &part : set.scope)
        if (part.only_if.empty()) all.insert(all.end(), part.when.begin(), part.when.end());
    for (const auto &one : apart)
        for (std::size_t i = 0; i < all.size(); ++i)
            for (std::size_t k = 0; k < all.size(); ++k) {
                if ((i >= own.size() && k >= own.size()) || !asks_for(all[i], one.fact, one.words) ||
                    !asks_for(all[k], one.other, one.other_words))
                    continue;
                const auto said = [&](std::size_t n) {
                    return "'" + all[n].text + "'" + (n < own.size() ? "" : " of the scope");
                };
                return doubts.tell("never-together", of, where, path,
                                   said(i) + " and " + said(k) + " never hold together");
            }
}

/// `where: angle over 20 deg` of pores: nobody measures it, as what is judged of them is another measure.
void check_measures(const Rule &rule, const Vocabulary &vocabulary, Doubts &doubts) {
    const std::pair<OwnMeasure, Quantity> sides[] = {{OwnMeasure::depth, Quantity::depth},
                                                     {OwnMeasure::height, Quantity::height},
                                                     {OwnMeasure::angle, Quantity::angle}};
    for (const auto &c : rule.where)
        for (const auto &[measured, side] : sides) {
            if (!c.left.uses(slot_of(side))) continue;
            std::string name;
            bool never = true;
            for (std::size_t t = 0; t < vocabulary.size(); ++t) {
                if (!rule.subject.types[t]) continue;
                const OwnMeasure own = own_measure(vocabulary, static_cast<TypeId>(t));
                const bool another_side = own == OwnMeasure::depth || own == OwnMeasure::height ||
                                          own == OwnMeasure::angle ||
                                          (side == Quantity::angle && own == OwnMeasure::extent);
                never = never && own != measured && another_side;
                if (name.empty()) name = vocabulary[static_cast<TypeId>(t)].name;
            }
            if (never)
                return doubts.tell("measure-of-another", rule.id, rule.where_from, "rules." + rule.id,
                                   "'" + c.text + "' never holds: nobody measures the " +
                                       std::string(info(side).name) + " of " + name);
        }
}

bool of_imperfections(const Subject &subject) {
    const Vocabulary &words = Vocabulary::shipped();
    for (std::size_t t = 0; t < words.size(); ++t)
        if (subject.types[t] && words[static_cast<TypeId>(t)].measured) return false;
    return true;
}

/// Of one shape only, and its conditions leave none such, by what the set calls linear.
void check_shape(const CriteriaSet &set, const Rule &rule, Doubts &doubts) {
    if (rule.shape == Shape::unknown || !set.linear || set.linear->edges.size() != 1) return;
    const Condition::Edge &edge = set.linear->edges[0];
    const bool maximum = is_maximum(edge.compare), linear = rule.shape == Shape::linear;
    const bool itself = edge.compare == Compare::at_most || edge.compare == Compare::at_least;
    const auto never = [&](Unit unit) {
        const auto where = where_hold(conditions_of(set, rule), unit);
        if (possible(where) == false) return false; // told elsewhere
        const bool left_more = maximum != linear;   // what is left of it is to be the larger one
        const auto some = left_more
                              ? may_be_over(where, set.linear->left, edge.right, unit, linear != itself)
                              : may_be_over(where, edge.right, set.linear->left, unit, linear != itself);
        return some == false;
    };
    if (never(Unit::inch) && never(Unit::millimetre))
        doubts.tell("never-together", rule.id, rule.where_from, "rules." + rule.id,
                    "by its conditions no find is " + std::string(name_of(rule.shape)) + ", as '" +
                        set.linear->text + "' has it");
}

/// Exams that need a magnetic metal alone, of what is not magnetic.
void check_magnetic(const std::vector<Condition> &when, const ExamSet &exams, const std::string &of,
                    Where where, const std::string &path, Doubts &doubts) {
    std::vector<std::string> names;
    for (const Exam exam : all_exams())
        if (exams.test(static_cast<std::size_t>(exam))) {
            if (info(exam).needs_magnetic.empty()) return;
            names.emplace_back(name_of(exam));
        }
    if (names.empty()) return;
    const auto no = std::uint64_t{1} << word_index(info(Fact::magnetic), "no");
    for (const auto &c : when)
        if (c.kind == Condition::Kind::word && c.slot == static_cast<Slot>(Fact::magnetic) && c.fitting == no)
            doubts.tell("never-together", of, where, path,
                        "by " + listed(names) + " nothing is found where " + c.text);
}

} // namespace

void check_conditions(const CriteriaSet &set, const Vocabulary &vocabulary, Doubts &doubts) {
    for (const auto &rule : set.rules) {
        const std::string path = "rules." + rule.id;
        check_list(own_conditions(rule), of_imperfections(rule.subject), rule.id, rule.where_from, path,
                   doubts);
        check_always(own_conditions(rule), of_imperfections(rule.subject), rule.id, rule.where_from, path,
                     doubts);
        check_words_apart(set, rule.when, rule.id, rule.where_from, path, doubts);
        check_measures(rule, vocabulary, doubts);
        check_shape(set, rule, doubts);
        check_magnetic(rule.when, rule.subject.exams, rule.id, rule.where_from, path, doubts);
    }
    for (const auto &one : set.relevance)
        check_list(one.ignore, of_imperfections(one.subject), one.id, one.where_from, "relevance." + one.id,
                   doubts);
    for (const auto &one : set.required) {
        const std::string path = "required exams." + one.id;
        check_list(one.when, false, one.id, one.where_from, path, doubts);
        check_words_apart(set, one.when, one.id, one.where_from, path, doubts);
        ExamSet exams;
        for (const Exam exam : one.one_of) exams.set(static_cast<std::size_t>(exam));
        check_magnetic(one.when, exams, one.id, one.where_from, path, doubts);
    }
    for (const auto &gap : set.gaps) {
        std::vector<Condition> all = gap.when;
        all.insert(all.end(), gap.where.begin(), gap.where.end());
        check_list(all, gap.subject && of_imperfections(*gap.subject), gap.text, gap.where_from, "gaps",
                   doubts);
    }
}

} // namespace beadbook
