#include "judge/neighbours.hpp"

#include "catch.hpp"

#include <random>

using namespace beadbook;

namespace {

/// Of one before all others that are marked, each way round.
std::int64_t by_trying_all(const std::vector<Span> &spans, const std::vector<bool> &to, std::size_t of,
                           std::optional<std::int64_t> around) {
    std::int64_t least = longest_length.nm;
    const auto take = [&](std::int64_t from, std::int64_t to_nm) {
        least = std::min(least, std::max<std::int64_t>(0, from - to_nm));
    };
    for (std::size_t k = 0; k < spans.size(); ++k) {
        if (k == of || !to[k]) continue;
        const bool after = spans[k].from >= spans[of].from;
        if (after)
            take(spans[k].from.nm, spans[of].to.nm);
        else
            take(spans[of].from.nm, spans[k].to.nm);
        if (!around) continue;
        take(spans[k].from.nm + *around, spans[of].to.nm);
        take(spans[of].from.nm + *around, spans[k].to.nm);
    }
    return least;
}

} // namespace

TEST_CASE("the way to the nearest of some is that of all pairs", "[judge]") {
    std::mt19937 random(3);
    const auto pick = [&](int from, int to) { return std::uniform_int_distribution<int>(from, to)(random); };
    for (int n = 0; n < 5'000; ++n) {
        const std::optional<std::int64_t> around = n % 2 ? std::optional<std::int64_t>(100) : std::nullopt;
        std::vector<Span> spans;
        std::vector<bool> to;
        for (int count = pick(1, 7); count > 0; --count) {
            const int from = pick(0, 99);
            spans.push_back({{from}, {from + pick(0, 30)}});
            to.push_back(pick(0, 2) > 0);
        }
        const auto found = gaps_to(spans, to, around);
        for (std::size_t k = 0; k < spans.size(); ++k) {
            INFO("coupon " << n << ", the " << k << "th of " << spans.size());
            CHECK(found[k] == by_trying_all(spans, to, k, around));
        }
    }
}
