#include "naive.hpp"

#include "naive_coupon.hpp"
#include "naive_pieces.hpp"
#include "naive_together.hpp"

#include <algorithm>

namespace beadbook::test {
namespace {

constexpr std::int64_t grid = nm_per_inch / 64;

class Naive {
public:
    /// By what counts for one class.
    Naive(const CriteriaSet &set, const RandomCase &c, std::size_t for_class, bool by_name)
        : set_(set), c_(c), for_class_(for_class), by_name_(by_name) {
        around_ = c.coupon.line.closed ? c.coupon.line.length->nm : 0;
        for (auto i : c.indications) {
            for (const Quantity q : {Quantity::depth, Quantity::height})
                if (Vocabulary::shipped()[i.type].is_volume() && i.measures.has(q) &&
                    i.measures.has(Quantity::size) && i.measures[q] > i.measures[Quantity::size])
                    i.measures.set(Quantity::size, Exact(i.measures[q]));
            things_.push_back({i.type,
                               {i.type},
                               i.exam,
                               i.place->from.nm,
                               i.place->to.nm,
                               i.across->from.nm,
                               i.across->to.nm,
                               i.measures,
                               i.words,
                               Shape::unknown,
                               false,
                               {},
                               {i.measures},
                               {i.number}});
        }
        for (auto &t : things_) {
            settle_shape(t);
            t.has_linear = t.shape == Shape::linear;
            t.narrowest = measure(t, Quantity::width);
            for (const auto &i : c.indications)
                if (i.number == t.numbers.front() && i.narrowest)
                    t.narrowest = std::min(t.narrowest, *i.narrowest);
        }
        for (const auto &merge : set.merges) {
            const auto before = things_;
            merge_all(merge);
            close_rings(merge, before);
        }
        for (auto &t : things_) {
            const Exact widest = measure(t, Quantity::width);
            t.measures.set(Quantity::width, t.narrowest);
            settle_shape(t);
            t.measures.set(Quantity::width, widest);
            if (t.has_linear) t.shape = Shape::linear;
        }
        std::erase_if(things_, [&](const Thing &t) { return irrelevant(t); });
        for (auto &t : things_) set_nearest_gap(t);
    }

    /// Whether all is well with what several methods found together, by the rules over several finds.
    std::vector<bool> well_together() {
        std::vector<bool> out(set_.classes.size(), true), covered(things_.size(), false);
        for (std::size_t k = 0; k < out.size(); ++k) {
            const auto well = [&](const Rule &rule) {
                bool reject = false, ask = false;
                judge_over_methods(rule, k, reject, ask);
                return !reject && !ask;
            };
            for (const auto &rule : set_.rules)
                if (!well(rule) && (!rule.only_with || !well(set_.rules[*rule.only_with]))) out[k] = false;
        }
        return out;
    }

    std::vector<Verdict> run() {
        std::vector<Verdict> out(set_.classes.size(), Verdict::accept);
        if (!naive_covers(set_, c_.coupon)) return std::vector<Verdict>(out.size(), Verdict::cannot_say);
        for (std::size_t k = 0; k < out.size(); ++k) {
            bool reject = false, ask = naive_asks_what_weld(set_, c_.coupon);
            std::vector<bool> covered(things_.size(), false);
            for (std::size_t r = 0; r < set_.rules.size(); ++r) {
                const Rule &rule = set_.rules[r];
                if (!rule.only_with) judge_rule(rule, k, reject, ask, covered, {});
                if (!rule.only_with || *rule.only_with > r) continue;
                // Only where one exam finds both over.
                for (std::size_t e = 0; e < exam_count; ++e) {
                    std::array<bool, 2> out{}, open{};
                    judge_rule(rule, k, out[0], open[0], covered, static_cast<Exam>(e));
                    judge_rule(set_.rules[*rule.only_with], k, out[1], open[1], covered,
                               static_cast<Exam>(e));
                    reject = reject || (out[0] && out[1]);
                    ask = ask || ((out[0] || open[0]) && (out[1] || open[1]));
                }
            }
            for (std::size_t i = 0; i < things_.size(); ++i)
                ask = ask || !covered[i] || left_open(things_[i], k);
            for (const auto &rule : set_.rules) {
                const bool there = std::any_of(c_.indications.begin(), c_.indications.end(),
                                               [&](const Indication &i) { return measures_for(rule, i); });
                ask = ask || (rule.must_be_measured && !there && applies(rule) &&
                              rule.limits[k].kind == Limit::Kind::value);
            }
            for (const auto &exam : c_.exams) ask = ask || exam.pending;
            out[k] = reject ? Verdict::reject : ask ? Verdict::cannot_say : Verdict::accept;
        }
        return out;
    }

private:
    Exact measure(const Thing &t, Quantity q) const { return t.measures[q]; }
    Environment env(const Environment::Values &local) const { return {c_.coupon.values, &local}; }

