// What decides whether a rule speaks at all is asked first, and a measurement must be of the side that it
// names.
#include "case.hpp"
#include "catch.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

std::string rule(const std::string &lines) {
    return "  - {id: r, exams: VT, " + lines + ", clause: c, standing: {house: x}}\n";
}

std::shared_ptr<const CriteriaSet> with(const std::string &lines, const std::string &more = "") {
    return set_from("set: test\ntitle: Test\nedition: test\nunits: in\nclasses: [A]\nquantities: "
                    "{S: specified fillet size}\nrules:\n" +
                    rule(lines) + more);
}

const std::string fillet = "title: Fillet, types: fillet size, when: joint is fillet, measure: size, at "
                           "least: S, must be measured: yes";

const std::string root = "title: Root undercut, types: undercut, where: side is root, measure: depth, "
                         "at most: 1/16 in, must be "
                         "measured: yes";

} // namespace

TEST_CASE("the joint is asked for, and not the size of a fillet that it may not be") {
    const auto set = with(fillet);
    CHECK(judged(set, {"", {}}).sentences("A") == "Fillet cannot be decided without the joint.\n");
    CHECK(judged(set, {"joint=groove", {}}).verdicts() == "A accept");
    CHECK(judged(set, {"joint=fillet", {}}).sentences("A") == "Fillet: it was not measured.\n");
    const auto measured = judged(set, {"", {"VT fillet size 0.2 at 1"}});
    CHECK(measured.verdicts() == "A cannot say");
    for (const auto &f : measured.judgement.classes[0].findings) {
        CHECK(f.kind == Finding::Kind::missing_data);
        CHECK(f.missing == lack_of(Fact::joint));
    }
    CHECK_THAT(judged(set, {"joint=fillet", {"VT fillet size 0.2 at 1"}}).sentences("A"),
               says("cannot be decided without the fillet-size (specified fillet size)"));
}

TEST_CASE("every fact of a coupon is asked for by the name of its field") {
    const auto field_in = [](const std::string &asked) { // "the thickness (thinner member)"
        return asked.substr(4, asked.find(" (") == std::string::npos ? asked.npos : asked.find(" (") - 4);
    };
    for (std::size_t q = 0; q < coupon_quantities; ++q) {
        const auto names = names_of(lack_of(static_cast<Quantity>(q)));
        REQUIRE(names.size() == 1);
        INFO(names[0]);
        const CouponField *field = coupon_field(field_in(names[0]));
        REQUIRE(field);
        CHECK(field->kind == CouponField::Kind::measure);
    }
    for (std::size_t f = 0; f < fact_count; ++f) {
        const auto names = names_of(lack_of(static_cast<Fact>(f)));
        REQUIRE(names.size() == 1);
        INFO(names[0]);
        CHECK(coupon_field(field_in(names[0])));
    }
}

TEST_CASE("a measurement of the face does not stand for the root's") {
    const auto set =
        with(root, rule("types: undercut, where: side is face, allowed: no limit").replace(9, 1, "f"));
    const auto verdict = [&](const std::vector<std::string> &log) {
        return judged(set, {"", log}).verdicts();
    };
    CHECK(verdict({"VT undercut l 1 d 0.05 at 1 root"}) == "A accept");
    CHECK(verdict({"VT undercut l 1 d 0.07 at 1 root"}) == "A reject");
    CHECK(verdict({"VT undercut l 1 d 0.05 at 1 face"}) == "A cannot say");
    CHECK(verdict({"VT undercut l 1 d 0.05 at 1 face", "VT undercut l 1 d 0.05 at 1 root"}) == "A accept");
    CHECK(judged(set, {"", {"VT undercut l 1 d 0.05 at 1 face"}}).sentences("A") ==
          "Root undercut: it was not measured where side is root.\n");
    CHECK(judged(set, {"", {}}).sentences("A") == "Root undercut: it was not measured where side is root.\n");
    // Of one of which nobody said the side, that is asked.
    CHECK_THAT(judged(set, {"", {"VT undercut l 1 d 0.05 at 1"}}).sentences("A"),
               says("Root undercut cannot be decided without the side."));
}

TEST_CASE("an older engine took an entry of either side, and asked for the measurement first") {
    const auto set =
        with(root, rule("types: undercut, where: side is face, allowed: no limit").replace(9, 1, "f"));
    const auto c = judged(set, {"", {"VT undercut l 1 d 0.05 at 1 face"}});
    const auto old = judge(*set, c.coupon, c.exams, c.indications, Vocabulary::shipped(), 3);
    CHECK(old.classes[0].verdict == Verdict::accept);
    const auto fillets = with(fillet);
    const auto asked = judge(*fillets, {}, {{Exam::VT, true, ""}}, {}, Vocabulary::shipped(), 3);
    REQUIRE(asked.classes[0].findings.size() == 1);
    CHECK(asked.classes[0].findings[0].kind == Finding::Kind::not_measured);
    CHECK(asked.classes[0].findings[0].missing == lack_of(Fact::joint));
}
