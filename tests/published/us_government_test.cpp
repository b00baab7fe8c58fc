// Worked cases from US government documents. Each row names the document whose printed number decides it;
// numbers were read on the pages that the criteria files name, unless the row says otherwise.
#include "case.hpp"
#include "catch.hpp"
#include "criteria/shipped.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

struct GovernmentRow {
    std::string id, source, set, coupon;
    std::vector<std::string> log;
    std::string expected;
    std::string exams = "VT MT PT RT";
};

/// What a set asks for beside what its rows are about, its scope above all; what a row says itself goes
/// before.
std::string in_scope(const std::string &set) {
    if (set == "mil-hdbk-1890-table-3") return "material=steel process=GTAW ";
    if (set == "mil-std-2219a")
        return "material=steel process=GTAW fillet-size=0.02in "; // the table decides, not the drawing
    return set == "cfr-46-56.70-15" ? "joint-form=butt seam=longitudinal " : "joint=groove material=steel ";
}

void check(const std::vector<GovernmentRow> &rows) {
    for (const auto &row : rows) {
        const JudgedCase result = judged(row.set, {in_scope(row.set) + row.coupon, row.log, row.exams});
        INFO(row.id << ", " << row.source << "\n" << result.sentences(result.set->classes.back().id));
        CHECK(result.verdicts() == row.expected);
    }
}

} // namespace

TEST_CASE("MIL-HDBK-1890 Table III, radiographic limits", "[published]") {
    const std::string table = "MIL-HDBK-1890(AT) Table III, page 11, read";
    const std::string set = "mil-hdbk-1890-table-3";
    const std::string groove = "magnetic=yes joint=groove thickness=";
    check({
        {"K01", table, set, groove + "0.150in", {"RT gas pore 0.050"}, "1 accept, 2 accept, 3 accept"},
        {"K02", table, set, groove + "0.150in", {"RT gas pore 0.055"}, "1 reject, 2 accept, 3 accept"},
        {"K03", table, set, groove + "0.300in", {"RT gas pore 0.090"}, "1 reject, 2 reject, 3 accept"},
        {"K05",
         table + ", our reading of the spacing",
         set,
         groove + "0.300in",
         {"RT gas pore 0.040 at 1", "RT gas pore 0.040 at 1.19"},
         "1 reject, 2 reject, 3 accept"},
        {"K07",
         table,
         set,
         "magnetic=yes joint=fillet thickness=0.250in weld-length=8in",
         {"RT incomplete fusion l 0.9 at 2"},
         "1 reject, 2 accept, 3 accept"},
        {"K08",
         table,
         set,
         "magnetic=yes joint=fillet thickness=0.250in weld-length=8in",
         {"RT incomplete fusion l 1.1 at 2"},
         "1 reject, 2 reject, 3 accept"},
        {"K10",
         table,
         set,
         groove + "0.250in",
         {"RT incomplete fusion l 0.01 at 2"},
         "1 reject, 2 reject, 3 reject"},
        {"K12",
         table,
         set,
         "magnetic=yes joint=plug thickness=0.250in weld-length=2in",
         {"RT incomplete fusion l 0.5 at 0"},
         "1 reject, 2 reject, 3 accept"},
    });
}

