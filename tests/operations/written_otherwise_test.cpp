#include "operations/written_otherwise.hpp"

#include "catch.hpp"
#include "criteria/load.hpp"

using namespace beadbook;

namespace {

std::shared_ptr<const CriteriaSet> set_of(const std::string &quantity, const std::string &linear,
                                          const std::string &rule_more, const std::string &gaps) {
    const Loaded loaded = load_criteria(
        "set: s\ntitle: x\nedition: \"1\"\nunits: mm\nclasses: [A]\nscope: not read\nquantities: {T: " +
        quantity + "}\nlinear: {when: " + linear +
        ", clause: c, standing: {house: h}}\nrequired exams: [{id: v, one of: VT, clause: c, standing: "
        "{house: h}}]\n"
        "rules:\n  - {id: u, title: Undercut, types: undercut, exams: VT, measure: depth, at most: T/8, " +
        rule_more + "clause: c, standing: {house: h}}\n" + gaps);
    REQUIRE(loaded.set);
    return loaded.set;
}

} // namespace

TEST_CASE("sets that judge otherwise by what is no limit are told apart") {
    const auto one = set_of("thinner member", "length over 3 x width", "", "");
    CHECK(written_otherwise(*one, *one).empty());
    const auto other = set_of("thicker member", "length over 9 x width", "must be measured: yes, ",
                              "gaps:\n  - {text: pores, types: porosity, exams: VT}\n");
    CHECK(written_otherwise(*one, *other) ==
          std::vector<WrittenOtherwise>{{"linear", "length over 3 x width", "length over 9 x width"},
                                        {"quantity T", "thinner member", "thicker member"},
                                        {"gap", "", "pores"},
                                        {"must be measured", "", "Undercut"}});
}

TEST_CASE("a rule without a title is told by its id") {
    const auto fillets = [](const std::string &more) {
        const Loaded loaded = load_criteria(
            "set: s\ntitle: x\nedition: \"1\"\nunits: mm\nclasses: [A]\nscope: not read\nrules:\n"
            "  - {id: leg, types: fillet size, exams: VT, measure: size, at least: 3 mm, " +
            more + "clause: c, standing: {house: h}}\n");
        REQUIRE(loaded.set);
        return loaded.set;
    };
    CHECK(written_otherwise(*fillets("must be measured: yes, "), *fillets("")) ==
          std::vector<WrittenOtherwise>{{"must be measured", "rule leg", ""}});
}
