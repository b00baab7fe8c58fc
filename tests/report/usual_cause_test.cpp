#include "report/usual_cause.hpp"

#include "case.hpp"
#include "catch.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// Of what each type rejects that has a cause.
std::string told_of(const std::vector<std::string> &log) {
    const JudgedCase one = judged(
        set_from("set: s\ntitle: t\nedition: e\nunits: in\nclasses: [A]\nscope: not read\nrules:\n"
                 "  - {id: least, types: [fillet size, throat], exams: VT, measure: size, at least: 0.2 in, "
                 "clause: c, "
                 "standing: {read: x}, must be measured: no}\n"
                 "  - {id: most, types: fillet size, exams: VT, measure: size, at most: 0.3 in, clause: c, "
                 "standing: {read: x}, must be measured: no}\n"
                 "  - {id: toe, types: incorrect weld toe, exams: VT, measure: angle, at least: 100 deg, "
                 "clause: c, "
                 "standing: {read: x}, must be measured: no}\n"
                 "  - {id: pore, types: porosity, exams: VT, measure: size, at most: 0.06 in, clause: c, "
                 "standing: "
                 "{read: x}}\n"),
        {"thickness=1/4in joint=fillet material=steel", log, "VT"});
    std::string out;
    for (const auto &cause : usual_causes(one.view(), one.judgement.classes[0])) {
        CHECK_FALSE(cause.cause.empty());
        CHECK_FALSE(cause.remedy.empty());
        out += (out.empty() ? "" : "; ") + cause.of;
    }
    return out;
}

} // namespace

TEST_CASE("a dimension that is too small has another cause than one that is too large") {
    CHECK(told_of({"VT fillet size 0.1"}) == "fillet size, too small");
    CHECK(told_of({"VT fillet size 0.4"}) == "fillet size");
    CHECK(told_of({"VT throat 0.1"}) == "throat, too small");
    CHECK(told_of({"VT fillet size 0.25"}).empty());
}

TEST_CASE("a toe's angle under its limit has the cause of its type, and each type is told once") {
    CHECK(told_of({"VT toe angle angle 90 deg at 1"}) == "incorrect weld toe");
    CHECK(told_of({"VT gas pore 0.07 at 1", "VT gas pore 0.08 at 2"}) == "porosity");
}

namespace {

/// Cause and remedy of one find of a coupon.
std::string told_of_find(const std::string &coupon, const std::string &find) {
    const JudgedCase one = judged(
        set_from("set: s\ntitle: t\nedition: e\nunits: in\nclasses: [A]\nscope: not read\nrules:\n"
                 "  - {id: none, types: [crack, incomplete fusion, porosity], exams: VT, allowed: none, "
                 "clause: c, standing: {read: x}}\n"),
        {coupon, {"VT " + find}, "VT"});
    const auto causes = usual_causes(one.view(), one.judgement.classes[0]);
    REQUIRE(causes.size() == 1);
    return causes[0].cause + "; " + causes[0].remedy;
}

} // namespace

TEST_CASE("a cause and a cure that the weld's process or metal cannot have are not told; what is not known "
          "leaves them in") {
    const std::string plain = "thickness=1/4in ", crack = "crack 0.1 at 1", fusion = "lof 0.1 at 1";
    CHECK_THAT(told_of_find(plain + "material=steel magnetic=yes", crack), says("low-hydrogen filler"));
    CHECK_THAT(told_of_find(plain, crack), says("low-hydrogen filler"));
    for (const char *metal : {"material=steel magnetic=no", "material=aluminium"})
        CHECK_THAT(told_of_find(plain + metal, crack), !says("hydrogen"));
    CHECK_THAT(told_of_find(plain + "process=GTAW magnetic=no", fusion), !says("arc blow"));
    CHECK_THAT(told_of_find(plain + "process=SMAW magnetic=yes", fusion),
               says("move the work clamp against arc blow, or change to AC"));
    CHECK_THAT(told_of_find(plain + "process=GTAW magnetic=yes", fusion), says("arc blow") && !says("AC"));
    CHECK_THAT(told_of_find(plain, fusion), says("change to AC"));
    CHECK_THAT(told_of_find(plain + "process=SMAW", "porosity 0.1 at 1"), !says("gas flow"));
    CHECK_THAT(told_of_find(plain + "process=GTAW", "porosity 0.1 at 1"), says("gas flow"));
}

TEST_CASE("whatever can be measured and rejected has a cause and what to change") {
    const Vocabulary &all = Vocabulary::shipped();
    for (const char *name : {"fillet size", "throat", "root opening"}) {
        INFO(name);
        CHECK_FALSE(all[*all.find(name)].small.cause.empty());
        CHECK_FALSE(all[*all.find(name)].usual.cause.empty());
    }
    for (std::size_t i = 0; i < all.size(); ++i) {
        INFO(all[static_cast<TypeId>(i)].name);
        CHECK_FALSE(all.explained(static_cast<TypeId>(i)).usual.cause.empty());
    }
}
