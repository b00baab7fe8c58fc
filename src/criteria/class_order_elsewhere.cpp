// The order of classes beyond the two limits of one rule: where they are held in stretches of their own,
// where one is left open that a looser one forbids, in relevance, and across rules that share the classes.
#include "criteria/class_order.hpp"
#include "criteria/limit_order.hpp"

#include <algorithm>

namespace beadbook {
namespace {

Formula stretch_of(const Window &window) {
    return window.kind == Window::Kind::length ? window.length : formula_of(Quantity::weld_length);
}

bool may_exceed(const CriteriaSet &set, const Rule &rule, const Formula &one, const Formula &other,
                bool strictly) {
    const auto units = units_to_try(set, rule);
    return std::any_of(units.begin(), units.end(), [&](Unit unit) {
        return may_be_over(where_hold(conditions_of(set, rule), unit), one, other, unit, strictly) == true;
    });
}

class OrderElsewhere {
public:
    OrderElsewhere(const CriteriaSet &set, Doubts &doubts) : set_(set), doubts_(doubts) {}

    void check() {
        for (const auto &rule : set_.rules)
            for (std::size_t c = 0; c + 1 < set_.classes.size(); ++c)
                if (open_beside_forbidden(rule, c) || in_shorter_stretch(rule, c)) break;
        for (const auto &one : set_.relevance) check_relevance(one);
        std::vector<const Rule *> partly; // for some of the classes only
        for (const auto &rule : set_.rules)
            if (std::any_of(rule.limits.begin(), rule.limits.end(),
                            [](const Limit &l) { return l.kind == Limit::Kind::other; }))
                partly.push_back(&rule);
        for (std::size_t b = 1; b < partly.size(); ++b)
            for (std::size_t a = 0; a < b; ++a) check_shared(*partly[a], *partly[b]);
    }

private:
    std::string stricter(std::size_t c, std::size_t than) const {
        return "class " + set_.classes[c].id + ", which should be stricter than class " +
               set_.classes[than].id + ", ";
    }
    void tell(const Rule &rule, const std::string &text) {
        doubts_.tell("class-order", rule.id, rule.where_from, "rules." + rule.id, text);
    }

    bool open_beside_forbidden(const Rule &rule, std::size_t c) {
        const Limit &strict = rule.limits[c], &loose = rule.limits[c + 1];
        const bool person = strict.kind == Limit::Kind::ask;
        if ((!person && strict.kind != Limit::Kind::not_said) || loose.kind != Limit::Kind::none)
            return false;
        tell(rule, stricter(c, c + 1) + (person ? "leaves to a person" : "does not say") +
                       " what that one forbids");
        return true;
    }

    /// As much in less of the weld is more.
    bool in_shorter_stretch(const Rule &rule, std::size_t c) {
        if (!rule.window_by_class || rule.limits[c].kind != Limit::Kind::value ||
            rule.limits[c + 1].kind != Limit::Kind::value)
            return false;
        const Window &own = rule.windows[c], &other = rule.windows[c + 1];
        if (own.kind == Window::Kind::area || other.kind == Window::Kind::area) return false;
        if (!may_exceed(set_, rule, stretch_of(other), stretch_of(own), true) ||
            !may_exceed(set_, rule, rule.limits[c].formula, rule.limits[c + 1].formula, false))
            return false;
        tell(rule, stricter(c, c + 1) + "allows no less, and holds it in a shorter stretch");
        return true;
    }

    /// What a stricter class leaves out must not count for a looser one.
    void check_relevance(const Relevance &one) {
        for (std::size_t c = 0; c + 1 < set_.classes.size(); ++c) {
            if (!one.classes[c] || one.classes[c + 1]) continue;
            const auto instead = [&](const Relevance &other) {
                return other.classes[c + 1] && (one.subject.types & ~other.subject.types).none() &&
                       (one.subject.exams & ~other.subject.exams).none();
            };
            const auto judged = [&](const Rule &rule) {
                const Limit::Kind loose = rule.limits[c + 1].kind;
                return (rule.subject.types & one.subject.types).any() &&
                       (rule.subject.exams & one.subject.exams).any() &&
                       (loose == Limit::Kind::value || loose == Limit::Kind::none);
            };
            if (std::any_of(set_.relevance.begin(), set_.relevance.end(), instead) ||
                std::none_of(set_.rules.begin(), set_.rules.end(), judged))
                continue;
            return doubts_.tell("class-order", one.id, one.where_from, "relevance." + one.id,
                                stricter(c, c + 1) + "leaves out what counts for that one");
        }
    }

    /// Two rules that differ in nothing but their limits, each for some of the classes.
    void check_shared(const Rule &a, const Rule &b) {
        if (!measures_the_same(a, b)) return;
        for (std::size_t c = 0; c + 1 < set_.classes.size(); ++c)
            for (const auto &[one, other] : {std::pair{&a, &b}, {&b, &a}}) {
                const bool apart = one->limits[c + 1].kind == Limit::Kind::other &&
                                   other->limits[c].kind == Limit::Kind::other;
                if (!apart || !lets_more(*one, one->limits[c], other->limits[c + 1])) continue;
                return tell(*one, stricter(c, c + 1) + "lets more through than rule '" + other->id +
                                      "' does for that one");
            }
    }
    static bool measures_the_same(const Rule &a, const Rule &b) {
        const auto same_texts = [](const std::vector<Condition> &x, const std::vector<Condition> &y) {
            return std::equal(x.begin(), x.end(), y.begin(), y.end(),
                              [](const Condition &p, const Condition &q) { return p.text == q.text; });
        };
        const auto same_windows = [](const Rule &x, const Rule &y) {
            return std::equal(x.windows.begin(), x.windows.end(), y.windows.begin(), y.windows.end(),
                              [](const Window &p, const Window &q) { return p.text == q.text; });
        };
        const bool on_finds = a.kind != Rule::Kind::combine && a.kind != Rule::Kind::coupon;
        return on_finds && a.kind == b.kind && a.compare == b.compare && a.summed == b.summed &&
               a.measure.text == b.measure.text && a.shape == b.shape && a.prorated == b.prorated &&
               a.as_rectangles == b.as_rectangles && a.least_group == b.least_group &&
               (a.linked ? a.linked->text : "") == (b.linked ? b.linked->text : "") && same_windows(a, b) &&
               a.subject.types == b.subject.types && a.subject.exams == b.subject.exams &&
               same_texts(a.when, b.when) && same_texts(a.where, b.where) && !a.only_with && !b.only_with;
    }
    bool lets_more(const Rule &rule, const Limit &strict, const Limit &loose) const {
        const auto place = [](const Limit &l) {
            return l.kind == Limit::Kind::none    ? 0
                   : l.kind == Limit::Kind::value ? 1
                   : l.kind == Limit::Kind::free  ? 2
                                                  : -1;
        };
        if (place(strict) < 0 || place(loose) < 0) return false;
        if (place(strict) != 1 || place(loose) != 1) return place(strict) > place(loose);
        return lets_more_through(strict, loose, rule.compare, conditions_of(set_, rule),
                                 units_to_try(set_, rule)) == true;
    }

    const CriteriaSet &set_;
    Doubts &doubts_;
};

} // namespace

void check_order_elsewhere(const CriteriaSet &set, Doubts &doubts) { OrderElsewhere(set, doubts).check(); }

} // namespace beadbook
