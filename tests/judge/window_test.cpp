#include "judge/window.hpp"

#include "catch.hpp"

#include <algorithm>
#include <random>
#include <set>
#include <vector>

using namespace beadbook;

namespace {

/// Every rectangle from the edge of one to the edge of another, ending where any begins.
std::size_t by_trying_all(const std::vector<Stretch> &given, std::int64_t area, std::int64_t longest,
                          std::optional<std::int64_t> around) {
    std::vector<Stretch> all;
    for (std::int64_t turn = 0; turn <= (around ? 2 : 0); ++turn)
        for (Stretch s : given) {
            s.from += turn * around.value_or(0);
            s.to += turn * around.value_or(0);
            all.push_back(s);
        }
    std::size_t most = 0;
    for (const auto &low : all)
        for (const auto &high : all) {
            const std::int64_t height = std::max<std::int64_t>(high.across_from - low.across_to, 0);
            if (height >= longest) continue;
            const std::int64_t side = height == 0 ? longest : std::min(longest, (area - 1) / height + 1);
            std::vector<const Stretch *> inside;
            for (const auto &s : all)
                if (s.across_to >= low.across_to && s.across_from <= low.across_to + height)
                    inside.push_back(&s);
            for (const auto *last : inside) {
                std::set<std::size_t> touched;
                for (const auto *s : inside)
                    if (s->to > last->from - side && s->from <= last->from) touched.insert(s->id);
                most = std::max(most, touched.size());
            }
        }
    return most;
}

struct Spread {
    std::int64_t along, across, size, area, longest;
    std::size_t enough;
    std::optional<std::int64_t> around;
};

} // namespace

TEST_CASE("the most in an area is exact however many lie beside each other", "[window]") {
    const Spread spreads[] = {
        {60, 900, 3, 100, 60, 5, {}},   // many on one stretch, far apart across
        {60, 900, 3, 100, 60, 3, {}},   // and more than enough somewhere
        {200, 700, 9, 400, 60, 4, {}},  // some pass on along the weld
        {180, 600, 5, 300, 50, 4, 200}, // round a girth
    };
    for (const auto &spread : spreads) {
        bool crowded = false;
        for (unsigned seed = 1; seed <= 4; ++seed) {
            std::mt19937 random(seed);
            const auto pick = [&](std::int64_t to) {
                return std::uniform_int_distribution<std::int64_t>(0, to)(random);
            };
            std::vector<Stretch> given;
            const std::size_t count = spread.around ? 40 : 80;
            for (std::size_t i = 0; i < count; ++i) {
                const std::int64_t from = pick(spread.along), across = pick(spread.across);
                given.push_back(
                    {from, from + 1 + pick(spread.size), 1, across, across + pick(spread.size), i});
            }
            const std::size_t most = by_trying_all(given, spread.area, spread.longest, spread.around);
            const WorstWindow found =
                most_in_area(given, spread.area, spread.longest, spread.enough, spread.around);
            INFO(spread.along << " " << spread.across << " seed " << seed);
            if (most <= spread.enough)
                CHECK(found.held == static_cast<Int128>(most));
            else
                CHECK(found.held > static_cast<Int128>(spread.enough));
            crowded = crowded || found.held > 1;
        }
        CHECK(crowded);
    }
}

TEST_CASE("a crowd at the end of a stretch that is full of others is seen", "[window]") {
    // A hundred far apart across, which come first along, and three beside each other after them.
    std::vector<Stretch> given;
    for (std::size_t i = 0; i < 100; ++i) {
        const auto at = static_cast<std::int64_t>(i);
        given.push_back({at, at + 1, 1, 1000 * at, 1000 * at + 1, i});
    }
    for (std::size_t i = 100; i < 103; ++i) given.push_back({150, 151, 1, 500, 501, i});
    CHECK(most_in_area(given, 400, 200, 5, std::nullopt).held == 3);
    CHECK(most_in_area(given, 400, 200, 2, std::nullopt).held == 3);
}