TEST_CASE("MIL-HDBK-1890 Table III, fillet: class 2 has its number in 10 T only, class 3 in 20 T only",
          "[published]") {
    // Table III, page 11, read: class 2 at most 4 T in any 10 T or 40 % of the joint; class 3 at most 10 T in
    // any 20 T or 50 %.
    const auto set = shipped_criteria("mil-hdbk-1890-table-3");
    const std::vector<std::pair<std::string, std::vector<std::string>>> printed{
        {"10 x T", {"none", "lesser of 4 x T and 40 % x joint length", "no limit"}},
        {"20 x T", {"none", "does not apply", "lesser of 10 x T and 50 % x joint length"}},
        {"whole weld", {"none", "40 % x joint length", "50 % x joint length"}}};
    std::size_t row = 0;
    for (const auto &rule : set->rules) {
        if (!rule.id.starts_with("fusion-fillet")) continue;
        INFO(rule.id);
        REQUIRE(row < printed.size());
        CHECK(rule.window(0)->text == printed[row].first);
        for (std::size_t c = 0; c < 3; ++c) CHECK(rule.limits[c].text == printed[row].second[c]);
        ++row;
    }
    CHECK(row == printed.size());
    // T 0.25: 1.0 in any 2.5 for class 2, 2.5 in any 5.0 for class 3. Two of 1.0, 1.5 apart: 1.0 in the
    // worst 2.5.
    const std::string fillet =
        in_scope("mil-hdbk-1890-table-3") + "magnetic=yes joint=fillet thickness=0.250in weld-length=20in";
    const std::vector<std::string> two{"RT incomplete fusion l 1.0 at 2",
                                       "RT incomplete fusion l 1.0 at 4.5"};
    CHECK(judged(set, {fillet, two}).verdicts() == "1 reject, 2 accept, 3 accept");
    CHECK(judged(set, {fillet, {two[0], "RT incomplete fusion l 1.0 at 4.499"}}).verdicts() ==
          "1 reject, 2 reject, 3 accept");
}

TEST_CASE("AWS D17.1: an undercut alone is judged by its mean depth, whatever else lies beside it",
          "[published]") {
    // Table 7.1, one transcription, second hand: class A 0.002 in over the whole length, 0.20 in in any 3 in.
    // T 0.125: one of 0.004 by 0.1 in 6 in has a mean of at most 0.0001.
    const auto said = [](const std::vector<std::string> &log) {
        return judged("aws-d17.1", {"joint=groove thickness=0.125in weld-length=6in magnetic=yes "
                                    "material=steel process=GTAW",
                                    log})
            .verdicts();
    };
    const std::string one = "VT undercut d 0.004 l 0.1 at 1 smooth";
    const std::string accepted = "A accept, B accept, C accept",
                      asked = "A cannot say, B cannot say, C cannot say";
    CHECK(said({one}) == accepted);
    CHECK(said({one, "VT surface pore 0.01 at 3"}) == accepted);
    CHECK(said({one, "VT undercut d 0.004 l 0.05 at 4 smooth"}) == asked);
    CHECK(said({one, "VT shrinkage groove d 0.004 l 0.05 at 4 smooth"}) == asked); // an undercut too
    // A shallow one may run the whole length, and then any deeper one lifts the mean beyond it.
    CHECK(said({one, "VT undercut d 0.002 l 4 at 1.5 smooth"}) == asked);
    CHECK(said({"VT undercut d 0.002 l 4 at 1.5 smooth"}) == accepted);
}

