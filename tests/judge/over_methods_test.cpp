// Each method is counted by itself; what two found and lies apart must hold together too, and what they may
// both have seen of one imperfection counts once. Pieces of unlike types that one rule limits may be one.
#include "case.hpp"
#include "catch.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

std::string before_over_methods(const JudgedCase &c) { return verdicts_before(first_to_take_together, c); }

std::string by_rule(const std::string &rule, std::vector<std::string> log, const std::string &coupon = "") {
    const auto set = set_from(head() +
                              "rules:\n  - {id: each, types: any, exams: [VT, MT, PT, RT], allowed: no "
                              "limit, clause: c, standing: {house: x}}\n  - {id: r, types: any, exams: "
                              "[VT, MT, PT], " +
                              rule + ", clause: c, standing: {house: x}}\n");
    const auto c = judged(set, {coupon, std::move(log)});
    CHECK(before_over_methods(c) == "A accept, B accept");
    return c.verdicts();
}

const std::string spaced = "measure: gap, at least: 1 in",
                  counted = "measure: count, window: 6 in, at most: 2",
                  summed = "measure: sum of size, window: whole weld, at most: 0.2 in";
constexpr const char *both_accept = "A accept, B accept", *both_open = "A cannot say, B cannot say";

} // namespace

TEST_CASE("what lies apart is another, by whichever method it was found") {
    CHECK(by_rule(spaced, {"VT gp 0.1 at 1", "MT gp 0.1 at 1.5"}) == both_open);
    CHECK(by_rule(spaced, {"VT gp 0.1 at 1", "MT gp 0.1 at 2.1"}) == both_accept);
    CHECK(by_rule(counted, {"VT gp 0.1 at 1", "MT gp 0.1 at 2", "PT gp 0.1 at 3"}) == both_open);
    CHECK(by_rule(counted, {"VT gp 0.1 at 1", "MT gp 0.1 at 2", "PT gp 0.1 at 7.1"}) == both_accept);
    CHECK(by_rule(summed, {"VT gp 0.1 at 1", "MT gp 0.1001 at 5"}) == both_open);
    CHECK(by_rule(summed, {"VT gp 0.1 at 1", "MT gp 0.1 at 5"}) == both_accept);
    // The rule does not speak of what the film shows.
    CHECK(by_rule(summed, {"VT gp 0.1 at 1", "RT gp 0.2 at 5"}) == both_accept);
}

TEST_CASE("what two methods may have seen of one counts once, as the larger") {
    // Within 1/128 in, or a tenth of the longer one, to the nanometre.
    CHECK(by_rule(spaced, {"VT gp 0.05 at 1", "MT gp 0.05 at 1"}) == both_accept);
    CHECK(by_rule(spaced, {"VT gp 1 mm at 20 mm", "MT gp 1 mm at 21.198437 mm"}) == both_accept);
    CHECK(by_rule(spaced, {"VT gp 1 mm at 20 mm", "MT gp 1 mm at 21.198438 mm"}) == both_open);
    CHECK(by_rule(spaced, {"VT gp 10 mm at 20 mm", "MT gp 1 mm at 31 mm"}) == both_accept);
    CHECK(by_rule(spaced, {"VT gp 10 mm at 20 mm", "MT gp 1 mm at 31.000001 mm"}) == both_open);
    CHECK(by_rule(summed, {"VT gp 0.15 at 1", "MT gp 0.2 at 1"}) == both_accept);
    CHECK(by_rule(summed, {"VT gp 0.15 at 1", "MT gp 0.1 at 1", "VT gp 0.05 at 3", "MT gp 0.05 at 3"}) ==
          both_accept);
    CHECK(by_rule(summed, {"VT gp 0.1 at 1", "MT gp 0.15 at 1", "VT gp 0.06 at 3", "MT gp 0.05 at 3"}) ==
          both_open);
    // One on another side, and one of another kind, is another; what has but a shape may be any of that
    // shape.
    CHECK(by_rule(counted, {"VT gp 0.1 at 1, face", "MT gp 0.1 at 1, root", "PT gp 0.1 at 3"}) == both_open);
    CHECK(by_rule(spaced, {"VT gp 0.1 at 1", "MT slag 0.1 at 1"}) == both_open);
    CHECK(by_rule(spaced, {"VT gp 0.1 at 1", "MT rounded indication 0.1 at 1"}) == both_accept);
    CHECK(by_rule(spaced, {"VT gp 0.1 at 1", "MT linear indication 0.1 at 1"}) == both_open);
    // Over the datum of a closed weld.
    CHECK(by_rule(spaced, {"VT gp 0.1 at 0", "MT gp 0.1 at 7.9"}, "weld-length=8in seam=girth") ==
          both_accept);
}