    Evaluated limit_of(const Rule &rule, const Formula &formula, const Environment::Values &local) const {
        return naive_limit(rule, formula, c_.coupon, local);
    }

    Truth truth(const Condition &c, const Thing *t) const {
        static const Environment::Values nothing;
        Missing missing;
        if (c.kind == Condition::Kind::word)
            return c.slot < fact_count ? c.words_said(c_.coupon.said(c.slot), missing)
                                       : c.word(t->words[c.slot - fact_count], missing);
        return c.compare(env(t ? t->measures : nothing), missing);
    }
    bool condition(const Condition &c, const Thing *t) const { return truth(c, t) == Truth::yes; }

    /// From the end of a to the start of b, going forward; nothing if b does not come after a.
    std::optional<std::int64_t> forward_gap(const Thing &a, const Thing &b) const {
        if (!around_) {
            if (b.from < a.from) return std::nullopt;
            return std::max<std::int64_t>(0, b.from - a.to);
        }
        const std::int64_t ahead = ((b.from - a.from) % around_ + around_) % around_;
        return std::max<std::int64_t>(0, ahead - (a.to - a.from));
    }

    void merge_all(const Merge &merge) {
        for (bool changed = true; changed;) {
            changed = false;
            for (std::size_t i = 0; i < things_.size() && !changed; ++i)
                for (std::size_t j = 0; j < things_.size() && !changed; ++j) {
                    Thing &a = things_[i], &b = things_[j];
                    if (i == j || a.exam != b.exam || !merge.subject.covers(a.type, a.exam) ||
                        !merge.subject.covers(b.type, b.exam))
                        continue;
                    const auto gap = forward_gap(a, b);
                    if (!gap || !near(merge, a, b, *gap)) continue;
                    join(a, b);
                    things_.erase(things_.begin() + static_cast<std::ptrdiff_t>(j));
                    changed = true;
                }
        }
    }

    /// What a clause or a limit between two neighbours may speak of.
    Environment::Values pair_of(const Thing &a, const Thing &b, std::int64_t gap) const {
        Environment::Values pair;
        pair.set(Quantity::gap, Exact(gap));
        const auto both = [&](Quantity of, Quantity smaller, Quantity larger) {
            pair.set(smaller, std::min(measure(a, of), measure(b, of)));
            pair.set(larger, std::max(measure(a, of), measure(b, of)));
        };
        both(Quantity::size, Quantity::smaller_size, Quantity::larger_size);
        both(Quantity::length, Quantity::shorter_length, Quantity::longer_length);
        return pair;
    }

    bool near(const Merge &merge, const Thing &a, const Thing &b, std::int64_t gap) const {
        const Environment::Values pair = pair_of(a, b, gap);
        Missing missing;
        return merge.when.compare(env(pair), missing) == Truth::yes;
    }

    /// Those that are one made one, on a line that does not close.
    std::vector<Thing> merged(const Merge &merge, std::vector<Thing> all) const {
        for (bool changed = true; changed;) {
            changed = false;
            for (std::size_t i = 0; i < all.size() && !changed; ++i)
                for (std::size_t j = 0; j < all.size() && !changed; ++j) {
                    Thing &a = all[i], &b = all[j];
                    if (i == j || b.from < a.from) continue;
                    if (!near(merge, a, b, std::max<std::int64_t>(0, b.from - a.to))) continue;
                    join(a, b);
                    all.erase(all.begin() + static_cast<std::ptrdiff_t>(j));
                    changed = true;
                }
        }
        return all;
    }

