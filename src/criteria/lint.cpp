#include "criteria/lint.hpp"

#include "criteria/class_order.hpp"
#include "criteria/doubts.hpp"

#include <algorithm>
#include <map>

namespace beadbook {
namespace {

void check_bands(const Table &table, Where where, Issues &issues, Doubts &doubts) {
    const std::string path = "tables." + table.name;
    const auto place = [&](const Table::Row &row) { return row.where.line > 0 ? row.where : where; };
    const Exact step = table.step > Exact(0) ? table.step : Exact(1);
    for (const auto &row : table.rows)
        for (const auto &low : row.band)
            for (const auto &high : row.band)
                if (!is_maximum(low.compare) && is_maximum(high.compare) &&
                    !(holds(low.value, high.compare, high.value) &&
                      holds(high.value, low.compare, low.value)) &&
                    !(low.value < high.value))
                    doubts.tell("empty-band", table.name, place(row), path,
                                "the band '" + row.text + "' holds nothing");
    std::vector<Exact> probes;
    for (const auto &row : table.rows)
        for (const auto &edge : row.band)
            for (const Exact &p : {edge.value - step, edge.value, edge.value + step}) probes.push_back(p);
    std::sort(probes.begin(), probes.end());
    const Table::Row *last = nullptr, *below = nullptr, *above = nullptr; // below and above the first hole
    bool missed = false;
    for (const Exact &probe : probes) {
        std::vector<const Table::Row *> in;
        for (const auto &row : table.rows)
            if (std::all_of(row.band.begin(), row.band.end(),
                            [&](const Table::Edge &e) { return holds(probe, e.compare, e.value); }))
                in.push_back(&row);
        if (in.size() > 1)
            return issues.error(place(*in[1]), path,
                                "the bands '" + in[0]->text + "' and '" + in[1]->text + "' overlap");
        if (!in.empty() && missed && last && !below) {
            below = last;
            above = in[0];
        }
        missed = in.empty();
        if (!missed) last = in[0];
    }
    if (below)
        doubts.tell("hole-in-table", table.name, place(*below), path,
                    "there is a hole between its bands '" + below->text + "' and '" + above->text +
                        "', where a size has no value");
}

/// Also of those that relevance or a window looks into; nobody looks into an unused one.
void check_tables(const CriteriaSet &set, Issues &issues, Doubts &doubts) {
    std::map<const Table *, Where> seen;
    for (const auto &table : set.tables) seen.emplace(table.get(), table->where);
    for (const auto &rule : set.rules)
        for (const auto &limit : rule.limits)
            for (const auto *table : limit.formula.tables())
                seen.emplace(table, table->where.line > 0 ? table->where : rule.where_from);
    for (const auto &one : seen)
        if (std::none_of(set.unused.begin(), set.unused.end(),
                         [&](const UnusedName &idle) { return idle.name == one.first->name; }))
            check_bands(*one.first, one.second, issues, doubts);
}

void check_merging(const CriteriaSet &set, Doubts &doubts) {
    for (const auto &rule : set.rules) {
        if (rule.kind != Rule::Kind::gap && rule.kind != Rule::Kind::count) continue;
        for (const auto &merge : set.merges)
            if ((merge.subject.types & rule.subject.types).any() &&
                (merge.subject.exams & rule.subject.exams).any())
                doubts.tell("merge-hides-spacing", rule.id, rule.where_from, "rules." + rule.id,
                            "merge '" + merge.id +
                                "' makes neighbours one before this rule counts or spaces them, so " +
                                "one indication more can mend a spacing");
    }
}

/// Everything that a part of the set that decides speaks of.
class Uses {
public:
    explicit Uses(const CriteriaSet &set) {
        for (const auto &part : set.scope) {
            add(part.only_if);
            add(part.when);
        }
        if (set.linear) add({*set.linear});
        for (const auto &one : set.relevance) add(one.ignore);
        for (const auto &one : set.merges) add({one.when});
        for (const auto &one : set.required) add(one.when);
        for (const auto &rule : set.rules) {
            add(rule.when);
            add(rule.where);
            add(rule.measure);
            for (const auto &window : rule.windows) add(window.length);
            if (rule.linked) add({*rule.linked});
            for (const auto &limit : rule.limits) add(limit.formula);
            if (rule.prorated) used_ |= std::uint64_t{1} << slot_of(Quantity::weld_length);
        }
    }
    bool has(Slot slot) const { return (used_ >> slot) & 1u; }

private:
    void add(const Formula &formula) {
        for (const Slot slot : formula.quantities()) used_ |= std::uint64_t{1} << slot;
    }
    void add(const std::vector<Condition> &conditions) {
        for (const auto &c : conditions) {
            add(c.left);
            for (const auto &edge : c.edges) add(edge.right);
        }
    }
    std::uint64_t used_ = 0;
};

/// What the author meant to limit and no rule speaks of.
void check_declared(const CriteriaSet &set, Doubts &doubts) {
    const Uses uses(set);
    for (const auto &one : set.unused)
        doubts.tell("unused-formula", one.name, one.where, one.path,
                    "nothing here speaks of '" + one.name + "'");
    for (const auto &one : set.blanks)
        if (std::none_of(one.classes.begin(), one.classes.end(), [](bool uses) { return uses; }))
            doubts.tell("unused-blank", one.id, one.where, "blanks." + one.id,
                        "no rule hangs on blank '" + one.id + "', so filling it would change nothing");
    for (const auto &one : set.declared)
        for (std::size_t q = coupon_quantities; q < quantity_count; ++q)
            if (info(static_cast<Quantity>(q)).name == one.name)
                doubts.tell("shadowed-measure", one.name, one.where, "quantities." + one.name,
                            "'" + one.name + "' is a measure of an imperfection too, and now means the " +
                                std::string(info(static_cast<Quantity>(one.slot)).name) +
                                " everywhere; give it another name");
    for (const auto &one : set.declared)
        if (!uses.has(one.slot))
            doubts.tell("unused-quantity", one.name, one.where, "quantities." + one.name,
                        "no rule speaks of '" + one.name + "' (" +
                            std::string(info(static_cast<Quantity>(one.slot)).name) +
                            "), so nothing is held against it");
}

} // namespace

bool speaks_of(const CriteriaSet &set, Quantity quantity) { return Uses(set).has(slot_of(quantity)); }

std::vector<Doubted> lint(const CriteriaSet &set, const SetBelow &below, const Vocabulary &vocabulary,
                          Issues &issues) {
    if (!set.scope_said)
        issues.warning(
            {1, 1}, "scope",
            "nothing says what the set covers, so no coupon lies outside it; list the parts, or write "
            "'scope: not read'");
    Doubts doubts(set, issues);
    check_shares(set, below, doubts);
    if (set.ordered && !tell_turned_order(set, issues)) {
        check_order(set, issues, doubts);
        check_order_elsewhere(set, doubts);
    }
    check_tables(set, issues, doubts);
    check_merging(set, doubts);
    check_conditions(set, vocabulary, doubts);
    check_rule_bands(set, doubts);
    check_band_ends(set, vocabulary, doubts);
    check_reach(set, doubts);
    check_coverage(set, vocabulary, doubts);
    check_relevance(set, vocabulary, doubts);
    check_open_classes(set, vocabulary, doubts);
    check_declared(set, doubts);
    check_belief(set, doubts);
    check_limit_belief(set, doubts);
    check_thin_walls(set, doubts);
    check_units(set, doubts);
    check_slips(set, below, doubts);
    check_windows(set, doubts);
    check_extents(set, vocabulary, doubts);
    check_loopholes(set, vocabulary, doubts);
    check_find_band_ends(set, vocabulary, doubts);
    check_sizes_of_some(set, vocabulary, doubts);
    check_unexamined(set, doubts);
    for (const auto &rule : set.rules)
        if (std::all_of(rule.limits.begin(), rule.limits.end(), [](const Limit &l) {
                return l.kind == Limit::Kind::not_said || l.kind == Limit::Kind::other;
            }))
            doubts.tell("no-class-has-a-limit", rule.id, rule.where_from, "rules." + rule.id,
                        "no class has a limit here; make it a gap instead");
    doubts.tell_needless();
    return doubts.unanswered();
}

std::vector<Uncovered> uncovered_types(const CriteriaSet &set, const Vocabulary &vocabulary) {
    std::vector<Uncovered> out;
    for (std::size_t e = 0; e < exam_count; ++e) {
        Uncovered one{static_cast<Exam>(e), {}};
        for (std::size_t t = 0; t < vocabulary.size(); ++t)
            if (!vocabulary[static_cast<TypeId>(t)].measured &&
                set.rules_for(static_cast<TypeId>(t), one.exam).empty())
                one.types.push_back(vocabulary[static_cast<TypeId>(t)].name);
        out.push_back(std::move(one));
    }
    return out;
}

} // namespace beadbook
