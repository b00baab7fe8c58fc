// Whom a text means that names a welder.
#include "operations/welder_names.hpp"

#include "catch.hpp"
#include "operations/welder_meant.hpp"
#include "operations/yard.hpp"

using namespace beadbook;
using namespace beadbook::test;

TEST_CASE("a welder is called by the mark and by every name that he ever had", "[standing]") {
    const WelderNames welder("L1", {"Ann Oldname", "Ann Newname"});
    for (const char *text : {"L1", "Ann Oldname", "newname, ann", "A. Other (L1)", "ANN OLDNAME (L7)"}) {
        INFO(text);
        CHECK(welder.means(std::string(text)));
    }
    for (const char *text : {"L2", "l-01", "A. Oldname", "Oldname", "", "Bob Oldname"}) {
        INFO(text);
        CHECK_FALSE(welder.means(std::string(text)));
    }
    CHECK(welder.seen_as(std::string("l-01")));
    CHECK(welder.seen_as(std::string("LI")));
    CHECK_FALSE(welder.seen_as(std::string("L2")));
    CHECK(welder.taken_for(std::string("A. Oldname")) == "Ann Oldname");
    CHECK(welder.taken_for(std::string("Ann Newnane")) == "Ann Newname");
    CHECK(welder.taken_for(std::string("B. Shore")).empty());
    CHECK_FALSE(WelderNames("", {""}).means(std::string("")));
}

TEST_CASE("a coupon is a welder's by what it says, and by what somebody was sure of", "[standing]") {
    Yard yard; // L1 is J. Reef
    const WelderNames reef(yard.book, "L1");
    const auto of = [](const std::string &text, bool another = false) {
        CouponRecord coupon;
        coupon.set("welder", text);
        if (another) coupon.sure.emplace_back(welder_like_another);
        return coupon;
    };
    CHECK(welded_as(yard.book, of("L1"), reef));
    CHECK(welded_as(yard.book, of("Reef, J."), reef));
    CHECK(welded_as(yard.book, of("l-1"), reef));
    CHECK_FALSE(welded_as(yard.book, of("l-1", true), reef));
    CHECK(welded_as(yard.book, of("J. Reef", true), reef));
    CHECK_FALSE(welded_as(yard.book, of("John Reef"), reef));
    CHECK(may_be_welded_as(yard.book, of("John Reef"), reef));
    CHECK_FALSE(may_be_welded_as(yard.book, of("John Reef", true), reef));
    CHECK_FALSE(may_be_welded_as(yard.book, of("J. Reef"), reef));
    CHECK_FALSE(may_be_welded_as(yard.book, CouponRecord{}, reef));
    // Who is enrolled under the text itself is no other.
    yard.write([](Writing &w) { enrol(w, {"l-1", "B. Shore", {}, {}, "", true}); });
    CHECK_FALSE(welded_as(yard.book, of("l-1"), reef));
}

TEST_CASE("a failed test under any of the welder's names asks for a retest", "[standing]") {
    for (const char *text : {"Ann Learner", "l-02"}) {
        INFO(text);
        Yard yard;
        yard.coupon("Q-1", "2026-10-05", false, {{"welder", text}});
        yard.write([](Writing &w) { enrol(w, {"L2", "Ann Learner", {}, {}, ""}); });
        yard.write([](Writing &w) { change_welder(w, {"L2", "Ann Newname", {}, {}, "married"}); });
        yard.coupon("Q-2", "2026-10-06", true, {{"welder", "L2"}});
        CHECK_THAT(refused_to_qualify(yard, "Q-2"), says("2 coupons must pass, 1 did"));
    }
    // Of one under a name that may be his nobody can say, until somebody does.
    Yard yard;
    yard.coupon("Q-1", "2026-10-05", false, {{"welder", "A. Learner"}});
    yard.write([](Writing &w) { enrol(w, {"L2", "Ann Learner", {}, {}, ""}); });
    yard.coupon("Q-2", "2026-10-06", true, {{"welder", "L2"}});
    CHECK_THAT(refused_to_qualify(yard, "Q-2"),
               says("coupon Q-1 failed, and whether its welder 'A. Learner' is this one is not on record"));
    const auto granted = yard.qualify("Q-2", "asme-ix", "she is another");
    REQUIRE(granted.value.held.size() == 1);
    const auto &aside = granted.value.held[0].record.overridden;
    REQUIRE(aside.size() == 1);
    CHECK(aside[0].kind == Shortcoming::Kind::failed_whose);
    CHECK(aside[0].lacks == std::vector<std::string>{"A. Learner"});
}