    /// Whether a thing holds two neighbours that are near each other both ways round: its parts are cut at
    /// any two places.
    bool goes_round(const Merge &merge, const Thing &t, const std::vector<Thing> &before) const {
        std::vector<Thing> parts;
        for (Thing one : before) {
            if (std::find(t.numbers.begin(), t.numbers.end(), one.numbers.front()) == t.numbers.end())
                continue;
            const std::int64_t from = t.from + ((one.from - t.from) % around_ + around_) % around_;
            one.to += from - one.from;
            one.from = from;
            parts.push_back(one);
        }
        if (parts.size() > 1 && t.to - t.from >= around_) return true;
        std::sort(parts.begin(), parts.end(), [](const Thing &a, const Thing &b) {
            return a.from != b.from ? a.from < b.from : a.to < b.to;
        });
        for (std::size_t first = 0; first < parts.size(); ++first)
            for (std::size_t second = first + 1; second < parts.size(); ++second) {
                std::vector<Thing> inner, outer;
                for (std::size_t k = 0; k < parts.size(); ++k) {
                    Thing one = parts[k];
                    if (k < first) one.from += around_, one.to += around_;
                    (k >= first && k < second ? inner : outer).push_back(one);
                }
                for (const auto &p : merged(merge, inner))
                    for (const auto &q : merged(merge, outer))
                        if (near(merge, p, q, std::max<std::int64_t>(0, q.from - p.to)) &&
                            near(merge, q, p, std::max<std::int64_t>(0, p.from + around_ - q.to)))
                            return true;
            }
        return false;
    }

    void close_rings(const Merge &merge, const std::vector<Thing> &before) {
        for (std::size_t i = 0; around_ && i < things_.size(); ++i) {
            if (!merge.subject.covers(things_[i].type, things_[i].exam)) continue;
            if (!goes_round(merge, things_[i], before)) continue;
            Thing ring = things_[i];
            for (std::size_t j = 0; j < things_.size(); ++j)
                if (j != i && things_[j].exam == ring.exam &&
                    merge.subject.covers(things_[j].type, things_[j].exam))
                    join(ring, things_[j]);
            ring.to = ring.from + around_;
            ring.measures.set(Quantity::length, Exact(around_));
            ring.measures.set(Quantity::size, Exact(around_));
            std::erase_if(things_, [&](const Thing &t) {
                return t.exam == ring.exam && merge.subject.covers(t.type, t.exam);
            });
            things_.push_back(ring);
            return close_rings(merge, things_);
        }
    }

    void join(Thing &a, const Thing &b) const {
        std::int64_t shift = 0;
        if (around_) shift = a.from + ((b.from - a.from) % around_ + around_) % around_ - b.from;
        a.to = std::max(a.to, b.to + shift);
        a.types.insert(a.types.end(), b.types.begin(), b.types.end());
        a.parts.insert(a.parts.end(), b.parts.begin(), b.parts.end());
        a.numbers.insert(a.numbers.end(), b.numbers.begin(), b.numbers.end());
        for (const Quantity q : {Quantity::width, Quantity::depth, Quantity::height, Quantity::angle})
            a.measures.set(q, std::max(measure(a, q), measure(b, q)));
        a.measures.set(Quantity::area, measure(a, Quantity::area) + measure(b, Quantity::area));
        a.measures.set(Quantity::length, Exact(a.to - a.from));
        a.measures.set(Quantity::size, std::max({measure(a, Quantity::size), measure(b, Quantity::size),
                                                 Exact(a.to - a.from)}));
        a.has_linear = a.has_linear || b.has_linear;
        a.narrowest = std::min(a.narrowest, b.narrowest);
        a.across_from = std::min(a.across_from, b.across_from);
        a.across_to = std::max(a.across_to, b.across_to);
    }

    void settle_shape(Thing &t) const {
        t.shape = Vocabulary::shipped()[t.type].shape;
        if (by_name_ && t.parts.size() == 1 && t.shape == Shape::linear &&
            measure(t, Quantity::length) <= measure(t, Quantity::width))
            return;
        if (set_.linear) t.shape = condition(*set_.linear, &t) ? Shape::linear : Shape::rounded;
    }