TEST_CASE("one that has no place may be one of another method, and one only") {
    CHECK(by_rule(summed, {"VT gp 0.15", "MT gp 0.15"}) == both_accept);
    CHECK(by_rule(summed, {"VT gp 0.1", "VT gp 0.1", "MT gp 0.1", "MT gp 0.1"}) == both_accept);
    CHECK(by_rule(summed, {"VT gp 0.1", "MT gp 0.1", "MT gp 0.1"}) == both_accept);
    CHECK(by_rule(summed, {"VT gp 0.15", "MT gp 0.1", "MT gp 0.1"}) == both_open);
    CHECK(by_rule(spaced, {"VT gp 0.1", "MT gp 0.1 at 2"}) == both_accept);
}

TEST_CASE("the reason names what was found by whom") {
    const auto set =
        set_from(head() + "rules:\n  - {id: r, title: Space, types: any, exams: [VT, MT], measure: gap, "
                          "at least: 1 in, clause: c, standing: {house: x}}\n  - {id: s, types: any, "
                          "exams: [VT, MT], allowed: no limit, clause: c, standing: {house: x}}\n");
    const auto c = judged(set, {"", {"VT gp 0.1 at 1", "MT gp 0.1 at 1.5"}});
    CHECK(c.sentences("A").starts_with("#1 and #2 gas pore (VT and MT): found by methods of which each is "
                                       "counted by itself; taken together, as they "
                                       "lie apart and may be different ones (common practice): Space, "));
    CHECK(c.judgement.classes[0].findings[0].exams == std::vector{Exam::VT, Exam::MT});
}

TEST_CASE("pieces of unlike types may be one where one rule limits how long each of them may be") {
    // UFGS-15216N 3.5.4 b (read): at a wall of 12 mm elongated indications by film up to 6.35 mm (1/4 in).
    const auto film = [](std::vector<std::string> log) {
        return judged("ufgs-15216n", {"joint=groove material=steel thickness=12mm weld-thickness=12mm "
                                      "inside=accessible weld-length=200mm",
                                      std::move(log)});
    };
    constexpr const char *accepted = "pressure piping accept", *left = "pressure piping cannot say";
    const auto two =
        film({"RT slag l 6 mm w 0.7 mm at 50 mm", "RT elongated cavity l 6 mm w 0.7 mm at 55 mm"});
    CHECK(two.verdicts() == left);
    CHECK(before_over_methods(two) == accepted);
    CHECK(film({"RT slag l 6 mm w 0.7 mm at 50 mm", "RT shrinkage cavity l 6 mm w 0.7 mm at 56 mm"})
              .verdicts() == left);
    CHECK(film({"RT slag l 3 mm w 0.7 mm at 50 mm", "RT elongated cavity l 3.35 mm w 0.7 mm at 53 mm"})
              .verdicts() == accepted);
    CHECK(film({"RT slag l 3 mm w 0.7 mm at 50 mm", "RT linear indication l 3.350001 mm w 0.7 mm at 53 mm"})
              .verdicts() == left);
    // A round one beside it stays as it is.
    const auto round = judged(
        set_from(head() +
                 "rules:\n  - {id: r, types: any, exams: RT, measure: size, at most: 0.2 in, clause: c, "
                 "standing: {house: x}}\n"),
        {"", {"RT slag 0.15x0.02 at 1", "RT gas pore 0.15 at 1.15"}});
    CHECK(round.verdicts() == "A accept, B accept");
}