TEST_CASE("MIL-STD-2219A, fillets, forbidden types, examinations, root opening", "[published]") {
    const std::string set = "mil-std-2219a";
    const std::string table4 = "MIL-STD-2219A Table IV, page 31, read";
    const std::string one = "magnetic=yes joint=fillet sides=one thickness=";
    check({
        {"K13 accepted",
         table4,
         set,
         one + "0.063in",
         {"VT fillet size 0.12"},
         "A accept, B accept, C accept"},
        {"K13 rejected",
         table4,
         set,
         one + "0.063in",
         {"VT fillet size 0.11"},
         "A reject, B reject, C reject"},
        {"K15",
         table4 + ": no value over 0.500 in",
         set,
         one + "0.600in",
         {"VT fillet size 0.9"},
         "A cannot say, B cannot say, C cannot say"},
        {"K17",
         "MIL-STD-2219A 5.4.4.1, page 31, read",
         set,
         "magnetic=yes joint=groove thickness=0.1in",
         {"VT overlap l 0.01 at 1"},
         "A reject, B reject, C reject"},
        {"K18",
         "MIL-STD-2219A 5.4.4.1, page 31, read; silent for class C",
         set,
         "magnetic=yes joint=groove thickness=0.1in",
         {"VT arc strike 0.1 at 1"},
         "A reject, B reject, C cannot say"},
        {"K19 ferritic class A butt, all done",
         "MIL-STD-2219A 5.4.1 to 5.4.2.3, page 27, read",
         set,
         "magnetic=yes joint=groove thickness=0.1in",
         {},
         "A accept, B accept, C accept",
         "VT PT RT"},
        {"K19 ferritic class A butt, no RT",
         "MIL-STD-2219A 5.4.2.3, page 27, read",
         set,
         "magnetic=yes joint=groove thickness=0.1in",
         {},
         "A cannot say, B accept, C accept",
         "VT MT"},
        {"K19 aluminium class A fillet, no RT needed",
         "MIL-STD-2219A 5.4.2, page 27, read",
         set,
         "magnetic=no joint=fillet sides=one thickness=0.063in",
         {"VT fillet size 0.12"},
         "A accept, B accept, C accept",
         "VT PT"},
        {"K19 aluminium, MT does not replace PT",
         "MIL-STD-2219A 5.4.2, page 27, read",
         set,
         "magnetic=no joint=fillet sides=one thickness=0.063in",
         {"VT fillet size 0.12"},
         "A cannot say, B cannot say, C accept",
         "VT MT"},
        {"K19 class C without a drawing note",
         "MIL-STD-2219A 5.4.2, page 27, read",
         set,
         "magnetic=yes joint=groove thickness=0.1in",
         {},
         "A cannot say, B cannot say, C accept",
         "VT"},
        {"K19 class C, drawing calls for PT",
         "MIL-STD-2219A 5.4.2.1, page 27, read",
         set,
         "magnetic=yes joint=groove thickness=0.1in also=PT",
         {},
         "A cannot say, B cannot say, C cannot say",
         "VT"},
        {"K21 at the limit",
         "MIL-STD-2219A Table II, page 20, read",
         set,
         "operation=manual magnetic=yes joint=groove thickness=0.080in",
         {"VT root opening 0.040"},
         "A accept, B accept, C accept"},
        {"K21 over",
         "MIL-STD-2219A Table II, page 20, read",
         set,
         "operation=manual magnetic=yes joint=groove thickness=0.080in",
         {"VT root opening 0.045"},
         "A reject, B reject, C reject"},
        {"K21 capped, at the limit",
         "MIL-STD-2219A Table II, page 20, read",
         set,
         "operation=manual magnetic=yes joint=groove thickness=0.200in",
         {"VT root opening 0.060"},
         "A accept, B accept, C accept"},
        {"K21 capped, over",
         "MIL-STD-2219A Table II, page 20, read",
         set,
         "operation=manual magnetic=yes joint=groove thickness=0.200in",
         {"VT root opening 0.065"},
         "A reject, B reject, C reject"},
        {"machine welding, over the number that is printed",
         "MIL-STD-2219A Table II, page 20, read; the fraction of T is lost",
         set,
         "operation=machine magnetic=yes joint=groove thickness=0.200in",
         {"VT root opening 0.031"},
         "A reject, B reject, C reject"},
        {"machine welding, within it: the fraction decides, and it is lost",
         "MIL-STD-2219A Table II, page 20, read; the fraction of T is lost",
         set,
         "operation=machine magnetic=yes joint=groove thickness=0.200in",
         {"VT root opening 0.030"},
         "A cannot say, B cannot say, C cannot say"},
        {"nobody said who led the torch: manual would pass",
         "MIL-STD-2219A Table II, page 20, read",
         set,
         "magnetic=yes joint=groove thickness=0.200in",
         {"VT root opening 0.045"},
         "A cannot say, B cannot say, C cannot say"},
        {"Table V is a gap",
         "MIL-STD-2219A pages 32 and 33 were not read",
         set,
         "magnetic=yes joint=groove thickness=0.1in",
         {"RT gas pore 0.001 at 1"},
         "A cannot say, B cannot say, C cannot say"},
    });
}

