#include "report/label_layout.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace beadbook {
namespace {

/// Labels that stand already, by row.
class LabelRows {
public:
    LabelRows(double from, double to, double gap) : from_(from), to_(to), gap_(gap) {}

    LabelSpot place(const LabelWish &wish) {
        LabelSpot best;
        double least = std::numeric_limits<double>::infinity();
        // A row that is free at the very place ends the search: further ones cost more.
        for (std::size_t row = 0; row <= rows_.size(); ++row) {
            if (3.0 * static_cast<double>(row) >= least) break;
            for (int step = -14; step <= 14; ++step) {
                const double left = clamped(wish.at - wish.width / 2 + 7.0 * step, wish.width);
                if (!free(row, left, left + wish.width)) continue;
                const double cost = 3.0 * static_cast<double>(row) + 0.7 * std::abs(step) +
                                    6.0 * crossed(row, wish.at, left + wish.width / 2);
                if (cost >= least) continue;
                least = cost;
                best = {left, row};
            }
        }
        if (best.row >= rows_.size()) rows_.resize(best.row + 1);
        rows_[best.row].push_back({best.left, best.left + wish.width});
        return best;
    }

private:
    struct Taken {
        double left, right;
    };

    double clamped(double left, double width) const { return std::max(from_, std::min(left, to_ - width)); }
    bool free(std::size_t row, double left, double right) const {
        if (row >= rows_.size()) return true;
        return std::none_of(rows_[row].begin(), rows_[row].end(), [&](const Taken &one) {
            return left < one.right + gap_ && one.left - gap_ < right;
        });
    }
    /// Labels in nearer rows that a straight leader runs over.
    double crossed(std::size_t row, double from, double to) const {
        double out = 0;
        for (std::size_t r = 0; r < row; ++r) {
            const double at =
                from + (to - from) * (static_cast<double>(r) + 0.5) / (static_cast<double>(row) + 0.5);
            out += static_cast<double>(std::count_if(rows_[r].begin(), rows_[r].end(), [&](const Taken &one) {
                return at > one.left - 1 && at < one.right + 1;
            }));
        }
        return out;
    }

    double from_, to_, gap_;
    std::vector<std::vector<Taken>> rows_;
};

} // namespace

std::vector<LabelSpot> spread_labels(const std::vector<LabelWish> &wishes, double from, double to,
                                     double gap) {
    std::vector<std::size_t> order(wishes.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return wishes[a].at < wishes[b].at; });
    LabelRows rows(from, to, gap);
    std::vector<LabelSpot> out(wishes.size());
    for (const std::size_t i : order) out[i] = rows.place(wishes[i]);
    return out;
}

} // namespace beadbook