    bool irrelevant(const Thing &t) const {
        return std::any_of(set_.relevance.begin(), set_.relevance.end(), [&](const Relevance &r) {
            return r.classes[for_class_] &&
                   std::all_of(t.types.begin(), t.types.end(),
                               [&](TypeId x) { return r.subject.covers(x, t.exam) && !r.groups[x]; }) &&
                   std::all_of(r.ignore.begin(), r.ignore.end(),
                               [&](const Condition &c) { return condition(c, &t); });
        });
    }

    static TypeId top_of(TypeId type) {
        const auto &under = Vocabulary::shipped()[type].under;
        return under ? top_of(*under) : type;
    }

    void set_nearest_gap(Thing &t) {
        if (Vocabulary::shipped()[t.type].measured) return;
        std::int64_t nearest = longest_length.nm, alike = nearest;
        std::vector<Thing> all = things_;
        for (const auto &other : all) {
            if (&other - all.data() == &t - things_.data() || other.exam != t.exam) continue;
            if (Vocabulary::shipped()[other.type].measured) continue;
            const bool like = std::any_of(t.types.begin(), t.types.end(), [&](TypeId own) {
                return std::any_of(other.types.begin(), other.types.end(),
                                   [&](TypeId its) { return top_of(own) == top_of(its); });
            });
            for (const auto gap : {forward_gap(t, other), forward_gap(other, t)}) {
                if (gap) nearest = std::min(nearest, *gap);
                if (gap && like) alike = std::min(alike, *gap);
            }
        }
        t.measures.set(Quantity::nearest_gap, Exact(nearest));
        t.measures.set(Quantity::nearest_like_gap, Exact(alike));
    }

    /// A known gap that bears on it beside whatever rules there are.
    bool left_open(const Thing &t, std::size_t k) const {
        return std::any_of(set_.gaps.begin(), set_.gaps.end(), [&](const Gap &gap) {
            const auto on_coupon = [&](const Condition &c) { return condition(c, nullptr); };
            return gap.beside_rules && gap.classes[k] &&
                   (gap.shape == Shape::unknown || gap.shape == t.shape) &&
                   std::all_of(gap.when.begin(), gap.when.end(), on_coupon) &&
                   std::any_of(t.types.begin(), t.types.end(),
                               [&](TypeId x) { return gap.subject->covers(x, t.exam); }) &&
                   std::all_of(gap.where.begin(), gap.where.end(),
                               [&](const Condition &c) { return condition(c, &t); });
        });
    }

    bool measures_for(const Rule &rule, const Indication &i) const {
        Missing missing;
        const bool by_one_that_counts =
            std::any_of(c_.exams.begin(), c_.exams.end(), [&](const ExamDone &exam) {
                return exam.counts && exam.method == i.exam && (i.of_exam == 0 || exam.number == i.of_exam);
            });
        return by_one_that_counts && rule.subject.covers(i.type, i.exam) &&
               std::all_of(rule.where.begin(), rule.where.end(), [&](const Condition &c) {
                   return !asks_for_side(c) || c.word(i.words[0], missing) == Truth::yes;
               });
    }

    bool applies(const Rule &rule) const {
        return std::all_of(rule.when.begin(), rule.when.end(),
                           [&](const Condition &c) { return condition(c, nullptr); });
    }

