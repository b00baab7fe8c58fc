#include "operations/boundaries.hpp"

#include "criteria/shipped.hpp"
#include "judge/judgement.hpp"
#include "language/evaluate.hpp"

#include <algorithm>

namespace beadbook {
namespace {

using Why = NoBoundary::Why;
using Found = BoundaryTry::Found;

constexpr std::int64_t most_finds = 60;

/// Makes the finds of one rule and class, and has them judged.
class Maker {
public:
    Maker(const CriteriaSet &set, std::size_t rule, std::size_t class_index)
        : set_(set), rule_(set.rules[rule]), index_(rule), class_(class_index),
          limit_(rule_.limits[class_index]) {}

    void make(Boundaries &out) {
        if (const auto why = hopeless()) return out.none.push_back({index_, class_, *why, {}});
        choose_subject();
        const BoundaryCoupons coupons(set_, rule_, class_);
        Why why = Why::no_coupon; // no case was made of the last that failed
        const std::size_t before = out.cases.size();
        bool shrunk = false;
        std::vector<Coupon> all = coupons.all();
        if (rule_.prorated && !all.empty()) add_short_welds(coupons, all);
        std::optional<NamedPoint> untried, uncounted; // a weld on which it shrinks; where nothing counts
        for (const Coupon &coupon : all) {
            BoundaryCase one = case_on(coupon, coupons);
            why_ = Why::no_coupon;
            const bool short_weld = shrinks_on(coupon), tried = fill(one);
            shrunk = shrunk || (short_weld && tried);
            if (short_weld) untried = NamedPoint{Quantity::weld_length, coupon.values[Quantity::weld_length]};
            if (!tried && why_ != Why::no_coupon) why = why_;
            if (!tried && why_ == Why::no_find && !short_weld && !one.varied.empty() && !uncounted)
                uncounted = NamedPoint{one.varied.front(), coupon.values[one.varied.front()]};
            if (tried) out.cases.push_back(std::move(one));
        }
        try_windows(out);
        if (out.cases.size() == before) return out.none.push_back({index_, class_, why, {}});
        if (untried && !shrunk) out.none.push_back({index_, class_, why, untried});
        if (uncounted) out.none.push_back({index_, class_, Why::no_find, uncounted});
        for (const auto &named : coupons.named()) meet(named, coupons, out);
    }

private:
    BoundaryCase case_on(const Coupon &coupon, const BoundaryCoupons &coupons) const {
        BoundaryCase out{index_, class_, coupon, coupons.varied(), {}, type_, exam_, {}, {}};
        if (rule_.prorated) add_varied(Quantity::weld_length, out);
        return out;
    }
    static void add_varied(Quantity q, BoundaryCase &out) {
        if (std::find(out.varied.begin(), out.varied.end(), q) == out.varied.end()) out.varied.push_back(q);
    }

    /// Of the first and the last: as long as the window, a step less, and half of it, where the limit
    /// shrinks.
    void add_short_welds(const BoundaryCoupons &coupons, std::vector<Coupon> &all) const {
        const Exact step = reading_step(Dimension::length, set_.unit);
        std::vector<Coupon> some{all.front()};
        if (all.size() > 1) some.push_back(all.back());
        for (const Coupon &coupon : some) {
            const Evaluated stretch = stretch_on(coupon);
            if (!stretch.known()) continue;
            for (const Exact &length : {stretch.value, stretch.value - step, stretch.value / Exact(2)}) {
                Coupon other = coupon;
                other.values.set(Quantity::weld_length, Exact::whole(length.rounded()));
                other.line.length = Length{other.values[Quantity::weld_length]};
                if (length > Exact(0) && coupons.holds_for_coupon(other)) all.push_back(other);
            }
        }
    }

    /// One more case, where none so far has it.
    void meet(const NamedPoint &named, const BoundaryCoupons &coupons, Boundaries &out) {
        const bool met = std::any_of(out.cases.begin(), out.cases.end(), [&](const BoundaryCase &one) {
            return one.rule == index_ && one.class_index == class_ && named.is_met_by(one.coupon);
        });
        if (met) return;
        why_ = Why::no_coupon;
        bool found = false;
        coupons.each_with(named, [&](const Coupon &coupon) {
            BoundaryCase one = case_on(coupon, coupons);
            if (!named.quantity) one.word = named.fact;
            if (named.quantity) add_varied(*named.quantity, one);
            found = fill(one);
            if (found) out.cases.push_back(std::move(one));
            return found;
        });
        if (!found) out.none.push_back({index_, class_, why_, named});
    }

