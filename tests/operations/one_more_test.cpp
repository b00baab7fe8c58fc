#include "operations/one_more.hpp"

#include "catch.hpp"
#include "operations/yard.hpp"

#include <algorithm>

using namespace beadbook;
using namespace beadbook::test;

namespace {

const Yard::Fields flat{{"form", "plate"},       {"seam", ""},       {"diameter", ""}, {"position", "1G"},
                        {"weld-length", "8 in"}, {"progression", ""}};

std::vector<OneMore> more_for(Yard &yard) {
    return one_more_coupon(yard.office, standing_of(yard.office, "L1", parse_day("2026-11-25")));
}

const AddedRange *added(const OneMore &one, Trait of) {
    const auto found =
        std::find_if(one.adds.begin(), one.adds.end(), [&](const AddedRange &a) { return a.of == of; });
    return found == one.adds.end() ? nullptr : &*found;
}

/// The one that differs from the test in this trait.
const OneMore *other_in(const std::vector<OneMore> &all, Trait of, const std::string &test) {
    for (const auto &one : all)
        if (one.coupon.word(of) != test) return &one;
    return nullptr;
}

} // namespace

TEST_CASE("one more coupon adds positions to who welds flat, and nothing of it to who welds in all",
          "[standing]") {
    Yard yard;
    CHECK(more_for(yard).empty());
    yard.coupon("Q-1", "2026-11-02", true, flat);
    yard.qualify("Q-1");
    const auto all = more_for(yard);
    REQUIRE_FALSE(all.empty());
    CHECK(all.size() <= 5);
    const OneMore *position = other_in(all, Trait::position, "1G");
    REQUIRE(position);
    REQUIRE(added(*position, Trait::position));
    // A test in 2G is good for F and H (QW-461.9), and F is held.
    CHECK(position->coupon.word(Trait::position) == "2G");
    CHECK(added(*position, Trait::position)->words == std::vector<std::string>{"H"});
    yard.coupon("Q-2", "2026-11-03", true, {{"position", "6G"}});
    yard.qualify("Q-2");
    for (const auto &one : more_for(yard)) CHECK_FALSE(added(one, Trait::position));
}

TEST_CASE("a thicker coupon adds the walls that nothing held covers", "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2026-11-02");
    yard.qualify("Q-1");
    const auto thicker = [&] {
        const auto all = more_for(yard);
        return std::any_of(all.begin(), all.end(), [](const OneMore &one) {
            return *one.coupon.size(Trait::thickness) > Exact(3'810'000) && added(one, Trait::weld_thickness);
        });
    };
    CHECK(thicker());
    // 13 mm and more, in three layers, qualifies any thickness by these rules.
    yard.coupon("Q-2", "2026-11-03", true,
                {{"thickness", "0.75in"}, {"weld-thickness", "0.75in"}, {"layers", "4"}});
    yard.qualify("Q-2");
    CHECK_FALSE(thicker());
}

TEST_CASE("one more coupon of a kind that failed is as many as a retest asks", "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2026-11-02", true, flat);
    yard.qualify("Q-1");
    const auto asked = [&] {
        const auto all = more_for(yard);
        const OneMore *position = other_in(all, Trait::position, "1G");
        REQUIRE(position);
        return position->asked;
    };
    CHECK_FALSE(asked());
    Yard::Fields second = flat;
    second["position"] = "2G";
    yard.coupon("Q-2", "2026-11-03", false, second);
    REQUIRE(asked()); // QW-321.2, read: twice the coupons
    CHECK(asked()->asked == 2);
    CHECK(asked()->after->coupon == "Q-2");
    yard.coupon("Q-3", "2026-11-04", true, second);
    CHECK_FALSE(asked()); // the second
}

TEST_CASE("what holds no more adds nothing to be near to", "[standing]") {
    Yard yard;
    yard.coupon("Q-1", "2026-11-02", true, flat);
    yard.qualify("Q-1");
    yard.write([](Writing &w) { return revoke(w, {"L1", 1, {}, "doubt"}); });
    CHECK(more_for(yard).empty());
}
