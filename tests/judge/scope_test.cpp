// What a set covers: of a coupon outside nothing is said, and what decides is asked for by name.
#include "case.hpp"
#include "catch.hpp"
#include "criteria/shipped.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// A set whose parts are given as flow maps without their authority.
std::shared_ptr<const CriteriaSet> covering(const std::vector<std::string> &parts) {
    std::string text = head() + "scope:\n";
    for (std::size_t i = 0; i < parts.size(); ++i)
        text +=
            "  - {id: p" + std::to_string(i) + ", " + parts[i] + ", clause: C1, standing: {read: page 1}}\n";
    return set_from(text + "rules:\n  - {id: r, types: any, exams: RT, allowed: none, clause: c, standing: "
                           "{house: x}}\n");
}

std::string verdict(const std::vector<std::string> &parts, const std::string &coupon,
                    const std::vector<std::string> &log = {}) {
    const std::string all = judged(covering(parts), {coupon, log}).verdicts();
    return all.substr(2, all.find(',') - 2);
}

const std::string accepted_here = "accept", rejected_here = "reject", open_here = "cannot say";

} // namespace

TEST_CASE("inside the scope a coupon is judged, outside nothing is said of it") {
    const std::vector<std::string> thick{"when: T from 1/8 in to 1/2 in"};
    CHECK(verdict(thick, "thickness=1/8in") == accepted_here);
    CHECK(verdict(thick, "thickness=1/2in") == accepted_here);
    CHECK(verdict(thick, "thickness=1/2in", {"RT crack 0.1"}) == rejected_here);
    CHECK(verdict(thick, "thickness=3.174999mm") == open_here);
    CHECK(verdict(thick, "thickness=12.700001mm") == open_here);
    CHECK(verdict(thick, "thickness=12.700001mm", {"RT crack 0.1"}) == open_here);
    const auto out = judged(covering(thick), {"thickness=1in", {"RT crack 0.1"}});
    CHECK(out.sentences("A") == "The set does not cover this coupon, so it says nothing of it: T from 1/8 in "
                                "to 1/2 in; T is 1 in.\n");
    CHECK(authority(out.view(), 0, out.judgement.classes[0].findings[0]) == "C1 (test), read: page 1");
    for (const auto &c : out.judgement.classes) {
        CHECK_FALSE(c.nearest);
        CHECK(c.scope.empty());
    }
}

TEST_CASE("a fact that the scope asks for is asked by its name, and until then nothing is decided") {
    const std::vector<std::string> parts{"when: T at least 1/8 in",
                                         "title: the metal, when: material is steel"};
    CHECK(verdict(parts, "thickness=1/4in material=steel") == accepted_here);
    CHECK(verdict(parts, "thickness=1/4in") == open_here);
    CHECK(verdict(parts, "thickness=1/4in", {"RT crack 0.1"}) == open_here);
    CHECK(verdict(parts, "material=steel") == open_here);
    const auto half = judged(covering(parts), {"thickness=1/4in", {"RT crack 0.1"}});
    const std::string said = half.sentences("A");
    CHECK_THAT(
        said,
        says("Whether the set covers this coupon (the metal: material is steel) hangs on the material"));
    CHECK_THAT(said, says("none is allowed")); // what there is to see is told all the same
    for (const auto &f : half.judgement.classes[0].findings) CHECK(f.effect == Verdict::cannot_say);
    CHECK_THAT(judged(covering(parts), {"material=steel", {}}).sentences("A"),
               says("hangs on the thickness (thinner member)"));
    // Outside by one part is outside, whatever else is not known.
    CHECK(
        judged(covering(parts), {"thickness=1/16in", {}}).sentences("A") ==
        "The set does not cover this coupon, so it says nothing of it: T at least 1/8 in; T is 0.0625 in.\n");
}

TEST_CASE("the parts that were asked and hold are told with each class") {
    const std::vector<std::string> parts{"when: T at least 1/8 in",
                                         "if: process is OFW, when: material is steel"};
    const auto held = [&](const std::string &coupon) {
        const auto c = judged(covering(parts), {coupon, {}}).judgement.classes;
        REQUIRE(c.size() == 2);
        CHECK(std::vector<int>(c[0].scope.begin(), c[0].scope.end()) ==
              std::vector<int>(c[1].scope.begin(), c[1].scope.end()));
        return std::vector<int>(c[0].scope.begin(), c[0].scope.end());
    };
    CHECK(held("thickness=1/4in process=OFW material=steel") == std::vector<int>{0, 1});
    CHECK(held("thickness=1/4in process=GTAW") == std::vector<int>{0});
}

TEST_CASE("a part with an if is asked only of coupons for which that holds") {
    const std::vector<std::string> gas{"if: process is OFW, when: material is steel"};
    CHECK(verdict(gas, "process=GTAW") == accepted_here);
    CHECK(verdict(gas, "process=GTAW material=nickel") == accepted_here);
    CHECK(verdict(gas, "process=OFW material=steel") == accepted_here);
    CHECK(verdict(gas, "process=OFW material=nickel") == open_here);
    CHECK(verdict(gas, "process=OFW") == open_here);
    CHECK(verdict(gas, "material=nickel") == open_here);
    CHECK(verdict(gas, "material=steel") == accepted_here); // it holds, whether it is asked or not
    CHECK_THAT(judged(covering(gas), {"material=nickel", {}}).sentences("A"), says("hangs on the process"));
}

