// Worked cases of MIL-T-81838 (a fuel tank), the notes of 46 CFR 56.70-15 and the fillets of MIL-HDBK-1890.
// Each names the printed number that decides it, read on the pages that the criteria files name.
#include "case.hpp"
#include "catch.hpp"
#include "criteria/shipped.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

struct TankRow {
    std::string id, source, set, coupon;
    std::vector<std::string> log;
    std::string expected;
};

void check_rows(const std::vector<TankRow> &rows) {
    for (const auto &row : rows) {
        const JudgedCase result = judged(row.set, {row.coupon, row.log});
        INFO(row.id << ", " << row.source << "\n" << result.sentences(result.set->classes.back().id));
        CHECK(result.verdicts() == row.expected);
    }
}

} // namespace

TEST_CASE("46 CFR 56.70-15 Table 1, its notes on one side and both", "[published]") {
    // Notes of the table, read: a double-welded joint inside and outside separately, a single-welded one
    // outside only. T 3/8 and 500 F: 5/32.
    const std::string set = "cfr-46-56.70-15";
    const std::string joint = "joint=groove thickness=3/8in temperature=500F sides=";
    const std::string out = "VT reinforcement h 5/32 at 1 face", in = "VT reinforcement h 5/32 at 1 root";
    const std::string high = "VT reinforcement h 0.160 at 2 root", cannot = "piping cannot say";
    const std::string notes = "46 CFR 56.70-15 Table 1, notes, read";
    check_rows({
        {"both sides, both measured", notes, set, joint + "both", {out, in}, "piping accept"},
        {"both sides, the inside too high", notes, set, joint + "both", {out, high}, "piping reject"},
        {"both sides, the inside not measured", notes, set, joint + "both", {out}, cannot},
        {"both sides, the outside not measured", notes, set, joint + "both", {in}, cannot},
        {"both sides, two outside are not one each", notes, set, joint + "both", {out, out}, cannot},
        {"which side was measured is not said",
         notes,
         set,
         joint + "both",
         {out, "VT reinforcement h 0.1"},
         cannot},
        {"one side, outside", notes, set, joint + "one", {out}, "piping accept"},
        {"one side, only the inside measured", notes, set, joint + "one", {in}, cannot},
        {"one side: the table does not hold inside, what does was not read",
         notes,
         set,
         joint + "one",
         {out, high},
         cannot},
        {"sides not known", notes, set, "joint=groove thickness=3/8in temperature=500F", {out}, cannot},
    });
}

TEST_CASE("MIL-T-81838, pore area and stringers", "[published]") {
    const std::string set = "mil-t-81838", page = "MIL-T-81838 4.6.9.3, page 21, read";
    const std::string sheet = "joint=groove thickness=0.063in bead-thickness=0.063in";
    const std::string plate = "joint=groove thickness=0.2in bead-thickness=0.2in";
    const auto pores = [](int n) {
        std::vector<std::string> out;
        for (int i = 0; i < n; ++i)
            out.push_back("RT gas pore 0.030 at " + std::to_string(1) + "." + std::to_string(i + 1));
        return out;
    };
    check_rows({
        {"K38 six", page, set, sheet, pores(6), "fuel tank accept"},
        {"K38 seven", page, set, sheet, pores(7), "fuel tank reject"},
        // The case's 0.10 x 0.02 halved, so that no size limit decides it first.
        {"K42 stringer",
         page + "; the sum rule is cut",
         set,
         plate,
         {"RT oxide inclusion 0.05x0.01 at 1"},
         "fuel tank cannot say"},
        {"a stringer that breaks a rule that was read",
         page,
         set,
         plate,
         {"RT oxide inclusion 0.10x0.02 at 1"},
         "fuel tank reject"},
        {"oxide of unknown width: a stringer or not",
         page,
         set,
         plate,
         {"RT oxide inclusion l 0.045 at 1"},
         "fuel tank cannot say"},
        {"K42 no stringer", page, set, plate, {"RT oxide inclusion 0.045x0.01 at 1"}, "fuel tank accept"},
    });
}