    void judge_rule(const Rule &rule, std::size_t k, bool &reject, bool &ask, std::vector<bool> &covered,
                    std::optional<Exam> only) {
        const Limit::Kind says = rule.limits[k].kind;
        if (rule.kind == Rule::Kind::coupon) {
            const bool out = std::any_of(rule.when.begin(), rule.when.end(),
                                         [&](const Condition &c) { return truth(c, nullptr) == Truth::no; });
            if (out) return;
            // Of a weld by two processes it may hold for a part.
            ask = ask || (!applies(rule) && says != Limit::Kind::free && says != Limit::Kind::other);
            if (!applies(rule)) return;
            reject = reject || says == Limit::Kind::none;
            ask = ask || says == Limit::Kind::ask || says == Limit::Kind::not_said;
            return;
        }
        if (rule.kind == Rule::Kind::combine) {
            if (!applies(rule)) return;
            std::int64_t near = 0;
            for (const std::size_t other : rule.combined)
                near += at_borderline(set_.rules[other], k, rule.borderline);
            const Exact limit = limit_of(rule, rule.limits[k].formula, {}).value;
            ask = ask || (near > 0 && (says == Limit::Kind::ask || says == Limit::Kind::not_said));
            reject = reject ||
                     (rule.limits[k].kind == Limit::Kind::value && !holds(Exact(near), rule.compare, limit));
            return;
        }
        for (std::size_t e = 0; e < exam_count; ++e) {
            if (only && static_cast<std::size_t>(*only) != e) continue;
            std::vector<Thing> found;
            for (std::size_t i = 0; i < things_.size(); ++i) {
                if (!speaks_of(rule, things_[i], static_cast<Exam>(e))) continue;
                found.push_back(things_[i]);
                if (says != Limit::Kind::not_said && says != Limit::Kind::other) covered[i] = true;
            }
            if (found.empty()) continue;
            const Limit &limit = rule.limits[k];
            if (limit.kind == Limit::Kind::none) reject = true;
            if (limit.kind == Limit::Kind::not_said) ask = true;
            // A person is asked about groups, where it takes several to be one.
            if (limit.kind == Limit::Kind::ask)
                ask = ask || rule.least_group < 2 || !groups(rule, found).empty();
            if (limit.kind == Limit::Kind::value) judge_found(rule, k, found, reject, ask);
        }
    }

    void judge_over_methods(const Rule &rule, std::size_t k, bool &reject, bool &ask) const {
        const bool over_several =
            rule.kind == Rule::Kind::sum || rule.kind == Rule::Kind::count || rule.kind == Rule::Kind::gap;
        if (!over_several && !rule.only_with) return;
        std::vector<Thing> found;
        for (const auto &t : things_)
            if (speaks_of(rule, t, t.exam)) found.push_back(t);
        found = naive_once(rule, c_, found);
        if (found.empty()) return;
        if (rule.limits[k].kind == Limit::Kind::ask && rule.least_group > 1)
            ask = ask || !groups(rule, found).empty();
        if (rule.limits[k].kind == Limit::Kind::value) judge_found(rule, k, found, reject, ask);
    }

    bool speaks_of(const Rule &rule, const Thing &t, Exam exam) const {
        const bool type = std::any_of(t.types.begin(), t.types.end(),
                                      [&](TypeId x) { return rule.subject.covers(x, t.exam); });
        return t.exam == exam && type && applies(rule) &&
               (rule.shape == Shape::unknown || rule.shape == t.shape) &&
               std::all_of(rule.where.begin(), rule.where.end(),
                           [&](const Condition &c) { return condition(c, &t); });
    }

    std::int64_t at_borderline(const Rule &rule, std::size_t k, const Exact &share) const {
        for (const auto &t : things_)
            for (std::size_t e = 0; e < exam_count; ++e) {
                if (!speaks_of(rule, t, static_cast<Exam>(e)) || rule.limits[k].kind != Limit::Kind::value)
                    continue;
                const Exact limit = limit_of(rule, rule.limits[k].formula, t.measures).value;
                if (rule.measure.evaluate(env(t.measures)).value >= limit * share) return 1;
            }
        return 0;
    }

    void compare(const Evaluated &measured, const Rule &rule, const Evaluated &limit, bool &reject,
                 bool &ask) const {
        if (!measured.known() || !limit.known())
            ask = true;
        else if (!holds(measured.value, rule.compare, limit.value))
            reject = true;
    }

