#include "operations/qualifying_many.hpp"

#include "catch.hpp"
#include "operations/yard.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// L1 and L2 passed; L3 failed, and nobody enrolled L9.
class ClassOfFour : public Yard {
public:
    ClassOfFour() {
        for (const auto &one : {std::pair{"L2", "S. Keel"}, {"L3", "A. Mast"}})
            write([&](Writing &w) { return enrol(w, {one.first, one.second, {}, {}, ""}); });
        coupon("Q-1", "2026-10-05");
        coupon("Q-2", "2026-10-05", true, {{"welder", "L2"}});
        coupon("Q-3", "2026-10-05", false, {{"welder", "L3"}});
        coupon("Q-4", "2026-10-05", true, {{"welder", "L9"}});
    }
    /// No marks: all on record.
    Done<QualifiedMany> those(const std::vector<std::string> &marks, const RuleWords &words = {}) {
        return write([&](Writing &w) { return qualify_many(w, {marks, {}, "asme-ix", "", words}); });
    }
    std::size_t held(const std::string &welder) { return book.welder(welder).qualifications.size(); }
};

const std::vector<std::string> all_four{"Q-1", "Q-2", "Q-3", "Q-4"};

} // namespace

TEST_CASE("of many coupons each is granted or told what it lacks, and one stops none of the others",
          "[standing]") {
    ClassOfFour yard;
    const QualifiedMany done = yard.those(all_four).value;
    REQUIRE(done.granted.size() == 2);
    CHECK(done.granted[0].coupon == "Q-1");
    CHECK(done.granted[1].granted.mark == "L2");
    CHECK(title_of(done.granted[1].granted.held.at(0)) == "#1 GTAW by asme-ix");
    REQUIRE(done.lacking.size() == 2);
    CHECK(done.lacking[0].welder == "L3");
    CHECK_THAT(done.lacking[0].why.at(0), says("was graded failed"));
    CHECK_THAT(done.lacking[1].why.at(0), says("there is no welder 'L9'"));
    CHECK(yard.held("L2") == 1);
    CHECK(yard.held("L3") == 0);

    const QualifiedMany again = yard.those({"Q-1", "Q-2"}).value;
    CHECK(again.granted.empty());
    REQUIRE(again.passed_over.size() == 2);
    CHECK_THAT(again.passed_over[1].why, says("it qualified welder L2 by asme-ix already, #1"));
    CHECK(yard.held("L2") == 1);
}

TEST_CASE("what a reason would set aside is told without one, a sentence each", "[standing]") {
    ClassOfFour yard;
    yard.coupon("Q-5", "2026-10-08", true, {{"welder", "L3"}});
    const QualifiedMany done = yard.those({"Q-5", "Q-1"}).value;
    REQUIRE(done.lacking.size() == 1);
    REQUIRE(done.lacking[0].why.size() == 1);
    CHECK_THAT(done.lacking[0].why[0],
               says("coupon Q-3 failed on 2026-10-05: 2 coupons must pass, 1 did") && !says("reason"));
    CHECK(yard.held("L1") == 1);
}

TEST_CASE("a word that cannot be taken stops all of many, and the coupon is named", "[standing]") {
    ClassOfFour yard;
    CHECK_THAT(yard.refusal([&] {
        yard.those(all_four, {{"position", "2G"}});
    }),
               says("4 of 4 cannot be taken, nothing was stored") &&
                   says("\nQ-1: coupon Q-1 says position '6G'"));
    yard.coupon("Q-6", "2026-10-05", true, {{"metal-group", ""}});
    CHECK_THAT(yard.refusal([&] {
        yard.those({"Q-6"}, {{"metal-group", "P99"}});
    }),
               says("metal group: 'P99' is not known to asme-ix"));
    CHECK_THAT(yard.refusal([&] { yard.those({"Q-1", "Q-77"}); }), says("there is no coupon 'Q-77'"));
    CHECK(yard.held("L1") == 0);
}

TEST_CASE("of all that are asked for, what is withdrawn is left out", "[standing]") {
    ClassOfFour yard;
    yard.write([](Writing &w) { return withdraw_coupon(w, "Q-2", "the wrong piece"); });
    const QualifiedMany done = yard.those({}).value;
    CHECK(done.granted.size() == 1);
    CHECK(done.lacking.size() == 2);
    REQUIRE(done.passed_over.size() == 1);
    CHECK(done.passed_over[0].why == "withdrawn: the wrong piece");
    CHECK(yard.those({"Q-2"}).value.lacking.size() == 1); // who names it is told that it does not qualify
}