TEST_CASE("UFGS-15216N, pressure piping", "[published]") {
    const std::string set = "ufgs-15216n";
    const std::string surface = "UFGS-15216N 3.5.2 and 3.5.3, page 20, read";
    const std::string film = "UFGS-15216N 3.5.4, pages 20 and 21, read";
    const std::string groove = "joint=groove weld-thickness=";
    const std::string accept = "pressure piping accept", reject = "pressure piping reject";
    check({
        {"K22", surface, set, groove + "0.5in", {"PT rounded indication 0.060 at 1"}, accept},
        {"K23 PT at the limit",
         surface,
         set,
         groove + "0.5in",
         {"PT rounded indication 0.1875 at 1"},
         accept},
        {"K23 PT over", surface, set, groove + "0.5in", {"PT rounded indication 0.190 at 1"}, reject},
        {"K23 MT at the limit",
         surface,
         set,
         groove + "0.5in",
         {"MT rounded indication 0.1875 at 1"},
         accept},
        {"K23 MT over", surface, set, groove + "0.5in", {"MT rounded indication 0.190 at 1"}, reject},
        {"K24 linear", surface, set, groove + "0.5in", {"PT linear indication 0.070 at 1"}, reject},
        {"K24 not relevant by size",
         surface,
         set,
         groove + "0.5in",
         {"PT linear indication 0.060 at 1"},
         accept},
        {"K25 four, gaps 1/16",
         surface,
         set,
         groove + "0.5in",
         {"PT ri 0.10 at 1", "PT ri 0.10 at 1.1625", "PT ri 0.10 at 1.325", "PT ri 0.10 at 1.4875"},
         reject},
        {"K25 four, gaps 0.070",
         surface,
         set,
         groove + "0.5in",
         {"PT ri 0.10 at 1 across 0", "PT ri 0.10 at 1.17 across 0", "PT ri 0.10 at 1.34 across 0",
          "PT ri 0.10 at 1.51 across 0"},
         accept},
        {"K25 three, gaps 0.050",
         surface,
         set,
         groove + "0.5in",
         {"PT ri 0.10 at 1 across 0", "PT ri 0.10 at 1.15 across 0", "PT ri 0.10 at 1.3 across 0"},
         accept},
        {"K27 at the limit", film, set, groove + "0.500in", {"RT slag inclusion l 0.250 at 1"}, accept},
        {"K27 over", film, set, groove + "0.500in", {"RT slag inclusion l 0.260 at 1"}, reject},
        {"K28 t/3 at the limit", film, set, groove + "1.500in", {"RT slag inclusion l 0.500 at 1"}, accept},
        {"K28 t/3 over", film, set, groove + "1.500in", {"RT slag inclusion l 0.510 at 1"}, reject},
        {"K28 thick, at the cap", film, set, groove + "3.0in", {"RT slag inclusion l 0.750 at 1"}, accept},
        {"K28 thick, over", film, set, groove + "3.0in", {"RT slag inclusion l 0.751 at 1"}, reject},
        {"K29",
         film,
         set,
         groove + "0.500in weld-length=12in",
         {"RT slag inclusion l 0.200 at 1", "RT slag inclusion l 0.200 at 2.2",
          "RT slag inclusion l 0.200 at 3.4"},
         reject},
        {"K29, gaps over 6L release",
         film,
         set,
         groove + "0.500in weld-length=12in",
         {"RT slag inclusion l 0.200 at 1", "RT slag inclusion l 0.200 at 2.401",
          "RT slag inclusion l 0.200 at 3.802"},
         accept},
        {"K31 at the limit",
         "UFGS-15216N 3.5.1 f, page 20, read",
         set,
         "joint=fillet leg=0.250in fillet-size=0.250in",
         {"VT excessive convexity h 0.055 at 1", "VT fillet size 0.250"},
         accept},
        {"K31 over",
         "UFGS-15216N 3.5.1 f, page 20, read",
         set,
         "joint=fillet leg=0.250in fillet-size=0.250in",
         {"VT excessive convexity h 0.060 at 1", "VT fillet size 0.250"},
         reject},
        {"K33 at the limit",
         "UFGS-15216N 3.5.1 b, page 16, read",
         set,
         groove + "0.5in",
         {"VT undercut d 1/32 at 1"},
         accept},
        {"K33 over",
         "UFGS-15216N 3.5.1 b, page 16, read",
         set,
         groove + "0.5in",
         {"VT undercut d 0.040 at 1"},
         reject},
    });
}

