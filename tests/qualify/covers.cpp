#include "covers.hpp"

#include <bit>

namespace beadbook::test {

CoverProblem random_cover(std::mt19937 &random, std::size_t elements, std::size_t sets, std::size_t percent) {
    CoverProblem out{sets, {}};
    for (std::size_t e = 0; e < elements; ++e) {
        Bits holders(sets);
        for (std::size_t s = 0; s < sets; ++s) holders[s] = random() % 100 < percent;
        while (holders.count() < 2) holders.set(random() % sets);
        out.holders.push_back(std::move(holders));
    }
    return out;
}

CoverProblem lines_to_meet(int dimension) {
    int points = 1;
    for (int d = 0; d < dimension; ++d) points *= 3;
    const auto third_on_line = [&](int a, int b) { // the three coordinates add up to a multiple of 3
        int out = 0;
        for (int place = 1; place < points; place *= 3)
            out += (6 - a / place % 3 - b / place % 3) % 3 * place;
        return out;
    };
    CoverProblem out{static_cast<std::size_t>(points), {}};
    for (int a = 0; a < points; ++a)
        for (int b = a + 1; b < points; ++b)
            if (const int c = third_on_line(a, b); c > b) {
                Bits line(out.sets);
                for (const int p : {a, b, c}) line.set(static_cast<std::size_t>(p));
                out.holders.push_back(std::move(line));
            }
    return out;
}

std::size_t fewest_by_trying(const CoverProblem &problem) {
    std::size_t out = problem.sets;
    for (unsigned chosen = 0; chosen < 1U << problem.sets; ++chosen) {
        const auto size = static_cast<std::size_t>(std::popcount(chosen));
        if (size >= out) continue;
        std::vector<std::size_t> list;
        for (std::size_t s = 0; s < problem.sets; ++s)
            if ((chosen >> s & 1U) != 0) list.push_back(s);
        if (problem.covered_by(list)) out = size;
    }
    return out;
}

} // namespace beadbook::test
