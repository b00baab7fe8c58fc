#include "judge/held.hpp"

#include "judge/neighbours.hpp"
#include "judge/window.hpp"

#include <algorithm>

namespace beadbook {
namespace {

class Bounds {
public:
    Bounds(const Evaluation &e, std::size_t rule, std::size_t class_index, std::span<const Member> members)
        : e_(e), index_(rule), rule_(e.set.rules[rule]), bound_(e.bound.rule(rule).window(class_index)),
          window_(bound_.window), members_(members), width_(bound_.width), whole_(bound_.whole) {}

    HeldBounds compute() {
        settle_window();
        if (out_.missing_window.any()) return std::move(out_);
        for (const auto &m : members_) sort_in(m);
        if (whole_ && !rule_.linked) {
            auto all = certain_;
            all.insert(all.end(), certain_unplaced_.begin(), certain_unplaced_.end());
            if (const auto largest =
                    std::max_element(mergeable_.begin(), mergeable_.end(),
                                     [&](auto a, auto b) { return *weight(a) < *weight(b); });
                largest != mergeable_.end())
                all.push_back(*largest);
            out_.least.push_back({total(all), std::nullopt, items_of(all)});
            if (out_.doubts.any() && bounded_) out_.most = total_of_all();
            return std::move(out_);
        }
        if (!certain_unplaced_.empty() || unplaced_uncertain_) out_.doubts |= Missing::place();
        out_.least = worst(certain_);
        add_alone();
        if (out_.doubts.any() && bounded_) upper_bound();
        return std::move(out_);
    }

private:
    using Items = Several<std::uint32_t>;

    void settle_window() {
        const bool whole_weld = window_ && window_->kind == Window::Kind::whole_weld;
        if (!whole_weld && e_.coupon.turn_unknown()) out_.doubts |= lack_of(Quantity::weld_length);
        out_.missing_window = bound_.missing;
        out_.window = bound_.length;
    }

    std::optional<Exact> weight(std::uint32_t i) const {
        if (rule_.kind == Rule::Kind::count) return Exact(1);
        const auto &measures = e_.items[i].measures;
        if (!measures.has(rule_.summed)) return std::nullopt;
        if (rule_.as_rectangles) return as_rectangles(e_.items[i]);
        return measures[rule_.summed];
    }

    /// Areas of what was joined add.
    Exact as_rectangles(const Item &item) const {
        Exact sum = 0;
        for (const std::size_t k : item.members)
            if (const auto one = e_.indications[k].area_as_rectangle()) sum = sum + *one;
        return sum;
    }

    void sort_in(const Member &m) {
        const Item &item = e_.items[m.item];
        if (!weight(m.item)) {
            out_.doubts |= lack_of(rule_.summed) | m.doubts;
            bounded_ = false;
            return;
        }
        if (item.may_merge.any() && rule_.kind == Rule::Kind::sum) {
            // Joined ones are longer by their gaps, and shorter in sum where they overlap: only each alone is
            // certain.
            out_.doubts |= item.may_merge | m.doubts;
            bounded_ = false;
            if (m.certain == Truth::yes) mergeable_.push_back(m.item);
            return;
        }
        const bool placed = item.place && (!area() || item.across);
        open_end_ = open_end_ || item.open_end;
        if (m.certain != Truth::yes) {
            out_.doubts |= m.doubts;
            uncertain_.push_back(m.item);
            unplaced_uncertain_ = unplaced_uncertain_ || !placed;
        } else {
            (placed ? certain_ : certain_unplaced_).push_back(m.item);
            if (item.open_end) out_.doubts |= lack_of(Quantity::length);
            if (item.place && !placed) out_.doubts |= Missing::across();
        }
    }

    bool by_length() const { return rule_.kind == Rule::Kind::sum && rule_.summed == Quantity::length; }
    bool area() const { return window_ && window_->kind == Window::Kind::area; }

    Exact total(const Items &items) const {
        Exact sum = 0;
        for (const auto i : items) sum = sum + *weight(i);
        return sum;
    }

    Exact total_of_all() const { return total(certain_) + total(certain_unplaced_) + total(uncertain_); }

    static Items items_of(const Items &items) {
        Items out = items;
        std::sort(out.begin(), out.end());
        return out;
    }

    /// One that is not placed still lies somewhere, whole or as much as the window holds.
    void add_alone() {
        if (rule_.least_group > 1) return;
        Items lone = certain_unplaced_;
        lone.insert(lone.end(), mergeable_.begin(), mergeable_.end());
        for (const auto i : lone) {
            Exact alone = *weight(i);
            if (by_length() && window_) alone = std::min(alone, Exact(width_));
            out_.least.push_back({alone, std::nullopt, {i}});
        }
    }

    void upper_bound() {
        const bool open = e_.coupon.turn_unknown();
        if (!certain_unplaced_.empty() || unplaced_uncertain_ || open || open_end_) {
            out_.most = area() && !open ? area_upper_bound() : total_of_all();
            return;
        }
        Items all = certain_;
        all.insert(all.end(), uncertain_.begin(), uncertain_.end());
        Exact most = 0;
        for (const auto &held : worst(all)) most = std::max(most, held.value);
        out_.most = most;
    }

