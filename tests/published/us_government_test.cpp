// Worked cases from US government documents. Each row names the document whose printed number decides it;
// numbers were read on the pages that the criteria files name, unless the row says otherwise.
#include "case.hpp"
#include "catch.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

struct Row {
    std::string id, source, set, coupon;
    std::vector<std::string> log;
    std::string expected;
    std::string exams = "VT MT PT RT";
};

void check(const std::vector<Row> &rows) {
    for (const auto &row : rows) {
        const JudgedCase result = judged(row.set, {row.coupon, row.log, row.exams});
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
