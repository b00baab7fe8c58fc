#include "operations/log_sheet.hpp"

#include "booth.hpp"
#include "catch.hpp"
#include "operations/many.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// Coupons T-1 to T-4, plates 8 in long.
class SheetBooth : public Booth {
public:
    SheetBooth() {
        write([](Writing &w) {
            return register_coupons(w, {{"T-1", "T-2", "T-3", "T-4"},
                                        {{"weld-length", "8 in"}, {"thickness", "0.25 in"}, {"units", "in"}},
                                        "",
                                        false});
        });
    }
    SheetTaken take(const std::string &text, bool again = false) {
        return write([&](Writing &w) { return take_sheet(w, {text, "sheet", false, again}); }).value;
    }
    std::string refusal_of(const std::string &text) {
        const std::size_t before = office.coupon("T-1").exams.size();
        const std::string out = refusal([&] { take(text); }).what();
        CHECK(office.coupon("T-1").exams.size() == before);
        return out;
    }
};

} // namespace

TEST_CASE("a sheet is exams and finds of many coupons, all finished") {
    SheetBooth booth;
    const auto taken = booth.take("# Monday\n"
                                  "VT, MT; by A. Field; level II; date 2026-11-24; light=1000 lx\n"
                                  "T-1 VT undercut l 3/8 d 0.010 at 1-1/2\n"
                                  "\"   MT crack 0.2 at 3 # beside it\n"
                                  "T-2..T-3 none\n"
                                  "T-4 VT none\n"
                                  "T-4 MT incomplete: the yoke failed\n"
                                  "PT; by B. Quay\n"
                                  "T-4 pore 0.04 at 1\n"
                                  "\" pore 0.05 at 5\n");
    CHECK(taken.parts.size() == 9);
    const CouponState one = booth.office.coupon("T-1"), four = booth.office.coupon("T-4");
    REQUIRE(one.exams.size() == 2);
    CHECK(one.exams[1].method == Exam::MT);
    CHECK(one.exams[1].examiner == "A. Field");
    CHECK(one.exams[1].finished->found == 1);
    CHECK(one.exams[1].conditions.size() == 1);
    CHECK(one.indications.at(1).remark == "beside it");
    REQUIRE(four.exams.size() == 3);
    CHECK(four.exams[1].incomplete == "the yoke failed");
    CHECK(four.exams[2].examiner == "B. Quay");
    CHECK(four.exams[2].level == "II"); // stays until another is said
    CHECK(print(four.exams[2].date) == "2026-11-24");
    CHECK(four.exams[2].conditions.empty());
    CHECK(four.exams[2].finished->found == 2);
}

TEST_CASE("what a method found must be said of each coupon: silence is no 'none'") {
    SheetBooth booth;
    CHECK_THAT(booth.refusal_of("VT MT; by A\nT-1 VT crack 0.2 at 3\nT-2 none"),
               says("sheet:2: T-1: what did MT find? say 'T-1 MT none', or its finds"));
}

TEST_CASE("every bad line of a sheet is named, with its column, and nothing is stored") {
    SheetBooth booth;
    const std::string all = booth.refusal_of("VT; by A. Field\n"
                                             "T-1 pore 0.0x at 3\n"
                                             "T-9 none\n"
                                             "T-2\n"
                                             "T-2..T-3 pore 0.04 at 1\n"
                                             "T-4 none\n"
                                             "T-4 crack 0.1 at 1\n"
                                             "MT; bz\n"
                                             "T-1 PT none\n");
    for (const char *fault :
         {"sheet:2:15: ", "sheet:3: there is no coupon 'T-9'", "sheet:4: what did it find?",
          "sheet:5: a find is of one coupon", "sheet:7: it is said to have found none",
          "sheet:8: 'bz' is not understood", "sheet:9: "}) {
        INFO(fault);
        CHECK_THAT(all, says(fault));
    }
    CHECK_THAT(booth.refusal_of("T-1 none"), says("no exam is named yet"));
    CHECK_THAT(booth.refusal_of("VT; by A\n\" none"), says("none is named yet"));
    CHECK_THAT(booth.refusal_of("VT MT; by A\nT-1 crack 0.1 at 1"), says("by which method?"));
    CHECK_THAT(booth.refusal_of("# nothing"), says("names no exam"));
    CHECK_THAT(booth.refusal_of("VT; level II\nT-1 none"), says("examiner"));
}

TEST_CASE("the same sheet twice is noticed") {
    SheetBooth booth;
    const std::string text = "VT; by A. Field\nT-1 none\n";
    booth.take(text);
    const Refusal twice = booth.refusal([&] { booth.take(text); });
    CHECK_THAT(twice.what(), says("by A. Field already"));
    CHECK(twice.field() == "again");
    booth.take(text, true);
    CHECK(booth.office.coupon("T-1").exams.size() == 2);
    booth.take("VT; by B. Quay\nT-1 none\n"); // somebody else's
    CHECK(booth.office.coupon("T-1").exams.size() == 3);
}

TEST_CASE("what nobody would believe is asked of the whole sheet at once") {
    SheetBooth booth;
    const Refusal e =
        booth.refusal([&] { booth.take("VT; by A\nT-1 crack 0.1 d 3 at 1\nT-2 crack 0.1 d 4 at 1"); });
    CHECK(e.field() == "sure");
    CHECK_THAT(e.what(), says("sheet:2:"));
    CHECK_THAT(e.what(), says("sheet:3:"));
}
