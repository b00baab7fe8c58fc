// Worked cases for ISO 5817:2014, 23277:2015 and 23278:2015. "read": every limit used was seen in an extract;
// "memory": a limit from memory is involved, so the row checks our encoding, not the standard.
#include "case.hpp"
#include "catch.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

struct Row {
    std::string id, source, coupon;
    std::vector<std::string> log;
    std::string expected;
};

void check(const std::string &set, const std::vector<Row> &rows) {
    for (const auto &row : rows) {
        const std::string in_scope =
            set == "iso-5817" ? "material=steel process=GTAW " : "joint=groove material=steel ";
        const JudgedCase result = judged(set, {in_scope + row.coupon, row.log});
        INFO(row.id << ", " << row.source << "\n" << result.sentences(result.set->classes.back().id));
        CHECK(result.verdicts() == row.expected);
    }
}

} // namespace

TEST_CASE("ISO 5817 surface imperfections", "[published]") {
    const std::string butt = "joint=groove sides=one weld-length=200mm thickness=";
    const std::string fillet = "joint=fillet sides=one weld-length=200mm thickness=";
    const std::string none = "B reject, C reject, D reject", all = "B accept, C accept, D accept";
    const std::string cd = "B reject, C accept, D accept", d = "B reject, C reject, D accept";
    check(
        "iso-5817",
        {
            {"D-14", "1.7, read", butt + "12mm", {"VT undercut l 20 d 0.45 at 50 smooth"}, all},
            {"D-15",
             "1.7, read; 'short' from memory",
             butt + "3.0mm",
             {"VT undercut l 20 d 0.25 at 50 smooth"},
             cd},
            {"D-17", "1.7, read", butt + "3.1mm", {"VT undercut l 60 d 0.2 at 50 face smooth"}, cd},
            {"D-17 at the root",
             "1.8 read; that undercut at the root is 5013 is from memory",
             butt + "3.1mm",
             {"VT undercut l 60 d 0.2 at 50 root smooth"},
             none},
            {"D-18 not short",
             "short, memory",
             "joint=groove weld-length=60mm thickness=3mm",
             {"VT undercut l 16 d 0.2 at 5 smooth"},
             none},
            {"D-18 short",
             "short, memory",
             "joint=groove weld-length=60mm thickness=3mm",
             {"VT undercut l 15 d 0.2 at 5 smooth"},
             cd},
            {"D-20",
             "1.8, read; 'short' from memory",
             butt + "6mm",
             {"VT shrinkage groove l 20 d 0.6 at 50 smooth"},
             cd},
            {"D-21 at the limit",
             "1.9, read",
             butt + "10mm",
             {"VT excess weld metal h 2.6 w 16 at 50 smooth"},
             all},
            {"D-21 over", "1.9, read", butt + "10mm", {"VT excess weld metal h 2.61 w 16 at 50 smooth"}, cd},
            {"D-23",
             "1.9, transition, read",
             butt + "10mm",
             {"VT excess weld metal h 2.0 w 16 at 50 sharp"},
             none},
            {"D-24", "1.10, read", fillet + "10mm", {"VT excessive convexity h 2.3 w 12 at 50"}, cd},
            {"D-26", "1.11, read", butt + "3mm", {"VT excess penetration h 1.4 w 3 at 50"}, cd},
            {"D-27", "1.3, read", butt + "10mm weld-thickness=10mm", {"VT surface pore 1.5 at 50"}, cd},
            {"D-29", "1.4, read", butt + "15mm", {"VT end crater pipe d 1.2 at 50"}, d},
            {"D-30 short",
             "1.6, read; 'short' from memory",
             butt + "6mm",
             {"VT incomplete root penetration l 20 d 1.0 at 50"},
             d},
            {"D-30 long",
             "1.6, read; 'short' from memory",
             butt + "6mm",
             {"VT incomplete root penetration l 30 d 1.0 at 50"},
             none},
            {"D-32",
             "1.12, read (level D memory)",
             fillet + "10mm",
             {"VT incorrect weld toe angle 105 at 50"},
             cd},
            {"toe of a fillet, edges",
             "1.12, read (level D memory)",
             fillet + "10mm",
             {"VT toe angle angle 110 at 50"},
             all},
            {"the same, under 100", "1.12, read", fillet + "10mm", {"VT re-entrant angle angle 99 at 50"}, d},
            {"toe of a butt: obtuse is better",
             "1.12, read",
             butt + "10mm",
             {"VT toe angle angle 150 at 50"},
             all},
            {"the same, 149", "1.12, read", butt + "10mm", {"VT toe angle angle 149 at 50"}, cd},
            {"the same, 109",
             "1.12, read (level D memory)",
             butt + "10mm",
             {"VT toe angle angle 109 at 50"},
             d},
            {"acute: the face hangs over",
             "1.12 (level D memory)",
             butt + "10mm",
             {"VT toe angle angle 89 at 50"},
             none},
            {"D-33 short",
             "1.14, read (level D memory)",
             butt + "10mm",
             {"VT incompletely filled groove l 20 d 0.45 at 50 smooth"},
             all},
            {"D-33 long",
             "1.14, read (level D memory)",
             butt + "10mm",
             {"VT incompletely filled groove l 30 d 0.45 at 50 smooth"},
             none},
            {"D-35",
             "1.17, read (level D memory)",
             butt + "8mm",
             {"VT root concavity l 20 d 0.4 at 50 smooth"},
             all},
            {"D-36 short",
             "1.20, read",
             fillet + "10mm throat=6mm",
             {"VT insufficient throat l 20 d 0.8 at 50"},
             cd},
            {"D-36 long",
             "1.20, read",
             fillet + "10mm throat=6mm",
             {"VT insufficient throat l 30 d 0.8 at 50"},
             none},
            {"D-38", "1.1, read", butt + "10mm", {"VT crack l 0.5 at 50"}, none},
            {"D-39",
             "1.23, read",
             butt + "10mm",
             {"VT spatter at 50"},
             "B cannot say, C cannot say, D cannot say"},
            {"P-25 thin",
             "1.7, read in an article on level B",
             butt + "3mm",
             {"VT undercut l 5 d 0.1 at 50 smooth"},
             cd},
            {"P-25 thick",
             "1.7, read in an article on level B",
             butt + "20mm",
             {"VT undercut l 5 d 0.5 at 50 smooth"},
             all},
            {"D-48 by plain levels",
             "1.7, 1.9, 1.11, read",
             butt + "8mm",
             {"VT undercut l 20 d 0.45 at 50 smooth", "VT excess weld metal l 15 h 2.6 w 12 at 90 smooth",
              "VT excess penetration l 10 h 2.0 w 4 at 120"},
             cd},
        });
}