TEST_CASE("MIL-T-81838, the area of a round pore is its circle's, however it is logged", "[published]") {
    // K38: six of 0.030 are 0.004241 sq in, seven 0.004948; 7 % of 1 in x 0.063 in is 0.004410, and 3.5 % for
    // aligned ones is 0.002205, between three and four of them. Page 21, read.
    const std::string sheet = "joint=groove thickness=0.063in bead-thickness=0.063in";
    const auto pores = [](const std::string &as, int n) {
        std::vector<std::string> out;
        for (int i = 0; i < n; ++i) out.push_back("RT " + as + " at 1." + std::to_string(i + 1));
        return out;
    };
    const auto said = [&](const std::string &as, int n) {
        return judged("mil-t-81838", {sheet, pores(as, n)}).verdicts();
    };
    for (const std::string as : {"gas pore 0.030", "gas pore 0.030x0.030", "gas pore s 0.030 w 0.030"}) {
        INFO(as);
        CHECK(said(as, 6) == "fuel tank accept");
        CHECK(said(as, 7) == "fuel tank reject");
    }
    CHECK(said("linear porosity 0.030x0.030", 3) == "fuel tank accept");
    CHECK(said("linear porosity 0.030x0.030", 4) == "fuel tank reject");
    // A line of pores as one entry: how much of it is pores nobody knows.
    CHECK(said("linear porosity 0.030", 1) == "fuel tank cannot say");
    const auto c = judged("mil-t-81838", {sheet, pores("gas pore 0.030x0.030", 7)});
    CHECK_THAT(c.sentences("fuel tank"),
               Catch::Contains("areas by length and width, as circles and ellipses"));
}

TEST_CASE("MIL-T-81838, the stringer rule is a gap and nobody's decision", "[published]") {
    // K42, page 21, read: 5 to 1 or more is a stringer; the rule on their sum is cut.
    const auto c = judged("mil-t-81838", {"joint=groove thickness=0.2in bead-thickness=0.2in",
                                          {"RT oxide inclusion 0.05x0.01 at 1"}});
    REQUIRE(c.judgement.classes[0].findings.size() == 1);
    CHECK(c.judgement.classes[0].findings[0].kind == Finding::Kind::not_covered);
    CHECK_THAT(c.sentences("fuel tank"), Catch::Contains("the limit on the sum of stringers is cut"));
}

TEST_CASE("MIL-T-81838, the smallest pore that counts", "[published]") {
    // K40: 0.010 in round is 0.0000785 sq in, under 0.00008: not counted. 0.011 counts. Page 21, read.
    const std::string sheet = "joint=groove thickness=0.010in bead-thickness=0.010in";
    CHECK(judged("mil-t-81838", {sheet, {"RT gas pore 0.010 at 1"}}).verdicts() == "fuel tank accept");
    // It counts, and is over half the bead.
    CHECK(judged("mil-t-81838", {sheet, {"RT gas pore 0.011 at 1"}}).verdicts() == "fuel tank reject");
}

TEST_CASE("MIL-HDBK-1890 Table III, fillet: class 2 has its number in 10 T only, class 3 in 20 T only",
          "[published]") {
    // Table III, page 11, read: class 2 at most 4 T in any 10 T or 40 % of the joint; class 3 at most 10 T in
    // any 20 T or 50 %.
    const auto set = shipped_criteria("mil-hdbk-1890-table-3");
    const std::vector<std::pair<std::string, std::vector<std::string>>> printed{
        {"10 x T", {"none", "lesser of 4 x T and 40 % x joint length", "no limit"}},
        {"20 x T", {"none", "not said", "lesser of 10 x T and 50 % x joint length"}},
        {"whole weld", {"none", "40 % x joint length", "50 % x joint length"}}};
    std::size_t row = 0;
    for (const auto &rule : set->rules) {
        if (!rule.id.starts_with("fusion-fillet")) continue;
        INFO(rule.id);
        REQUIRE(row < printed.size());
        CHECK(rule.window->text == printed[row].first);
        for (std::size_t c = 0; c < 3; ++c) CHECK(rule.limits[c].text == printed[row].second[c]);
        ++row;
    }
    CHECK(row == printed.size());
    // T 0.25: 1.0 in any 2.5 for class 2, 2.5 in any 5.0 for class 3. Two of 1.0, 1.5 apart: 1.0 in the
    // worst 2.5.
    const std::string fillet = "magnetic=yes joint=fillet thickness=0.250in weld-length=20in";
    const std::vector<std::string> two{"RT incomplete fusion l 1.0 at 2",
                                       "RT incomplete fusion l 1.0 at 4.5"};
    CHECK(judged(set, {fillet, two}).verdicts() == "1 reject, 2 accept, 3 accept");
    CHECK(judged(set, {fillet, {two[0], "RT incomplete fusion l 1.0 at 4.499"}}).verdicts() ==
          "1 reject, 2 reject, 3 accept");
}
