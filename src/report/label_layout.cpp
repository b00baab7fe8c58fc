#include "report/label_layout.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace beadbook {
namespace {

/// Farther aside than so a label goes into another row, if that brings it nearer.
constexpr double far_aside = 34;

/// Labels that touch, pushed together round the middle of where they would be.
struct LabelBlock {
    std::vector<std::size_t> labels;
    double wanted = 0; ///< sum over the labels of where the block would begin for each
    double width = 0;  ///< gaps between too
    double left = 0;
};

class LabelSpread {
public:
    LabelSpread(const std::vector<LabelWish> &wishes, double from, double to, double gap)
        : wishes_(wishes), from_(from), to_(to), gap_(gap), order_(wishes.size()) {
        std::iota(order_.begin(), order_.end(), std::size_t{0});
        std::stable_sort(order_.begin(), order_.end(),
                         [&](std::size_t a, std::size_t b) { return wishes_[a].at < wishes_[b].at; });
    }

    std::vector<LabelSpot> operator()() {
        if (wishes_.empty()) return {};
        double all = 0;
        for (const auto &wish : wishes_) all += wish.width + gap_;
        auto rows = static_cast<std::size_t>(std::max(1.0, std::ceil(all / std::max(to_ - from_, 1.0))));
        for (; rows < wishes_.size(); ++rows)
            if (in_rows(rows)) break;
        if (rows >= wishes_.size()) in_rows(wishes_.size());
        come_nearer();
        return spots_;
    }

private:
    double left_of(std::size_t i) const {
        return std::max(from_, std::min(wishes_[i].at - wishes_[i].width / 2, to_ - wishes_[i].width));
    }

    /// By turns into so many rows; false if a row is too short for it, or one comes too far aside.
    bool in_rows(std::size_t rows) {
        spots_.assign(wishes_.size(), {});
        bool near = true;
        for (std::size_t row = 0; row < rows; ++row) {
            std::vector<LabelBlock> blocks;
            for (std::size_t k = row; k < order_.size(); k += rows) add(blocks, order_[k]);
            for (const auto &block : blocks) {
                double left = block.left;
                if (block.left + block.width > to_ + 0.001 && block.labels.size() > 1) near = false;
                for (const std::size_t i : block.labels) {
                    spots_[i] = {left, row};
                    near = near && std::abs(left - left_of(i)) <= far_aside;
                    left += wishes_[i].width + gap_;
                }
            }
        }
        return near;
    }

    void add(std::vector<LabelBlock> &blocks, std::size_t i) const {
        blocks.push_back({{i}, left_of(i), wishes_[i].width, left_of(i)});
        while (blocks.size() > 1) {
            LabelBlock &before = blocks[blocks.size() - 2], &last = blocks.back();
            if (before.left + before.width + gap_ <= last.left) return;
            // Each label of the last would have the joint block begin that much farther left.
            before.wanted += last.wanted - static_cast<double>(last.labels.size()) * (before.width + gap_);
            before.width += gap_ + last.width;
            before.labels.insert(before.labels.end(), last.labels.begin(), last.labels.end());
            before.left = std::max(from_, std::min(before.wanted / static_cast<double>(before.labels.size()),
                                                   to_ - before.width));
            blocks.pop_back();
        }
    }

    /// Where a nearer row has room at the very place, a label needs none farther off.
    void come_nearer() {
        for (const std::size_t i : order_)
            for (std::size_t row = 0; row < spots_[i].row; ++row)
                if (free(row, i)) {
                    spots_[i] = {left_of(i), row};
                    break;
                }
    }
    bool free(std::size_t row, std::size_t i) const {
        for (std::size_t other = 0; other < spots_.size(); ++other)
            if (other != i && spots_[other].row == row &&
                left_of(i) < spots_[other].left + wishes_[other].width + gap_ &&
                spots_[other].left < left_of(i) + wishes_[i].width + gap_)
                return false;
        return true;
    }

    const std::vector<LabelWish> &wishes_;
    double from_, to_, gap_;
    std::vector<std::size_t> order_;
    std::vector<LabelSpot> spots_;
};

} // namespace

std::vector<LabelSpot> spread_labels(const std::vector<LabelWish> &wishes, double from, double to,
                                     double gap) {
    return LabelSpread(wishes, from, to, gap)();
}

} // namespace beadbook