    void judge_found(const Rule &rule, std::size_t k, const std::vector<Thing> &found, bool &reject,
                     bool &ask) const {
        const Formula &limit = rule.limits[k].formula;
        if (rule.kind == Rule::Kind::each) {
            for (const auto &t : found) {
                // The most of a joined one, but the least of each part.
                const bool least = rule.compare == Compare::at_least || rule.compare == Compare::over;
                for (const auto &values : least &&t.parts.size() > 1 ? t.parts : std::vector{t.measures})
                    compare(rule.measure.evaluate(env(values)), rule, limit_of(rule, limit, values), reject,
                            ask);
            }
        } else if (rule.kind == Rule::Kind::gap) {
            for (const auto &a : found)
                for (const auto &b : found) {
                    const auto gap = &a == &b ? std::nullopt : forward_gap(a, b);
                    if (!gap) continue;
                    const Environment::Values pair = pair_of(a, b, *gap);
                    compare({Exact(*gap), {}}, rule, limit_of(rule, limit, pair), reject, ask);
                }
        } else {
            // What nobody filled in leaves a stretch as open as a limit.
            if (const Window *window = rule.window(k); window && window->length.has_blanks()) {
                ask = true;
                return;
            }
            Evaluated most = limit_of(rule, limit, {});
            if (rule.prorated && most.known()) {
                const Exact window = rule.window(k)->length.evaluate(Environment{c_.coupon.values}).value;
                const Exact length = c_.coupon.line.length->nm;
                if (length < window) most.value = most.value * length / window;
            }
            for (const auto &group : groups(rule, found))
                compare({held(rule, rule.window(k), group), {}}, rule, most, reject, ask);
        }
    }

    Exact weight(const Rule &rule, const Thing &t) const {
        if (rule.kind == Rule::Kind::count) return 1;
        if (!rule.as_rectangles) return measure(t, rule.summed);
        Exact sum = 0;
        for (const auto &part : t.parts)
            sum = sum + Exact(part[Quantity::length]) * Exact(part[Quantity::width]);
        return sum;
    }

    Exact total(const Rule &rule, const std::vector<Thing> &group) const {
        Exact sum = 0;
        for (const auto &t : group) sum = sum + weight(rule, t);
        return sum;
    }

    Exact held(const Rule &rule, const Window *window, const std::vector<Thing> &group) const {
        if (!window || window->kind == Window::Kind::whole_weld) return total(rule, group);
        if (window->kind == Window::Kind::area) return Exact(in_area(*window, group));
        const auto width =
            static_cast<std::int64_t>(window->length.evaluate(Environment{c_.coupon.values}).value.num());
        if (width >= c_.coupon.line.length->nm) return total(rule, group);
        Exact most = 0;
        const bool length = rule.kind == Rule::Kind::sum && rule.summed == Quantity::length;
        for (std::int64_t start = around_ ? 0 : -width; start <= c_.coupon.line.length->nm; start += grid) {
            Exact here = 0;
            for (const auto &t : group) {
                Exact inside = 0;
                for (std::int64_t turn = around_ ? -1 : 0; turn <= (around_ ? 1 : 0); ++turn) {
                    const std::int64_t from = t.from + turn * around_, to = t.to + turn * around_;
                    // Half a step aside: a window that overlaps by more than a point at either end.
                    const bool touched = 2 * to > 2 * start - grid && 2 * from < 2 * (start + width) - grid;
                    if (length)
                        inside = inside + Exact(std::max<std::int64_t>(0, std::min(to, start + width) -
                                                                              std::max(from, start)));
                    else if (touched)
                        inside = weight(rule, t);
                }
                here = here + inside;
            }
            most = std::max(most, here);
        }
        return most;
    }

    /// Every rectangle whose left, right, low and high neighbours are any four of them.
    std::int64_t in_area(const Window &window, const std::vector<Thing> &group) const {
        const auto longest = static_cast<std::int64_t>(window.longest_side.num());
        std::vector<Thing> all = group;
        std::vector<std::size_t> id;
        for (std::size_t i = 0; i < group.size(); ++i) id.push_back(i);
        for (std::int64_t turn = 1; around_ && turn <= 2; ++turn)
            for (std::size_t i = 0; i < group.size(); ++i) {
                all.push_back(group[i]);
                all.back().from += turn * around_;
                all.back().to += turn * around_;
                id.push_back(i);
            }
        std::int64_t most = 0;
        for (const auto &left : all)
            for (const auto &right : all) {
                const std::int64_t x = std::max<std::int64_t>(0, right.from - left.to);
                if (x >= longest) continue;
                for (const auto &low : all)
                    for (const auto &high : all) {
                        const std::int64_t y = std::max<std::int64_t>(0, high.across_from - low.across_to);
                        if (y >= longest || static_cast<Int128>(x) * y >= window.area.num()) continue;
                        std::vector<bool> in(group.size(), false);
                        for (std::size_t i = 0; i < all.size(); ++i)
                            if (all[i].to >= left.to && all[i].from <= std::max(right.from, left.to) &&
                                all[i].across_to >= low.across_to &&
                                all[i].across_from <= std::max(high.across_from, low.across_to))
                                in[id[i]] = true;
                        most =
                            std::max(most, static_cast<std::int64_t>(std::count(in.begin(), in.end(), true)));
                    }
            }
        return most;
    }