    /// Without places across, all that lie within the longest side along may lie in one rectangle.
    Exact area_upper_bound() const {
        Several<Stretch> along;
        Int128 nowhere = 0;
        for (const auto &m : members_) {
            const auto &place = e_.items[m.item].place;
            if (place && !e_.items[m.item].open_end)
                along.push_back({place->from.nm, place->to.nm, 1, 0, 0, along.size()});
            else
                ++nowhere;
        }
        const auto longest = static_cast<std::int64_t>(window_->longest_side.num());
        return Exact::whole(most_weight(view(along), longest, e_.coupon.around()).held + nowhere);
    }

    Few<Held> worst(const Items &items) const {
        if (items.empty()) return {};
        if (!rule_.linked) return Few<Held>(1, worst_window(items));
        Several<Span> spans;
        Several<std::int64_t> lengths;
        for (const auto i : items) {
            spans.push_back(*e_.items[i].place);
            lengths.push_back(spans.back().to.nm - spans.back().from.nm);
        }
        const Condition::Edge &edge = rule_.linked->edges[0];
        const auto links = [&](std::int64_t gap, std::int64_t longest) {
            Environment::Values group;
            group.set(Quantity::longest, Exact(longest));
            const Evaluated limit = edge.right.evaluate(Environment{e_.coupon.values, &group});
            // Not known links: a larger group is the stricter reading.
            return !limit.known() || holds(Exact(gap), edge.compare, limit.value);
        };
        Few<Held> out;
        for (const auto &group : groups_in_line(view(spans), view(lengths), e_.coupon.around(), links)) {
            if (group.size() < rule_.least_group) continue;
            Items chosen;
            for (const auto k : group) chosen.push_back(items[k]);
            if (window_ && !whole_) {
                out.push_back(worst_window(chosen));
            } else {
                const Span place{spans[group.front()].from, spans[group.back()].to};
                out.push_back({total(chosen), place, items_of(chosen)});
            }
        }
        return out;
    }

    Held worst_window(const Items &items) const {
        Several<Stretch> stretches;
        for (const auto i : items) {
            const Item &item = e_.items[i];
            Stretch s{item.place->from.nm, item.place->to.nm, weight(i)->num(), 0, 0, stretches.size()};
            if (item.across) s.across_from = item.across->from.nm, s.across_to = item.across->to.nm;
            stretches.push_back(s);
        }
        const auto around = e_.coupon.around();
        WorstWindow worst;
        if (area())
            worst = most_in_area(view(stretches), window_->area.num(),
                                 static_cast<std::int64_t>(window_->longest_side.num()), enough(), around);
        else
            worst = by_length() ? most_length(view(stretches), width_, around)
                                : most_weight(view(stretches), width_, around);
        Items inside;
        for (std::size_t k = 0; k < items.size(); ++k)
            if (lies_in(stretches[k], worst, around)) inside.push_back(items[k]);
        const Span place = on_weld(worst, around);
        return {Exact::whole(worst.held), place, items_of(inside)};
    }

    /// The window as people lay it: on a closed weld within the first turn, on a straight one not past its
    /// ends.
    Span on_weld(WorstWindow w, std::optional<std::int64_t> around) const {
        std::int64_t shift = 0;
        if (around) {
            const std::int64_t turns = w.from >= 0 ? w.from / *around : -((-w.from + *around - 1) / *around);
            shift = -turns * *around;
        } else if (w.from < 0) {
            shift = -w.from;
        } else if (const auto length = e_.coupon.line.length; length && w.to > length->nm) {
            shift = std::max(length->nm - w.to, -w.from);
        }
        return {{w.from + shift}, {w.to + shift}};
    }

    static bool lies_in(const Stretch &s, const WorstWindow &w, std::optional<std::int64_t> around) {
        for (std::int64_t turn = 0; turn <= (around ? 2 : 0); ++turn) {
            const std::int64_t by = turn * around.value_or(0);
            if (s.to + by > w.from && s.from + by <= w.to) return true;
        }
        return false;
    }

    /// A count past which no class accepts.
    std::size_t enough() const {
        Exact most = 0;
        each_of(e_.bound.rule(index_).classes(Limit::Kind::value), [&](std::size_t c) {
            const Evaluated &value = e_.bound.limit(index_, c).of_coupon();
            if (value.known()) most = std::max(most, value.value);
        });
        return static_cast<std::size_t>(most.num() / most.den());
    }

    const Evaluation &e_;
    std::size_t index_;
    const Rule &rule_;
    const BoundWindow &bound_;
    const Window *window_; ///< null: whole groups in line
    std::span<const Member> members_;
    HeldBounds out_;
    std::int64_t width_;
    bool whole_;
    bool bounded_ = true;
    bool unplaced_uncertain_ = false;
    bool open_end_ = false; ///< nobody told where some of them end
    Items certain_, certain_unplaced_, uncertain_, mergeable_;
};

} // namespace

HeldBounds bounds_of(const Evaluation &evaluation, std::size_t rule, std::size_t class_index,
                     std::span<const Member> members) {
    return Bounds(evaluation, rule, class_index, members).compute();
}

Evaluated prorated(const Exact &limit, const std::optional<Exact> &window, const Coupon &coupon) {
    if (!coupon.values.has(Quantity::weld_length)) return {0, lack_of(Quantity::weld_length)};
    if (!window) return {0, {}};
    const Exact length = coupon.values[Quantity::weld_length];
    return {length < *window ? limit * length / *window : limit, {}};
}

} // namespace beadbook