    std::optional<Why> hopeless() const {
        if (!set_.blanks_of(rule_, class_).empty()) return Why::blank;
        if (rule_.kind == Rule::Kind::combine || rule_.only_with) return Why::of_others;
        if (rule_.kind == Rule::Kind::each && !rule_.measure.lone_quantity()) return Why::arithmetic;
        const bool neighbours = rule_.kind == Rule::Kind::gap || rule_.kind == Rule::Kind::count ||
                                (rule_.kind == Rule::Kind::sum && rule_.least_group > 1);
        if (neighbours && is_joined()) return Why::joined;
        return std::nullopt;
    }

    bool is_joined() const {
        return std::any_of(set_.merges.begin(), set_.merges.end(), [&](const Merge &merge) {
            return (merge.subject.types & rule_.subject.types).any() &&
                   (merge.subject.exams & rule_.subject.exams).any();
        });
    }

    /// Each length that the window has on the coupons of this rule and class, once.
    void try_windows(Boundaries &out) {
        const Window *window = rule_.window(class_);
        if (!window || window->kind != Window::Kind::length || rule_.linked || wants_neighbour() ||
            is_joined() || !is_maximum(rule_.compare))
            return;
        std::vector<Exact> tried;
        for (const BoundaryCase &made : out.cases) {
            if (made.rule != index_ || made.class_index != class_) continue;
            const Evaluated stretch = stretch_on(made.coupon);
            if (!stretch.known() || std::find(tried.begin(), tried.end(), stretch.value) != tried.end())
                continue;
            auto one = window_case(made, stretch.value);
            if (!one) continue;
            tried.push_back(stretch.value);
            out.windows.push_back(std::move(*one));
        }
    }

    std::optional<BoundaryCase> window_case(const BoundaryCase &made, const Exact &window) {
        const auto over = std::find_if(made.tries.begin(), made.tries.end(),
                                       [](const BoundaryTry &one) { return one.rejects; });
        if (over == made.tries.end() || !window.is_whole()) return std::nullopt;
        const Exact step = reading_step(Dimension::length, set_.unit);
        BoundaryCase out = made;
        out.limit = window;
        out.tries.clear();
        for (const Exact &apart : {window - step, window, window + step}) {
            const auto all = spread(made.coupon, over->value, static_cast<std::int64_t>(apart.num()));
            if (!all) return std::nullopt;
            out.tries.push_back(
                {apart, adds_lengths() ? apart <= window : apart < window, judged(made.coupon, *all)});
        }
        return out;
    }

    bool adds_lengths() const { return rule_.kind == Rule::Kind::sum && rule_.summed == Quantity::length; }

    /// Finds that are together `value`, the last one so far from the others. Nothing where they do not lie
    /// apart then, or on the weld.
    std::optional<std::vector<Indication>> spread(const Coupon &coupon, const Exact &value,
                                                  std::int64_t apart) {
        auto out = finds(coupon, value, 2);
        if (!out || out->size() < 2) return std::nullopt;
        const auto length = [](const Indication &one) { return one.measures[Quantity::length]; };
        const Indication &last = out->back(), &before = (*out)[out->size() - 2];
        const std::int64_t from = adds_lengths() ? apart - length(last) : length(out->front()) + apart;
        if (from <= before.place->from.nm + length(before) + nm_per_inch / 100 ||
            from + length(last) > coupon.values[Quantity::weld_length])
            return std::nullopt;
        out->back().place = Span{{from}, {from}};
        out->back().complete(Vocabulary::shipped());
        return out;
    }

    /// A type whose own shape is the one that the rule asks for, else any.
    void choose_subject() {
        const Vocabulary &vocabulary = Vocabulary::shipped();
        bool found = false;
        for (std::size_t t = vocabulary.size(); t-- > 0;) {
            const auto type = static_cast<TypeId>(t);
            if (!rule_.subject.types[t]) continue;
            const bool fits = rule_.shape == Shape::unknown || vocabulary[type].shape == rule_.shape;
            if (found && !fits) continue;
            type_ = type;
            found = found || fits;
        }
        for (const Exam exam : all_exams())
            if (rule_.subject.exams[static_cast<std::size_t>(exam)]) {
                exam_ = exam;
                break;
            }
    }

    Quantity measure() const {
        if (rule_.kind == Rule::Kind::each) return static_cast<Quantity>(*rule_.measure.lone_quantity());
        return rule_.kind == Rule::Kind::sum ? rule_.summed : Quantity::size;
    }

