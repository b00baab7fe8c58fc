#include "by_hand.hpp"

#include <algorithm>
#include <array>

namespace beadbook::bench {
namespace {

constexpr std::int64_t thousandths(std::int64_t n) { return n * nm_per_inch / 1000; }

/// Of one class, at the job's thickness.
struct Row {
    std::int64_t size;  ///< lesser of T/3 or T/2 and so many thousandths
    std::int64_t sum;   ///< in an inch
    std::int64_t apart; ///< times the larger size
};
constexpr Row row(std::int64_t part, std::int64_t most, std::int64_t times, std::int64_t apart) {
    const std::int64_t size = std::min(job_thickness / part, most);
    return {size, times * size, apart};
}
constexpr std::array<Row, job_classes> table{row(3, thousandths(60), 2, 5), row(2, thousandths(80), 3, 4),
                                             row(2, thousandths(100), 6, 3)};

struct Numbered {
    std::int64_t from, to, size;
    int number;
};
using Line = std::array<Numbered, pores_each>;

Line in_order(const PoresOfCoupon &pores) {
    Line line;
    for (std::size_t i = 0; i < pores_each; ++i)
        line[i] = {pores[i].at, pores[i].at + pores[i].size, pores[i].size, static_cast<int>(i) + 1};
    std::sort(line.begin(), line.end(), [](const Numbered &a, const Numbered &b) { return a.from < b.from; });
    return line;
}

struct Worst {
    std::int64_t held = 0, from = 0;
};

/// The inch that holds most, of a pore that it cuts the part inside.
Worst worst_inch(const Line &line) {
    Worst worst;
    const auto try_at = [&](std::int64_t from) {
        const std::int64_t to = from + nm_per_inch;
        std::int64_t held = 0;
        for (const auto &p : line)
            held += std::max<std::int64_t>(0, std::min(p.to, to) - std::max(p.from, from));
        if (held > worst.held) worst = {held, from};
    };
    for (const auto &p : line) {
        try_at(p.from);
        try_at(p.to - nm_per_inch);
    }
    return worst;
}

/// Hands each pair of neighbours and the free way between them on: the next one, and the earlier one that
/// reaches furthest.
template <class F>
void for_neighbours(const Line &line, F f) {
    std::size_t furthest = 0;
    for (std::size_t i = 1; i < line.size(); ++i) {
        const auto pair = [&](std::size_t before) {
            f(line[before], line[i], std::max<std::int64_t>(0, line[i].from - line[before].to));
        };
        pair(i - 1);
        if (furthest != i - 1) pair(furthest);
        if (line[i].to > line[furthest].to) furthest = i;
    }
}

} // namespace

unsigned judge_by_hand(const PoresOfCoupon &pores) {
    const Line line = in_order(pores);
    unsigned rejected = 0;
    const Worst worst = worst_inch(line);
    for (std::size_t c = 0; c < job_classes; ++c) {
        bool out = worst.held > table[c].sum;
        for (const auto &p : line) out = out || p.size > table[c].size;
        if (!out)
            for_neighbours(line, [&](const Numbered &a, const Numbered &b, std::int64_t gap) {
                out = out || gap < table[c].apart * std::max(a.size, b.size);
            });
        rejected |= static_cast<unsigned>(out) << c;
    }
    return rejected;
}

std::vector<HandVerdict> judge_by_hand_with_reasons(const PoresOfCoupon &pores) {
    using Rule = HandReason::Rule;
    const Line line = in_order(pores);
    const Worst worst = worst_inch(line);
    std::vector<HandVerdict> out(job_classes);
    for (std::size_t c = 0; c < job_classes; ++c) {
        HandVerdict &verdict = out[c];
        const Row &row = table[c];
        for (const auto &p : line)
            if (p.size > row.size)
                verdict.reasons.push_back({Rule::size, {p.number}, p.from, p.to, p.size, row.size});
        if (worst.held > row.sum) {
            const std::int64_t to = worst.from + nm_per_inch;
            std::vector<int> inside;
            for (const auto &p : line)
                if (p.to > worst.from && p.from <= to) inside.push_back(p.number);
            std::sort(inside.begin(), inside.end());
            verdict.reasons.push_back({Rule::sum, std::move(inside), worst.from, to, worst.held, row.sum});
        }
        for_neighbours(line, [&](const Numbered &a, const Numbered &b, std::int64_t gap) {
            const std::int64_t least = row.apart * std::max(a.size, b.size);
            if (gap >= least) return;
            verdict.reasons.push_back({Rule::gap,
                                       {std::min(a.number, b.number), std::max(a.number, b.number)},
                                       a.to,
                                       b.from,
                                       gap,
                                       least});
        });
        verdict.rejected = !verdict.reasons.empty();
    }
    return out;
}

} // namespace beadbook::bench
