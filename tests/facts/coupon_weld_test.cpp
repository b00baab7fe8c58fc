#include "facts/coupon_weld.hpp"

#include "catch.hpp"

using namespace beadbook;

namespace {

std::vector<Weld> welds(const std::map<std::string, std::string> &fields) {
    CouponRecord coupon;
    coupon.set_all(fields);
    return welds_of(coupon);
}

} // namespace

TEST_CASE("layers told in one number are those of all processes; of each they are told in parts") {
    const std::string two = "GTAW 1/8in + SMAW 3/8in";
    CHECK(welds({{"process", "GTAW"}, {"layers", "3"}})[0].size(Trait::layers) == Exact(3));
    for (const auto &weld : welds({{"process", two}, {"layers", "3"}}))
        CHECK_FALSE(weld.knows(Trait::layers));
    const auto told = welds({{"process", two}, {"layers", "1 + 3"}});
    CHECK(told[0].size(Trait::layers) == Exact(1));
    CHECK(told[1].size(Trait::layers) == Exact(3));
    CouponRecord coupon;
    coupon.set("layers", "1+3");
    CHECK(coupon.get("layers") == "1 + 3");
    CHECK(coupon.facts().values[Quantity::layers] == 4);
    CHECK_THROWS_AS(coupon.set("layers", "1 + "), DataError);
    CHECK_THROWS_AS(coupon.set("layers", "1 + 0"), DataError);
}

TEST_CASE("what the first process welded backs the next") {
    const std::string two = "141 4mm + 111 8mm";
    CHECK(welds({{"process", two}, {"backing", "ss nb"}})[0].word(Trait::backing) == "ss nb");
    CHECK(welds({{"process", two}, {"backing", "ss nb"}})[1].word(Trait::backing).empty());
    CHECK(welds({{"process", two}, {"backing", "ss nb + ss nb"}})[1].word(Trait::backing).empty());
    CHECK(welds({{"process", two}, {"backing", "ss nb + ss mb"}})[1].word(Trait::backing) == "ss mb");
}
