#include "operations/compared_side.hpp"

#include "criteria/pieces.hpp"
#include "operations/at_thickness.hpp"

#include <algorithm>

namespace beadbook {
namespace {

using SaidKind = SaidOfThing::Kind;
constexpr std::int64_t thickest_nm = 1000 * nm_per_mm;

std::string in_base_units(const Exact &value) {
    return std::to_string(static_cast<long long>(value.num())) + "/" + std::to_string(value.den());
}

/// Compared are two members of one thickness, welded through.
std::string own_words(Quantity quantity) {
    const bool is_thickness = quantity == Quantity::thinner || quantity == Quantity::thicker ||
                              quantity == Quantity::weld_thickness;
    return is_thickness ? "thickness" : std::string(info(quantity).name);
}

std::string own_words(const Formula &formula, std::size_t at) {
    const Formula::Node &node = formula.nodes()[at];
    switch (node.op) {
    case Formula::Op::constant: return in_base_units(node.constant);
    case Formula::Op::quantity: return own_words(static_cast<Quantity>(node.quantity));
    case Formula::Op::table: return "table " + node.table->name;
    case Formula::Op::blank: return "blank " + std::to_string(node.quantity);
    default: break;
    }
    std::string left = own_words(formula, node.left), right = own_words(formula, node.right);
    const bool either_way =
        node.op != Formula::Op::subtract && node.op != Formula::Op::divide && node.op != Formula::Op::twin;
    if (either_way && right < left) std::swap(left, right);
    return "(" + std::to_string(static_cast<int>(node.op)) + " " + left + " " + right + ")";
}

/// The same for two authors who call a quantity otherwise, or write a value in another unit.
std::string own_words(const Formula &formula) {
    return formula.nodes().empty() ? "" : own_words(formula, formula.nodes().size() - 1);
}

std::string own_words(const Condition &c) {
    if (c.kind == Condition::Kind::word)
        return c.subject + (c.denied ? " is not " : " is ") + std::to_string(c.fitting);
    if (c.kind != Condition::Kind::comparison) return c.text;
    std::string out = own_words(c.left);
    for (const auto &edge : c.edges)
        out += " " + std::string(name_of(edge.compare)) + " " + own_words(edge.right);
    return out;
}

std::string measure_of(const Rule &rule, std::size_t class_index) {
    std::string out;
    switch (rule.kind) {
    case Rule::Kind::presence: return std::string(any_occurrence);
    case Rule::Kind::coupon:
    case Rule::Kind::combine: return rule.title;
    case Rule::Kind::each: out = own_words(rule.measure); break;
    case Rule::Kind::gap: out = "gap"; break;
    case Rule::Kind::sum: out = "sum of " + std::string(info(rule.summed).name); break;
    case Rule::Kind::count: out = "count"; break;
    }
    if (const Window *window = rule.window(class_index)) {
        out += "|" + std::to_string(static_cast<int>(window->kind)) + " ";
        out += window->kind == Window::Kind::length ? own_words(window->length)
               : window->kind == Window::Kind::area
                   ? in_base_units(window->area) + " " + in_base_units(window->longest_side)
                   : "";
    }
    if (rule.linked) out += "|line " + own_words(*rule.linked) + " " + std::to_string(rule.least_group);
    if (rule.as_rectangles) out += "|as rectangles";
    if (rule.prorated) out += "|in proportion";
    return out + (is_maximum(rule.compare) ? "|at most" : "|at least");
}

bool told_by(const Coupon &coupon, const Formula &formula) {
    const auto all = formula.quantities();
    return std::all_of(all.begin(), all.end(), [&](Slot slot) {
        return slot < coupon_quantities && coupon.values.has(static_cast<Quantity>(slot));
    });
}

bool told_by(const Coupon &coupon, const Condition &c) {
    if (c.kind == Condition::Kind::word) return coupon.said(c.slot) != 0;
    return told_by(coupon, c.left) && std::all_of(c.edges.begin(), c.edges.end(), [&](const auto &edge) {
               return told_by(coupon, edge.right);
           });
}

ComparedRule compared(const CriteriaSet &set, std::size_t index, std::size_t class_index,
                      const Coupon &facts) {
    const Rule &rule = set.rules[index];
    ComparedRule out{index, measure_of(rule, class_index), {}, {}, {}, true};
    out.on_finds = rule.kind != Rule::Kind::coupon && rule.kind != Rule::Kind::combine;
    const auto need = [&](const std::string &own, const std::string &told) {
        out.needs.push_back(own);
        out.told.push_back(told);
    };
    for (const auto &c : rule.when)
        if (!told_by(facts, c)) {
            need(own_words(c), c.text);
            out.of_coupon.push_back(c);
        }
    for (const auto &c : rule.where) need(own_words(c), c.text);
    if (rule.shape != Shape::unknown)
        need(std::string(name_of(rule.shape)), std::string(name_of(rule.shape)));
    if (rule.only_with) {
        const std::string words = "only together with " + set.rules[*rule.only_with].id;
        need(words, words);
    }
    std::sort(out.needs.begin(), out.needs.end());
    return out;
}

/// none, a person, not said, a number, no limit: what is before decides over what comes behind.
int rank_of(SaidKind kind) {
    switch (kind) {
    case SaidKind::none: return 0;
    case SaidKind::ask: return 1;
    case SaidKind::not_said:
    case SaidKind::gap:
    case SaidKind::no_row:
    case SaidKind::blank: return 2;
    case SaidKind::value:
    case SaidKind::measured: return 3;
    case SaidKind::free: return 4;
    case SaidKind::narrower: return 5;
    case SaidKind::no_rule:
    case SaidKind::outside: break;
    }
    return 6;
}

SaidKind kind_of(const Limit &limit) {
    switch (limit.kind) {
    case Limit::Kind::value: return SaidKind::value;
    case Limit::Kind::none: return SaidKind::none;
    case Limit::Kind::free: return SaidKind::free;
    case Limit::Kind::ask: return SaidKind::ask;
    case Limit::Kind::not_said:
    case Limit::Kind::other: break;
    }
    return SaidKind::not_said;
}

/// "At most 0", or "under 1", of what is counted one by one.
bool allows_none(const Rule &rule, const Exact &limit) {
    return rule.kind == Rule::Kind::count && rule.least_group == 1 &&
           most_counted(limit, rule.compare) < Exact(1);
}

/// Where a sum is 0 over the thickness, all else as the facts tell; nothing where they do not.
void add_root(const Linear &sum, const Coupon &facts, std::vector<std::int64_t> &out) {
    Exact slope, rest = sum.constant;
    for (const auto &[slot, factor] : sum.factors) {
        const auto q = static_cast<Quantity>(slot);
        if (q == Quantity::thinner || q == Quantity::thicker || q == Quantity::weld_thickness)
            slope = slope + factor;
        else if (slot < coupon_quantities && facts.values.has(q))
            rest = rest + factor * Exact(facts.values[q]);
        else
            return;
    }
    if (slope == Exact(0)) return;
    const Exact root = Exact(0) - rest / slope;
    if (root < Exact(1) || root > Exact(thickest_nm)) return;
    const auto near = static_cast<std::int64_t>(root.rounded());
    for (const std::int64_t nm : {near - 1, near, near + 1})
        if (nm >= 1 && nm <= thickest_nm) out.push_back(nm);
}

void add_roots(const Alternatives &all, const Coupon &facts, std::vector<std::int64_t> &out) {
    for (const auto &some : all)
        for (const auto &one : some) add_root(one.sum, facts, out);
}

} // namespace

ComparedSide::ComparedSide(const CriteriaSet &set, std::size_t class_index, const Coupon &facts, Unit unit)
    : set_(set), class_(class_index), unit_(unit) {
    for (std::size_t i = 0; i < set.rules.size(); ++i) rules_.push_back(compared(set, i, class_index, facts));
}

std::vector<std::size_t> ComparedSide::rules_for(TypeId type, Exam exam) const {
    std::vector<std::size_t> out;
    for (const std::uint16_t index : set_.rules_for(type, exam))
        if (limit(index).kind != Limit::Kind::other && rules_[index].on_finds) out.push_back(index);
    return out;
}

std::vector<std::size_t> ComparedSide::gaps_for(TypeId type, Exam exam) const {
    std::vector<std::size_t> out;
    for (std::size_t i = 0; i < set_.gaps.size(); ++i) {
        const Gap &gap = set_.gaps[i];
        if (gap.subject && gap.subject->covers(type, exam) && gap.classes[class_]) out.push_back(i);
    }
    return out;
}

SaidOfThing ComparedSide::stricter_of(const SaidOfThing &a, const SaidOfThing &b,
                                      const Coupon &coupon) const {
    if (rank_of(a.kind) != rank_of(b.kind)) return rank_of(a.kind) < rank_of(b.kind) ? a : b;
    if (a.kind != SaidKind::value) return a;
    const LimitRelation relation = limit_relation({set_.rules[a.rule], limit(a.rule).formula},
                                                  {set_.rules[b.rule], limit(b.rule).formula}, coupon, unit_);
    const bool second = relation == LimitRelation::looser || relation == LimitRelation::never_stricter;
    SaidOfThing out = second ? b : a;
    out.also = a.also;
    out.also.insert(out.also.end(), b.also.begin(), b.also.end());
    if (relation == LimitRelation::either || relation == LimitRelation::unknown) out.also.push_back(b.rule);
    return out;
}

SaidOfThing ComparedSide::said(const std::string &measure, const std::vector<std::string> &needs,
                               const std::vector<std::size_t> &rules, const std::vector<std::size_t> &gaps,
                               const std::vector<Coupon> &coupons) const {
    const Coupon &coupon = coupons.front(); // they differ in words alone
    SaidOfThing out;
    bool any_rule = false; // of whatever is measured
    if (std::all_of(coupons.begin(), coupons.end(),
                    [&](const Coupon &one) { return outside_scope(set_, one); })) {
        out.kind = SaidKind::outside;
        return out;
    }
    for (const std::size_t index : rules) {
        const ComparedRule &one = rules_[index];
        const Rule &rule = set_.rules[index];
        const SaidKind kind = kind_at(index, coupon);
        const bool same = one.measure == measure;
        const bool here = std::any_of(coupons.begin(), coupons.end(), [&](const Coupon &such) {
            return truth_for(rule.when, such) != Truth::no;
        });
        any_rule = any_rule || here;
        // What forbids a find, or leaves it open, does so whatever is measured of it.
        const bool of_any = kind == SaidKind::none || rule.kind == Rule::Kind::presence;
        if (!here || (!same && !of_any && measure != any_occurrence)) continue;
        const bool applies = std::includes(needs.begin(), needs.end(), one.needs.begin(), one.needs.end());
        // Whatever measures it, beside one that forbids or allows it whatever it measures.
        const bool by_measure = applies && !same && !of_any;
        if (by_measure && kind != SaidKind::value) continue;
        if (!applies && !same && !of_any && measure != any_occurrence) continue;
        SaidOfThing said;
        said.kind = by_measure ? SaidKind::measured : applies ? kind : SaidKind::narrower;
        said.rule = applies ? index : 0;
        out = stricter_of(out, said, coupon);
    }
    for (const std::size_t index : gaps) {
        const Gap &gap = set_.gaps[index];
        const bool any_find = gap.where.empty() && gap.shape == Shape::unknown;
        const auto in_gap = [&](const Coupon &such) { return truth_for(gap.when, such) == Truth::yes; };
        const bool speaks =
            gap.beside_rules ? any_find && std::all_of(coupons.begin(), coupons.end(), in_gap) : !any_rule;
        if (!speaks) continue;
        SaidOfThing said;
        said.kind = SaidKind::gap;
        out = stricter_of(out, said, coupon);
    }
    return out;
}

SaidKind ComparedSide::kind_at(std::size_t index, const Coupon &coupon) const {
    const SaidKind kind = kind_of(limit(index));
    if (kind != SaidKind::value) return kind;
    const Window *window = set_.rules[index].window(class_);
    const bool open_window = window && window->kind == Window::Kind::length && window->length.has_blanks();
    const Evaluated value =
        limit(index).formula.limit(Environment{coupon.values, nullptr}, set_.rules[index].compare);
    if (open_window || value.missing.has(Missing::blank())) return SaidKind::blank;
    if (value.missing.has(Missing::table_value())) return SaidKind::no_row;
    return value.known() && allows_none(set_.rules[index], value.value) ? SaidKind::none : kind;
}

std::optional<Exact> ComparedSide::number(const SaidOfThing &said, const Coupon &coupon) const {
    if (said.kind != SaidKind::value) return std::nullopt;
    const Evaluated value =
        limit(said.rule).formula.limit(Environment{coupon.values, nullptr}, set_.rules[said.rule].compare);
    return value.known() ? std::optional(value.value) : std::nullopt;
}

std::vector<std::int64_t> ComparedSide::edges(const std::vector<std::size_t> &rules,
                                              const std::vector<std::size_t> &gaps,
                                              const Coupon &facts) const {
    std::vector<std::int64_t> out;
    for (const auto &part : set_.scope) {
        add_roots(where_hold(part.only_if, unit_), facts, out);
        add_roots(where_hold(part.when, unit_), facts, out);
    }
    for (const std::size_t index : gaps) add_roots(where_hold(set_.gaps[index].when, unit_), facts, out);
    for (const std::size_t index : rules) {
        add_roots(where_hold(set_.rules[index].when, unit_), facts, out);
        if (limit(index).kind != Limit::Kind::value) continue;
        if (const auto pieces = pieces_of(limit(index).formula, unit_))
            for (const auto &piece : *pieces) add_roots({piece.where}, facts, out);
    }
    return out;
}

} // namespace beadbook
