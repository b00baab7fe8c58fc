#include "operations/log_pad.hpp"

#include "booth.hpp"
#include "catch.hpp"

#include <algorithm>

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

TEST_CASE(
    "the pad begins with what the method shows well, and leaves dimensions to the one that sees the shape") {
    Booth booth;
    booth.coupon("T-1");
    const Vocabulary &vocabulary = Vocabulary::shipped();
    const auto names = [&](const std::vector<TypeId> &types) {
        std::vector<std::string> out;
        for (const TypeId type : types) out.push_back(vocabulary[type].name);
        return out;
    };
    const auto pad = [&](Exam method) { return log_pad(booth.office.coupon("T-1").record, method); };
    const auto penetrant = names(pad(Exam::PT).first);
    CHECK(std::vector<std::string>(penetrant.begin(), penetrant.begin() + 5) ==
          std::vector<std::string>{"crack", "crater crack", "linear indication", "rounded indication",
                                   "stray arc"});
    CHECK(std::count(penetrant.begin(), penetrant.end(), "undercut") == 0);
    CHECK(names(pad(Exam::RT).first).front() == "gas pore");
    for (const Exam method : all_exams()) {
        INFO(name_of(method));
        const auto more = names(pad(method).more);
        CHECK(std::count(more.begin(), more.end(), "throat") == (method == Exam::VT ? 1 : 0));
    }
}