TEST_CASE("ISO 5817 asks for what it was not told", "[published]") {
    const std::string steel = "material=steel process=GTAW joint=groove ";
    const std::string butt = steel + "weld-length=200mm thickness=12mm";
    CHECK(judged("iso-5817", {butt, {"VT undercut l 20 at 50 smooth"}}).verdicts() ==
          "B cannot say, C cannot say, D cannot say");
    CHECK(judged("iso-5817", {butt, {"VT undercut l 20 d 0.45 at 50"}}).verdicts() ==
          "B cannot say, C cannot say, D cannot say");
    CHECK(judged("iso-5817", {steel, {"VT undercut l 20 d 5 at 50 smooth"}}).verdicts() ==
          "B cannot say, C cannot say, D cannot say");
    // Under 0.5 mm the standard does not speak.
    CHECK(judged("iso-5817",
                 {steel + "weld-length=200mm thickness=0.4mm", {"VT undercut l 20 d 0.01 at 50 smooth"}})
              .verdicts() == "B cannot say, C cannot say, D cannot say");
}

TEST_CASE("ISO 23278, magnetic particle levels", "[published]") {
    check("iso-23278", {
                           {"D-56",
                            "Table 1, memory",
                            "",
                            {"MT linear indication 4.0 at 10"},
                            "1 reject, 2X reject, 3X reject, 2 reject, 3 accept"},
                           {"D-57",
                            "Table 1, memory",
                            "",
                            {"MT rounded indication 2.5x2.0 at 10"},
                            "1 reject, 2X accept, 3X accept, 2 accept, 3 accept"},
                           {"D-59 near",
                            "joining, memory",
                            "weld-length=200mm",
                            {"MT li 1.0 at 10", "MT li 1.2 at 11.8"},
                            "1 reject, 2X reject, 3X reject, 2 accept, 3 accept"},
                           {"D-59 apart",
                            "joining, memory",
                            "weld-length=200mm",
                            {"MT li 1.0 at 10", "MT li 1.2 at 12.1"},
                            "1 accept, 2X accept, 3X accept, 2 accept, 3 accept"},
                       });
}

TEST_CASE("ISO 23277, penetrant levels", "[published]") {
    check("iso-23277", {
                           {"D-60 at the limit",
                            "Table 1, memory",
                            "",
                            {"PT linear indication 2.0 at 10"},
                            "1 accept, 2X accept, 3X accept, 2 accept, 3 accept"},
                           {"D-60 over",
                            "Table 1, memory",
                            "",
                            {"PT linear indication 2.1 at 10"},
                            "1 reject, 2X reject, 3X reject, 2 accept, 3 accept"},
                       });
}

TEST_CASE("a pore by ISO 13919-1, one limit capped at another", "[published]") {
    // P-21: published pore 0.5 mm in t 10 meets level B, min(0.3 t, 2); read in a journal table.
    const auto set = set_from(R"(set: test
title: Test
edition: test
units: mm
classes: [B, C, D]
quantities: {t: thinner member}
rules:
  - {id: pore, types: porosity, exams: RT, measure: size,
     at most: {B: lesser of 0.3 x t and 2 mm, C: lesser of 0.4 x t and 3 mm, D: lesser of 0.5 x t and 5 mm},
     clause: table, standing: {read: journal table}}
)");
    CHECK(judged(set, {"thickness=10mm", {"RT gas pore 0.5"}}).verdicts() == "B accept, C accept, D accept");
    CHECK(judged(set, {"thickness=10mm", {"RT gas pore 2.5"}}).verdicts() == "B reject, C accept, D accept");
}
