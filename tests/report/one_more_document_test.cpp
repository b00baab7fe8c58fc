#include "report/one_more_document.hpp"

#include "catch.hpp"
#include "measure/text.hpp"
#include "operations/yard.hpp"
#include "render/text.hpp"

using namespace beadbook;
using namespace beadbook::test;

TEST_CASE("what one more coupon would add is told in a line each, by which rules, and nothing where nothing "
          "is held",
          "[standing]") {
    Yard yard;
    const auto told = [&] {
        Document doc;
        add_one_more(doc,
                     one_more_coupon(yard.office, standing_of(yard.office, "L1", parse_day("2026-11-25"))));
        return text(doc);
    };
    CHECK(told().empty());
    yard.coupon("Q-1", "2026-11-02");
    yard.qualify("Q-1");
    const std::string all = told();
    CHECK_THAT(all, says("What one more coupon would add"));
    CHECK_THAT(all, says("by asme-ix, would add: weld"));
    CHECK_THAT(all, says("up to 0.75 in"));
    // A thicker one is of the kind that failed.
    yard.coupon("Q-2", "2026-11-03", false);
    const std::string asked = told();
    const auto words = words_of(asked);
    CHECK_THAT(joined({words.begin(), words.end()}, " "),
               says("coupon Q-2 failed on 2026-11-03: 2 coupons must pass, 0 did"));
}