    bool fill(BoundaryCase &one) {
        const Dimension dimension = rule_.dimension();
        const Exact step = reading_step(dimension, set_.unit);
        const auto at = limit_on(one.coupon);
        if (!at || *at < Exact(0)) return false;
        if (over_its_stretch(one.coupon, *at + step)) return false;
        one.limit = *at;
        // The largest or smallest whole number that is still within.
        const bool upper = is_maximum(rule_.compare);
        Exact inside = Exact::whole(at->num() / Int128(at->den()));
        if (!upper && !at->is_whole()) inside = inside + Exact(1);
        for (const Exact &value : {inside - step, inside, inside + step}) {
            if (value < Exact(0) || (value == Exact(0) && rule_.kind != Rule::Kind::count)) continue;
            const auto all = finds(one.coupon, value, rule_.least_group);
            if (!all) return false;
            one.tries.push_back({value, !holds(value, rule_.compare, *at), judged(one.coupon, *all)});
        }
        return !one.tries.empty();
    }

    /// More than the window, or the weld, can hold: there the limit decides nothing.
    bool over_its_stretch(const Coupon &coupon, const Exact &value) const {
        if (rule_.dimension() != Dimension::length || rule_.kind == Rule::Kind::gap) return false;
        if (value > Exact(coupon.values[Quantity::weld_length])) return true;
        const Window *window = rule_.window(class_);
        if (rule_.kind != Rule::Kind::sum || !window || window->kind != Window::Kind::length) return false;
        const Evaluated stretch = stretch_on(coupon);
        return stretch.known() && value > stretch.value;
    }

    /// For a gap the neighbours are as large as they are made here.
    std::optional<Exact> limit_on(const Coupon &coupon) {
        Environment::Values local;
        settled_ = {};
        if (rule_.kind == Rule::Kind::gap) {
            const auto find = any_find(coupon);
            if (!find) return std::nullopt;
            for (const Quantity q : {Quantity::larger_size, Quantity::smaller_size})
                local.set(q, Exact((*find)[Quantity::size]));
            for (const Quantity q : {Quantity::longer_length, Quantity::shorter_length})
                local.set(q, Exact((*find)[Quantity::length]));
        }
        // A limit that speaks of the find itself is settled with it; a typical one is taken.
        if (rule_.kind == Rule::Kind::each && !of_coupon(limit_.formula)) {
            const auto find = one_find(coupon, size_of_one());
            if (!find) return std::nullopt;
            local = *find;
            for (const Quantity q : quantities_of(limit_.formula))
                if (info(q).scope == Scope::indication) settled_.set(q, Exact(local[q]));
            if (limit_.formula.uses(slot_of(measure()))) return std::nullopt;
        }
        const Evaluated value = limit_.formula.limit(Environment{coupon.values, &local}, rule_.compare);
        if (!value.known()) return std::nullopt;
        if (!shrinks_on(coupon)) return value.value;
        return value.value * Exact(coupon.values[Quantity::weld_length]) / stretch_on(coupon).value;
    }

    bool shrinks_on(const Coupon &coupon) const {
        if (!rule_.prorated) return false;
        const Evaluated stretch = stretch_on(coupon);
        return stretch.known() && Exact(coupon.values[Quantity::weld_length]) < stretch.value;
    }

    /// Of a rule with a window of a length.
    Evaluated stretch_on(const Coupon &coupon) const {
        return rule_.window(class_)->length.evaluate(Environment{coupon.values, &coupon.values});
    }

    std::int64_t size_of_one() const { return set_.unit == Unit::inch ? nm_per_inch / 16 : 2 * nm_per_mm; }

    std::optional<Environment::Values> one_find(const Coupon &coupon, std::int64_t value) {
        words_ = {};
        auto out = find_with(set_, rule_, coupon, measure(), value, words_, settled_);
        if (!out) why_ = Why::no_find;
        return out;
    }

    Indication indication(const Environment::Values &values, std::int64_t from, int number) const {
        Indication out;
        out.number = number;
        out.type = type_;
        out.exam = exam_;
        out.measures = values;
        out.words = words_;
        out.place = Span{{from}, {from}};
        out.across = Span{{0}, {0}};
        out.complete(Vocabulary::shipped());
        return out;
    }

