#include "judge/nearest_gaps.hpp"

#include "judge/judgement.hpp"
#include "judge/neighbours.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <utility>

namespace beadbook {
namespace {

class NearestGaps {
public:
    NearestGaps(std::vector<Item> &items, const Coupon &coupon, const std::vector<Indication> &indications,
                const Vocabulary &vocabulary, int engine)
        : items_(items), coupon_(coupon), indications_(indications), vocabulary_(vocabulary),
          engine_(engine) {}

    void set() {
        std::array<Line, exam_count> by_exam;
        for (const std::size_t i : imperfections())
            by_exam[static_cast<std::size_t>(exam_of(i))].push_back(i);
        for (const auto &line : by_exam) {
            const auto ways = ways_in(line);
            for (std::size_t k = 0; k < line.size(); ++k) give(line[k], Quantity::nearest_gap, ways[k]);
        }
    }

    /// Kinds of one wider type are alike; one that was joined of several is like each of them.
    void set_alike() {
        std::map<std::pair<Exam, TypeId>, Line> by_type;
        const Line all = imperfections();
        for (const std::size_t i : all)
            for (const TypeId type : widest_of(i)) by_type[{exam_of(i), type}].push_back(i);
        std::vector<Way> least(items_.size(), longest_length.nm);
        for (const auto &[of, line] : by_type) {
            const auto ways = ways_in(line);
            for (std::size_t k = 0; k < line.size(); ++k) {
                Way &way = least[line[k]];
                way = way && ways[k] ? Way(std::min(*way, *ways[k])) : std::nullopt;
            }
        }
        for (const std::size_t i : all) give(i, Quantity::nearest_like_gap, least[i]);
    }

    /// As engines before the fourth did it.
    void set_among_all() {
        Line all;
        for (std::size_t i = 0; i < items_.size(); ++i) {
            if (!items_[i].place) return;
            all.push_back(i);
        }
        if (coupon_.turn_unknown() && all.size() > 1) return;
        const auto gaps = gaps_in(all);
        for (const std::size_t i : all) give(i, Quantity::nearest_gap, gaps[i]);
    }

private:
    using Line = Several<std::size_t>;
    using Way = std::optional<std::int64_t>;

    Exam exam_of(std::size_t i) const { return indications_[items_[i].members.front()].exam; }

    Line imperfections() const {
        Line out;
        for (std::size_t i = 0; i < items_.size(); ++i)
            if (items_[i].counts != Truth::no &&
                !vocabulary_[indications_[items_[i].members.front()].type].measured)
                out.push_back(i);
        return out;
    }

    Few<TypeId> widest_of(std::size_t i) const {
        Few<TypeId> out;
        for (const std::size_t m : items_[i].members) out.push_back(vocabulary_.widest(indications_[m].type));
        std::sort(out.begin(), out.end());
        out.erase(std::unique(out.begin(), out.end()), out.end());
        return out;
    }

    Several<Way> ways_in(const Line &line) const {
        // A lone one has no neighbour, wherever it lies.
        if (line.size() == 1 && engine_ >= first_with_open_silence) return Several<Way>(1, longest_length.nm);
        Several<Way> out(line.size(), Way());
        if (coupon_.turn_unknown() && line.size() > 1) return out;
        std::vector<bool> certain;
        for (const std::size_t i : line) {
            const Item &item = items_[i];
            if (!item.place || ((item.may_merge.any() || item.open_end) && line.size() > 1)) return out;
            certain.push_back(item.counts == Truth::yes);
        }
        const auto all = gaps_in(line);
        const bool any_open = std::find(certain.begin(), certain.end(), false) != certain.end();
        // With each one beside the certain ones alone: what does not count either way changes nothing.
        const auto least = any_open ? gaps_to(view(spans_of(line)), certain, coupon_.around()) : all;
        for (std::size_t k = 0; k < line.size(); ++k)
            if (least[k] == all[k]) out[k] = all[k];
        return out;
    }

    Several<Span> spans_of(const Line &line) const {
        Several<Span> out;
        for (const std::size_t i : line) out.push_back(*items_[i].place);
        return out;
    }

    Several<std::int64_t> gaps_in(const Line &line) const {
        Several<std::int64_t> nearest(line.size(), longest_length.nm);
        for (const Pair &pair : neighbour_pairs(view(spans_of(line)), coupon_.around()))
            for (const std::size_t k : {pair.first, pair.second}) nearest[k] = std::min(nearest[k], pair.gap);
        return nearest;
    }

    void give(std::size_t i, Quantity which, Way way) {
        if (way) items_[i].measures.set(which, Exact(*way));
    }

    std::vector<Item> &items_;
    const Coupon &coupon_;
    const std::vector<Indication> &indications_;
    const Vocabulary &vocabulary_;
    const int engine_;
};

} // namespace

void set_nearest_gaps(std::vector<Item> &items, const CriteriaSet &set, const Coupon &coupon,
                      const std::vector<Indication> &indications, const Vocabulary &vocabulary, int engine) {
    NearestGaps gaps(items, coupon, indications, vocabulary, engine);
    if (set.needs_nearest_gap) engine < first_with_rings ? gaps.set_among_all() : gaps.set();
    if (set.needs_nearest_like_gap) gaps.set_alike();
}

} // namespace beadbook
