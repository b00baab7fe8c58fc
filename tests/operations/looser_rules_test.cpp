// What rules for welders of one's own allow that the shipped ones do not.
#include "catch.hpp"
#include "criteria/shipped.hpp"
#include "measure/text.hpp"
#include "operations/looser_rules.hpp"

using namespace beadbook;

TEST_CASE("what shipped rules for welders leave open, and those of one's own do not, is told") {
    const auto own = [&](const std::string &shipped,
                         const std::vector<std::pair<std::string, std::string>> &changes) {
        std::string text(shipped_file("welder/" + shipped + ".yaml"));
        for (const auto &[was, now] : changes) {
            REQUIRE(text.find(was) != std::string::npos);
            text.replace(text.find(was), was.size(), now);
        }
        const auto rules = load_range_rules(text).rules;
        REQUIRE(rules);
        return joined(looser_rules_words(*rules), "; ");
    };
    CHECK(own("aws-d17.1", {{"rules: aws-d17.1", "rules: shop"}}).empty());
    CHECK_THAT(
        own("aws-d17.1",
            {{"rules: aws-d17.1", "rules: shop"},
             {"  - {of: diameter, work: {form: tube}, what: whether and how the diameter of a tube limits a "
              "qualification}\n",
              ""}}),
        says("looser than the shipped aws-d17.1: diameter limits nothing, where it is not known whether"));
    CHECK_THAT(
        own("aws-d17.1", {{"rules: aws-d17.1", "rules: shop"},
                          {"of: diameter, work: {form: tube}", "of: diameter, work: {joint: fillet}"}}),
        says("diameter limits nothing"));
    CHECK_THAT(own("aws-d17.1", {{"rules: aws-d17.1", "rules: shop"},
                                 {"absolute or rounded to 0.001 in", "rounded to 0.1 in"}}),
               says("ends of ranges compared rounded to 0.1 in, not absolute or rounded to 0.001 in"));
    CHECK_THAT(
        own("aws-d17.1",
            {{"rules: aws-d17.1", "rules: shop"},
             {"gaps:\n", "retest:\n  immediate: {coupons: 1, clause: c, standing: {house: x}}\ngaps:\n"}}),
        says("retest of 1 coupon, of which nothing is said there"));
    CHECK_THAT(
        own("asme-ix", {{"rules: asme-ix", "rules: shop"}, {"t: weld thickness", "t: outside diameter"}}),
        says("otherwise than in the shipped asme-ix: what the symbols of its ranges stand for"));
    const std::string metals(shipped_file("welder/asme-ix.yaml"));
    const auto begin = metals.find("base metals:");
    CHECK_THAT(own("asme-ix", {{"rules: asme-ix", "rules: shop"},
                               {metals.substr(begin, metals.find('\n', begin) - begin + 1), ""}}),
               says("for any base metal"));
    CHECK_THAT(own("asme-ix", {{"rules: asme-ix", "rules: shop"}, {"  - special positions\n", ""}}),
               says("not said that 'special positions'"));
    CHECK_THAT(own("asme-ix", {{"rules: asme-ix", "rules: shop"},
                               {"standing: {memory: \"row F-No. 1\"}", "standing: {read: \"our copy\"}"}}),
               says("called read, which it is not there"));
}