TEST_CASE("46 CFR 56.70-15 Table 1, reinforcement", "[published]") {
    const std::string set = "cfr-46-56.70-15", table = "46 CFR 56.70-15 Table 1, read";
    const std::string tube = "sides=one joint=groove thickness=3/8in temperature=";
    check({
        {"K34 at the limit",
         table,
         set,
         tube + "500F",
         {"VT reinforcement h 5/32 at 1 face"},
         "piping accept"},
        {"K34 over", table, set, tube + "500F", {"VT reinforcement h 0.160 at 1 face"}, "piping reject"},
        {"K35 low", table, set, tube + "100F", {"VT reinforcement h 3/16 at 1 face"}, "piping accept"},
        {"K35 hot", table, set, tube + "800F", {"VT reinforcement h 3/32 at 1 face"}, "piping reject"},
        {"edge: 1/8 in belongs to the first row",
         table,
         set,
         "sides=one joint=groove thickness=1/8in temperature=500F",
         {"VT reinforcement h 3/32 at 1 face"},
         "piping accept"},
        {"edge: over 1/8 in",
         table,
         set,
         "sides=one joint=groove thickness=0.126in temperature=500F",
         {"VT reinforcement h 1/8 at 1 face"},
         "piping accept"},
        {"edge: 350 F is the middle column",
         table,
         set,
         "sides=one joint=groove thickness=1/8in temperature=350F",
         {"VT reinforcement h 3/16 at 1 face"},
         "piping reject"},
        {"edge: below 350 F",
         table,
         set,
         "sides=one joint=groove thickness=1/8in temperature=349F",
         {"VT reinforcement h 3/16 at 1 face"},
         "piping accept"},
        {"below 0 F",
         table,
         set,
         "sides=one joint=groove thickness=1/8in temperature=-1F",
         {"VT reinforcement h 3/32 at 1 face"},
         "piping reject"},
        {"over 2 in, by the weld's width",
         table,
         set,
         "sides=one joint=groove thickness=3in temperature=100F weld-width=3in",
         {"VT reinforcement h 3/8 at 1 face"},
         "piping accept"},
        {"over 2 in, width not known",
         table,
         set,
         "sides=one joint=groove thickness=3in temperature=100F",
         {"VT reinforcement h 3/8 at 1 face"},
         "piping cannot say"},
        {"not measured", table, set, tube + "100F", {}, "piping cannot say"},
    });
}

