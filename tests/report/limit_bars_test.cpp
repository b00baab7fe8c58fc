#include "report/limit_bars.hpp"

#include "case.hpp"
#include "catch.hpp"
#include "report/pictures.hpp"

#include <algorithm>

using namespace beadbook;
using namespace beadbook::test;

namespace {

const char *both_ways =
    "rules:\n"
    "  - {id: size, title: Size, types: porosity, exams: RT, measure: size, at most: 0.1 in, clause: "
    "'5.1', standing: {house: x}}\n"
    "  - {id: apart, types: porosity, exams: RT, measure: gap, at least: 0.5 in, clause: '5.2', "
    "standing: {memory: y}}\n";

JudgedCase of_log(const std::vector<std::string> &log) {
    return judged(set_from(head() + both_ways), {"weld-length=8in", log});
}

} // namespace

TEST_CASE("each reason with both numbers is a row, the farthest out first") {
    const auto c =
        of_log({"RT gas pore 0.15 at 1 in", "RT gas pore 0.05 at 1.25 in", "RT gas pore 0.3 at 6 in"});
    const auto rows = limit_rows(c.view(), 0, c.judgement.classes[0]);
    REQUIRE(rows.size() == 3);
    CHECK(rows[0].who == "#1, #2"); // 0.1 in apart of 0.5 in
    CHECK(rows[0].least);
    CHECK(rows[0].measured == "0.1 in");
    CHECK(rows[0].limit == "0.5 in");
    CHECK(rows[0].source == "5.2, memory");
    CHECK(rows[1].who == "#3");
    CHECK(rows[1].what == "Size: size");
    CHECK(rows[1].share_of_limit == Approx(3));
    CHECK_FALSE(rows[1].kept);
    CHECK(rows[2].who == "#1");
    const Picture picture = limit_bars(rows);
    CHECK_THAT(picture.told, says("#3, Size: size: 0.3 in, limit 0.1 in, out; 5.1, house."));
    CHECK(crowded(picture) == "");
    CHECK(crowded(limit_bars(rows, 340)) == "");
    const auto lines = shapes_of<PictureLine>(picture);
    CHECK(std::count_if(lines.begin(), lines.end(),
                        [](const PictureLine &l) { return l.role == Role::limit; }) == 3);
}

TEST_CASE("a bar ends where the measurement is, and what is out lies on the limit's other side") {
    const auto c = of_log({"RT gas pore 0.15 at 1 in"});
    const auto rows = limit_rows(c.view(), 0, c.judgement.classes[0]);
    const Picture picture = limit_bars(rows);
    double bar = 0, beyond = 0, limit = 0;
    for (const auto &box : shapes_of<PictureBox>(picture)) {
        if (box.role == Role::over) bar = box.x + box.width;
        if (box.role == Role::beyond) beyond = box.x;
    }
    for (const auto &line : shapes_of<PictureLine>(picture))
        if (line.role == Role::limit) limit = line.x1;
    CHECK(beyond == Approx(limit));
    CHECK((bar - 14) / (limit - 14) == Approx(1.5));
    CHECK(limit_lines(rows).find("XXXX") != std::string::npos);
    CHECK_THAT(limit_lines(rows), says("#1: 0.15 in, limit 0.1 in") && says("| is the limit"));
}

TEST_CASE("what an accept rests on is a row too, the nearest to its limit first") {
    const auto c = of_log({"RT gas pore 0.02 at 1 in", "RT gas pore 0.09 at 6 in"});
    REQUIRE(c.judgement.classes[0].proof);
    const auto rows = limit_rows(c.view(), 0, *c.judgement.classes[0].proof);
    REQUIRE(rows.size() >= 2);
    CHECK(rows[0].who == "#2");
    CHECK(rows[0].measured == "0.09 in");
    CHECK(std::all_of(rows.begin(), rows.end(), [](const LimitRow &row) { return row.kept; }));
    CHECK(limit_rows(c.view(), 0, c.judgement.classes[0]).empty()); // nothing speaks against it
}

TEST_CASE("what a bar is of is told whole on a narrow page, in as many lines as it takes") {
    const std::string what = "Total length of pores in a linear inch, sum of length in any one inch of weld",
                      source = "Table III, porosity and voids (a handbook of many pages), read: page eleven";
    const std::vector<LimitRow> rows(
        2, LimitRow{"#18, #19 and #22", what, "0.191 in", "0.1 in", source, 2, 2, false, false});
    const Picture picture = limit_bars(rows, 340);
    std::string all;
    for (const auto &text : shapes_of<PictureText>(picture)) {
        all += text.text + " ";
        CHECK(text.x + text_width(text.text, text.size) <= 340);
    }
    CHECK_THAT(all, says("#18, #19 and #22, " + what) && says(source));
    CHECK(crowded(picture) == "");
}

TEST_CASE("without a number there is no figure, of very many the rest is counted") {
    Document doc;
    add_limit_bars(doc, {});
    CHECK(doc.blocks.empty());
    std::vector<LimitRow> rows(50,
                               LimitRow{"#1", "Size", "0.2 in", "0.1 in", "5.1, read", 2, 2, false, false});
    CHECK_THAT(limit_lines(rows), says("and 40 more"));
    add_limit_bars(doc, rows);
    REQUIRE(doc.blocks.size() == 6); // a heading, and twenty bars by fours
    CHECK(std::get<Figure>(doc.blocks[1]).text == limit_lines(rows));
    CHECK(std::get<Figure>(doc.blocks[2]).text.empty());
    CHECK(std::get<Figure>(doc.blocks.back()).caption == "and 30 more");
}
