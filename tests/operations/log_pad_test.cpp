#include "operations/log_pad.hpp"

#include "booth.hpp"
#include "catch.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

std::vector<std::string> wanted(Booth &booth, Exam method) {
    std::vector<std::string> out;
    for (const TypeId type : still_to_measure(judge_coupon(booth.office, booth.office.coupon("T-1")), method))
        out.push_back(Vocabulary::shipped()[type].name);
    return out;
}

} // namespace

TEST_CASE("the pad offers what the set wants measured until somebody measured it") {
    Booth booth;
    booth.coupon("T-1", {{"criteria", "aws-d1.1-visual"},
                         {"class", "static"},
                         {"joint", "fillet"},
                         {"joint-form", "tee"},
                         {"form", "plate"},
                         {"seam", ""},
                         {"diameter", ""},
                         {"thickness", "3/8in"},
                         {"fillet-size", "1/4in"}});
    booth.exam(Exam::VT);
    CHECK(wanted(booth, Exam::VT) == std::vector<std::string>{"fillet size"});
    CHECK(wanted(booth, Exam::MT).empty());
    booth.log("fillet size 0.25");
    CHECK(wanted(booth, Exam::VT).empty());
}

TEST_CASE("the pad has both sides of a groove, the face alone of a fillet, and how a find's edge runs out") {
    Booth booth;
    booth.coupon("T-1");
    booth.coupon("T-2", {{"joint", "fillet"}});
    CHECK(log_pad(booth.office.coupon("T-1").record, Exam::VT).sides ==
          std::vector<std::string>{"face", "root"});
    const LogPad pad = log_pad(booth.office.coupon("T-2").record, Exam::VT);
    CHECK(pad.sides == std::vector<std::string>{"face"});
    CHECK(pad.toes == std::vector<std::string>{"smooth", "sharp"});
}