TEST_CASE("46 CFR 56.70-15 Table 1, its notes on one side and both", "[published]") {
    // Notes of the table, read: a double-welded joint inside and outside separately, a single-welded one
    // outside only. T 3/8 and 500 F: 5/32.
    const std::string set = "cfr-46-56.70-15";
    const std::string joint = "joint=groove thickness=3/8in temperature=500F sides=";
    const std::string out = "VT reinforcement h 5/32 at 1 face", in = "VT reinforcement h 5/32 at 1 root";
    const std::string high = "VT reinforcement h 0.160 at 2 root", cannot = "piping cannot say";
    const std::string notes = "46 CFR 56.70-15 Table 1, notes, read";
    check({
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
    const std::string sheet = "material=aluminium joint=groove thickness=0.063in bead-thickness=0.063in";
    const std::string plate = "joint=groove material=aluminium thickness=0.2in bead-thickness=0.2in";
    const auto pores = [](int n) {
        std::vector<std::string> out;
        for (int i = 0; i < n; ++i)
            out.push_back("RT gas pore 0.030 at " + std::to_string(1) + "." + std::to_string(i + 1));
        return out;
    };
    check({
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
    const std::string sheet = "material=aluminium joint=groove thickness=0.063in bead-thickness=0.063in";
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
    const auto c =
        judged("mil-t-81838", {"joint=groove material=aluminium thickness=0.2in bead-thickness=0.2in",
                               {"RT oxide inclusion 0.05x0.01 at 1"}});
    REQUIRE(c.judgement.classes[0].findings.size() == 1);
    CHECK(c.judgement.classes[0].findings[0].kind == Finding::Kind::not_covered);
    CHECK_THAT(c.sentences("fuel tank"), Catch::Contains("the limit on the sum of stringers is cut"));
}

TEST_CASE("MIL-T-81838, the smallest pore that counts", "[published]") {
    // K40: 0.010 in round is 0.0000785 sq in, under 0.00008: not counted. 0.011 counts. Page 21, read.
    const std::string sheet = "material=aluminium joint=groove thickness=0.010in bead-thickness=0.010in";
    CHECK(judged("mil-t-81838", {sheet, {"RT gas pore 0.010 at 1"}}).verdicts() == "fuel tank accept");
    // It counts, and is over half the bead.
    CHECK(judged("mil-t-81838", {sheet, {"RT gas pore 0.011 at 1"}}).verdicts() == "fuel tank reject");
}

TEST_CASE("MIL-R-45774A 3.4.2.2, two borderline types together reject", "[published]") {
    // K57: read, nondestructive inspection pages of MIL-R-45774A. The limits are made up; the rule is what
    // counts.
    const auto set = set_from(head() + R"(
rules:
  - {id: pores, types: porosity, exams: RT, measure: size, at most: 0.06 in, clause: test, standing: {house: test}}
  - {id: slag, types: inclusion, exams: RT, measure: size, at most: 0.10 in, clause: test, standing: {house: test}}
  - id: both
    combine: [pores, slag]
    borderline: 100 %
    at most: 1
    clause: "3.4.2.2"
    standing: {read: MIL-R-45774A page 6}
)");
    CHECK(judged(set, {"", {"RT gas pore 0.06", "RT slag 0.10"}}).verdicts() == "A reject, B reject");
    CHECK(judged(set, {"", {"RT gas pore 0.06", "RT slag 0.05"}}).verdicts() == "A accept, B accept");
    CHECK(judged(set, {"", {"RT gas pore 0.03", "RT slag 0.10"}}).verdicts() == "A accept, B accept");
    CHECK(judged(set, {"", {"RT gas pore 0.06", "RT gas pore 0.06"}}).verdicts() == "A accept, B accept");
}

TEST_CASE("Oregon OAR 740-105-0230, undercut against the stress", "[published]") {
    // K48: read, a state rule for welds on log trucks.
    const auto set = set_from(head() + R"(
rules:
  - {id: transverse, types: undercut, exams: VT, when: stress is transverse, measure: depth, at most: 0.01 in,
     clause: OAR 740-105-0230, standing: {read: state rule}}
  - {id: other, types: undercut, exams: VT, when: stress is parallel, measure: depth, at most: 1/32 in,
     clause: OAR 740-105-0230, standing: {read: state rule}}
)");
    CHECK(judged(set, {"stress=transverse", {"VT undercut d 0.02"}}).verdicts() == "A reject, B reject");
    CHECK(judged(set, {"stress=parallel", {"VT undercut d 0.02"}}).verdicts() == "A accept, B accept");
    CHECK(judged(set, {"", {"VT undercut d 0.02"}}).verdicts() == "A cannot say, B cannot say");
}