TEST_CASE("process, position and material in the words of the coupon") {
    const auto is = [](const std::string &condition, const std::string &coupon) {
        return verdict({"when: " + condition}, coupon);
    };
    CHECK(is("process is GTAW or SMAW", "process=gtaw") == accepted_here);
    CHECK(is("process is GTAW or SMAW", "process=141+111") == accepted_here);
    CHECK(is("process is GTAW", "process=141+111") == open_here); // only some of the weld
    CHECK(is("process is not EBW or LBW", "process=GTAW+SMAW") == accepted_here);
    CHECK(is("process is not EBW or LBW", "process=GTAW+LBW") == open_here);
    CHECK(is("process is not EBW or LBW", "process=LBW") == open_here);
    CHECK(is("process is not EBW or LBW", "process=whatever") == open_here);
    CHECK(is("process is not EBW or LBW", "") == open_here);
    CHECK(is("position is 6G or 5G", "position=6g") == accepted_here);
    CHECK(is("position is not 6G", "position=2G") == accepted_here);
    CHECK(is("position is not 6G", "position=sideways") == open_here);
    CHECK(is("material is steel", "material=STAINLESS") == accepted_here);
    CHECK(is("material is not titanium", "material=Ti-6Al-4V") ==
          open_here); // a designation is not guessed at
}

TEST_CASE("a scope that was not read keeps nothing open, and a silent set is warned of") {
    const auto issues = [](const std::string &lines) {
        std::string out;
        const std::string text =
            "set: s\ntitle: t\nedition: e\nunits: in\nclasses: [A]\n" + lines +
            "required exams:\n  - {id: visual, one of: VT, clause: c, standing: {house: x}}\n"
            "rules:\n  - {id: r, types: crack, exams: VT, allowed: none, clause: c, standing: {house: x}}\n";
        for (const auto &issue : load_criteria(text).issues) out += print(issue, "f", text);
        return out;
    };
    CHECK(issues("scope: not read\n") == "");
    CHECK_THAT(issues(""), says("warning: scope: nothing says what the set covers"));
    CHECK_THAT(issues("scope: everything\n"), says("expected a list of parts, or 'not read'"));
    CHECK_THAT(issues("scope: []\n"), says("there is no part"));
    const std::string end = "clause: c, standing: {house: x}}\n";
    CHECK_THAT(issues("scope:\n  - {id: a, " + end), says("'when' is missing"));
    CHECK_THAT(issues("scope:\n  - {id: a, when: depth over 1 in, " + end),
               says("'when' is about the coupon"));
    CHECK_THAT(issues("scope:\n  - {id: a, when: side is root, " + end), says("'when' is about the coupon"));
    CHECK_THAT(issues("scope:\n  - {id: a, when: process is GTA, " + end), says("did you mean 'GTAW'?"));
    CHECK_THAT(issues("scope:\n  - {id: a, when: joint is groove, " + end +
                      "  - {id: a, when: joint is plug, " + end),
               says("the same id"));
}

TEST_CASE("where the scope was not read an unknown weld is not accepted, and what rejects it still does") {
    const auto set = set_from(
        "set: s\ntitle: t\nedition: e\nunits: in\nclasses: [A]\nscope: not read\nrules:\n  - {id: r, types: "
        "pore, exams: VT, measure: size, at most: 0.1 in, clause: c, standing: {house: x}}\n");
    const std::vector<std::string> small{"VT pore 0.1 at 1 in"}, large{"VT pore 0.2 at 1 in"};
    const auto told = judged(set, {"joint=fillet material=titanium", small});
    CHECK(told.verdicts() == "A accept");
    for (const std::string lacks : {"joint=groove", "material=steel", "joint=groove material=P-1", ""}) {
        const auto judgement = judged(set, {lacks, small});
        CHECK(judgement.verdicts() == "A cannot say");
        CHECK_THAT(judgement.sentences("A"), says("was not read, and nothing is accepted of a weld"));
        CHECK(judged(set, {lacks, large}).verdicts() == "A reject");
        // Engine 5 did not ask.
        CHECK(judge(*set, judgement.coupon, judgement.exams, judgement.indications, Vocabulary::shipped(), 5)
                  .classes[0]
                  .verdict == Verdict::accept);
    }
    const Proof proof = *told.judgement.classes[0].proof;
    const auto bare = judged(set, {"joint=fillet", small});
    const auto lack = lack_in(proof, *set, 0, bare.coupon, bare.exams, bare.indications);
    REQUIRE(lack);
    CHECK(lack->part == ProofPart::scope);
}

TEST_CASE("every shipped set has thought of its scope") {
    for (const auto &name : shipped_sets()) {
        INFO(name);
        CHECK(shipped_criteria(name)->scope_said);
    }
}