    /// Together `value`; what is added, in so many parts.
    std::optional<std::vector<Indication>> finds(const Coupon &coupon, const Exact &value,
                                                 std::size_t parts) {
        const auto whole = static_cast<std::int64_t>(value.num());
        std::vector<Indication> out;
        if (rule_.kind == Rule::Kind::each || (rule_.kind == Rule::Kind::sum && parts == 1)) {
            const auto one = one_find(coupon, whole);
            if (!one) return std::nullopt;
            out.push_back(indication(*one, 0, 1));
            if (wants_neighbour())
                out.push_back(indication(*one, (*one)[Quantity::length] + nm_per_inch / 100, 2));
            return out;
        }
        const bool summed = rule_.kind == Rule::Kind::sum;
        const std::int64_t number = rule_.kind == Rule::Kind::gap ? 2
                                    : summed                      ? static_cast<std::int64_t>(parts)
                                                                  : whole;
        if (number > most_finds) {
            why_ = Why::too_many;
            return std::nullopt;
        }
        std::int64_t place = 0;
        for (std::int64_t k = 0; k < number; ++k) {
            const std::int64_t share = whole / number + (k < whole % number ? 1 : 0);
            const auto one = summed ? one_find(coupon, share) : any_find(coupon);
            if (!one) return std::nullopt;
            if (summed || rule_.kind == Rule::Kind::gap || place <= reach(coupon)) {
                out.push_back(indication(*one, place, static_cast<int>(k + 1)));
            } else {
                why_ = Why::too_many;
                return std::nullopt;
            }
            place += (*one)[Quantity::length] + (rule_.kind == Rule::Kind::gap ? whole : nm_per_inch / 1000);
        }
        return out;
    }

    /// The smallest that the rule speaks of and that counts, so that many lie in a window; neighbours of a
    /// distance as large as they come.
    std::optional<Environment::Values> any_find(const Coupon &coupon) {
        std::vector<std::int64_t> sizes;
        if (rule_.kind == Rule::Kind::gap) sizes.push_back(size_of_one());
        for (const std::int64_t part : {100, 32, 16, 12, 8, 6, 5, 4, 3, 2})
            sizes.push_back(nm_per_inch / part);
        for (const std::int64_t size : sizes)
            if (const auto one = one_find(coupon, size)) return one;
        return std::nullopt;
    }

    /// How far the finds of one window may begin apart.
    std::int64_t reach(const Coupon &coupon) const {
        const std::int64_t weld = coupon.values[Quantity::weld_length];
        const Window *window = rule_.window(class_);
        if (!window || window->kind == Window::Kind::whole_weld) return weld;
        if (window->kind == Window::Kind::area) return static_cast<std::int64_t>(window->longest_side.num());
        const Evaluated length = stretch_on(coupon);
        return length.known()
                   ? std::min(weld, static_cast<std::int64_t>(length.value.num() / length.value.den()))
                   : weld;
    }

    /// It speaks only of what has another one near.
    bool wants_neighbour() const {
        return std::any_of(rule_.where.begin(), rule_.where.end(), [](const Condition &c) {
            return is_way_to_nearest(c.left.lone_quantity()) && !c.edges.empty() &&
                   is_maximum(c.edges.front().compare);
        });
    }

    Found judged(const Coupon &coupon, const std::vector<Indication> &all) const {
        std::vector<ExamDone> exams;
        for (const Exam exam : all_exams()) exams.push_back({exam, true, "", false});
        const Judgement judgement = judge(set_, coupon, exams, all);
        Found out = Found::within;
        for (const auto &finding : judgement.classes[class_].findings) {
            if (finding.kind == Finding::Kind::outside_scope || finding.kind == Finding::Kind::contradiction)
                return Found::not_heard;
            if (finding.rule != static_cast<int>(index_)) continue;
            out = finding.kind == Finding::Kind::over_limit ? Found::outside : Found::not_heard;
        }
        return out;
    }

    const CriteriaSet &set_;
    const Rule &rule_;
    std::size_t index_, class_;
    const Limit &limit_;
    TypeId type_ = 0;
    Exam exam_ = Exam::VT;
    std::array<std::uint8_t, attribute_count> words_{};
    Environment::Values settled_; ///< measures of the find that its limit speaks of
    Why why_ = Why::no_coupon;
};

} // namespace

Boundaries boundaries_of(std::shared_ptr<const CriteriaSet> set) {
    Boundaries out;
    out.set = std::move(set);
    for (std::size_t r = 0; r < out.set->rules.size(); ++r)
        for (std::size_t c = 0; c < out.set->classes.size(); ++c)
            if (out.set->rules[r].limits[c].kind == Limit::Kind::value) Maker(*out.set, r, c).make(out);
    return out;
}

Boundaries boundaries_of(Catalogue &catalogue, const std::string &set_name,
                         std::shared_ptr<const CriteriaSet> set) {
    Boundaries out = boundaries_of(std::move(set));
    const auto with_cases = shipped_in("cases/");
    if (std::find(with_cases.begin(), with_cases.end(), set_name) != with_cases.end())
        out.written = try_cases(catalogue, {set_name});
    return out;
}

} // namespace beadbook