    /// All runs in which every gap is linked for the run's longest member.
    std::vector<std::vector<Thing>> groups(const Rule &rule, const std::vector<Thing> &found) const {
        if (!rule.linked) return {found};
        std::vector<Thing> line = found;
        std::sort(line.begin(), line.end(), [](const Thing &a, const Thing &b) { return a.from < b.from; });
        std::vector<std::vector<Thing>> out;
        for (std::size_t start = 0; start < line.size(); ++start) {
            for (std::size_t size = 1; size <= line.size(); ++size) {
                if (start + size > line.size() && !around_) break;
                std::vector<Thing> run;
                std::vector<std::int64_t> gaps;
                std::int64_t reach = 0;
                Exact longest = 0;
                for (std::size_t i = 0; i < size; ++i) {
                    Thing t = line[(start + i) % line.size()];
                    const std::int64_t turn = start + i >= line.size() ? around_ : 0;
                    if (i > 0) gaps.push_back(std::max<std::int64_t>(0, t.from + turn - reach));
                    reach = std::max(reach, t.to + turn);
                    longest = std::max(longest, Exact(t.to - t.from));
                    run.push_back(t);
                }
                const bool linked = std::all_of(gaps.begin(), gaps.end(), [&](std::int64_t gap) {
                    Environment::Values group;
                    group.set(Quantity::longest, longest);
                    return holds(Exact(gap), rule.linked->edges[0].compare,
                                 rule.linked->edges[0].right.evaluate(env(group)).value);
                });
                if (linked && run.size() >= rule.least_group) out.push_back(run);
            }
        }
        return out;
    }

    const CriteriaSet &set_;
    const RandomCase &c_;
    std::size_t for_class_;
    bool by_name_ = false; ///< a name that says linear counts, though it is as wide as long
    std::int64_t around_ = 0;
    std::vector<Thing> things_;
};

} // namespace

std::vector<Verdict> naive_verdicts(const CriteriaSet &set, const RandomCase &c) {
    const auto judged = [&](const RandomCase &read, bool by_name) {
        if (!set.counts_by_class) return Naive(set, read, 0, by_name).run();
        std::vector<Verdict> out;
        for (std::size_t k = 0; k < set.classes.size(); ++k)
            out.push_back(Naive(set, read, k, by_name).run()[k]);
        return out;
    };
    std::vector<Verdict> out = judged(c, false);
    const auto hold = [&](auto holds) {
        for (std::size_t k = 0; k < out.size(); ++k)
            if (out[k] == Verdict::accept && !holds(k)) out[k] = Verdict::cannot_say;
    };
    std::vector<RandomCase> others;
    for (const NaiveKin kin : {NaiveKin::family, NaiveKin::family_or_rule})
        for (const bool another : {false, true}) others.push_back(naive_as_one(set, c, kin, another));
    for (const auto &one : others) {
        const auto other = judged(one, false);
        hold([&](std::size_t k) { return other[k] == Verdict::accept; });
    }
    const auto by_name = judged(c, true);
    hold([&](std::size_t k) { return by_name[k] == Verdict::accept; });
    for (std::size_t k = 0; k < out.size(); ++k)
        if (out[k] == Verdict::accept && !Naive(set, c, k, false).well_together()[k])
            out[k] = Verdict::cannot_say;
    return out;
}

} // namespace beadbook::test
