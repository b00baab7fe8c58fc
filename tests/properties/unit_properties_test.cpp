// In which unit somebody looks at a coupon changes no verdict: tried on many random ones.
#include "catch.hpp"
#include "facts/coupon_record.hpp"
#include "random_case.hpp"

#include <array>
#include <cstdlib>

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// Sizes in either unit, at least one of them.
std::map<std::string, std::string> random_sizes(std::mt19937 &random) {
    const auto pick = [&](int from, int to) { return std::uniform_int_distribution<int>(from, to)(random); };
    std::map<std::string, std::string> out;
    for (const char *field : {"thickness", "thickness-2", "weld-thickness", "weld-length", "diameter"})
        if (pick(0, 2) > 0) out[field] = std::to_string(pick(1, 9)) + (pick(0, 3) > 0 ? " in" : " mm");
    if (out.empty()) out["thickness"] = "3 mm";
    return out;
}

/// The same sizes with bare numbers taken in a unit, or in that of the sizes.
std::optional<Unit> held_by(std::map<std::string, std::string> sizes, const std::string &units) {
    if (!units.empty()) sizes["units"] = units;
    CouponRecord out;
    out.set_all(sizes);
    return out.facts().values.measured_in();
}

} // namespace

TEST_CASE("looking at a coupon in other units changes no verdict", "[properties]") {
    std::mt19937 random(20261128);
    const auto sets = all_sets();
    std::size_t told_apart = 0;
    const std::size_t count = coupons_to_try(20'000);
    for (std::size_t n = count; n > 0; --n) {
        const CriteriaSet &set = *sets[n % sets.size()];
        RandomCase c = random_case(random, set);
        const auto sizes = random_sizes(random);
        std::array<std::vector<Verdict>, 3> said;
        const std::array<std::string, 3> looks{"", "in", "mm"};
        for (std::size_t i = 0; i < looks.size(); ++i) {
            c.coupon.values.measure_in(held_by(sizes, looks[i]));
            said[i] = verdicts_of(set, c);
        }
        INFO(set.name << "\n" << described(c));
        REQUIRE(said[0] == said[1]);
        REQUIRE(said[0] == said[2]);
        c.coupon.values.measure_in(Unit::inch);
        const auto inches = verdicts_of(set, c);
        c.coupon.values.measure_in(Unit::millimetre);
        told_apart += inches != verdicts_of(set, c) ? 1 : 0;
    }
    CHECK((told_apart > 0 || count < 10'000)); // some verdicts hang on it, if few
}

TEST_CASE("a limit that is printed in two units holds by the walls' unit, else by that of all sizes") {
    using Sizes = std::map<std::string, std::string>;
    const Sizes inches{{"thickness", "0.5 in"}, {"weld-length", "12 in"}};
    for (const char *units : {"", "in", "mm"}) {
        CHECK(held_by(inches, units) == Unit::inch);
        CHECK(held_by({{"thickness", "0.5 in"}, {"weld-length", "305 mm"}}, units) == Unit::inch);
        CHECK(held_by({{"thickness", "12 mm"}, {"weld-length", "12 in"}}, units) == Unit::millimetre);
        CHECK(held_by({{"diameter", "60 mm"}, {"weld-length", "12 mm"}}, units) == Unit::millimetre);
        // Neither is fixed, so that either counts.
        CHECK(held_by({{"thickness", "0.5 in"}, {"thickness-2", "12 mm"}}, units) == std::nullopt);
        CHECK(held_by({{"diameter", "2 in"}, {"weld-length", "160 mm"}}, units) == std::nullopt);
    }
    // A bare number is said in the unit that is told, and of no size at all that alone is known.
    CHECK(held_by({{"thickness", "12"}}, "mm") == Unit::millimetre);
    CHECK(held_by({}, "mm") == Unit::millimetre);
    CHECK(held_by({}, "") == std::nullopt);
}
