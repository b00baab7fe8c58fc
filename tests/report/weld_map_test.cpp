#include "report/weld_map.hpp"

#include "case.hpp"
#include "catch.hpp"
#include "report/pictures.hpp"

#include <algorithm>
#include <cmath>
#include <set>

using namespace beadbook;
using namespace beadbook::test;

namespace {

const char *pore_rule =
    "rules: [{id: r, types: porosity, exams: RT, measure: size, at most: 0.1 in, clause: c, "
    "standing: {house: x}}]\n";

WeldMap mapped(const std::string &coupon, const std::vector<std::string> &log,
               const std::string &rules = pore_rule) {
    const JudgedCase c = judged(set_from(head() + rules), {coupon, log});
    return weld_map(c.view(), 0, c.judgement.classes[0]);
}

std::string data_of(const Picture &picture, const std::string &name) {
    for (const auto &[key, value] : picture.data)
        if (key == name) return value;
    return "absent";
}

/// Groups that stand for a find or a band.
std::vector<PictureGroup> groups_with(const Picture &picture, const std::string &key,
                                      const std::string &value) {
    std::vector<PictureGroup> out;
    for (const auto &group : shapes_of<PictureGroup>(picture))
        for (const auto &[name, is] : group.data)
            if (name == key && is == value) out.push_back(group);
    return out;
}

bool tells(const Picture &picture, const std::string &text) {
    const auto texts = texts_in(picture);
    return std::any_of(texts.begin(), texts.end(),
                       [&](const std::string &one) { return one.find(text) != std::string::npos; });
}

std::vector<std::string> many(std::size_t count, double weld) {
    std::vector<std::string> log;
    for (std::size_t i = 0; i < count; ++i) {
        const auto at = std::lround(static_cast<double>(i * 37 % 997) / 997.0 * (weld - 0.3) * 1000);
        log.push_back("RT gas pore " + std::string(i % 4 == 0 ? "0.2" : "0.02") + " at " +
                      std::to_string(at / 1000) + "." + std::to_string(1000 + at % 1000).substr(1) + " in" +
                      (i % 3 == 0   ? " face"
                       : i % 3 == 1 ? " root"
                                    : ""));
    }
    return log;
}

} // namespace

TEST_CASE("a find is drawn to scale in the band of its side, under its number") {
    const WeldMap map =
        mapped("weld-length=8in", {"RT slag from 2 to 4 w 0.1 face", "RT gas pore 0.05 at 6 root"},
               "rules: [{id: r, types: any, exams: RT, allowed: no limit, clause: c, standing: "
               "{house: x}}]\n");
    const Picture picture = unrolled(map);
    CHECK(picture.kind == "weld-map");
    const double x0 = std::stod(data_of(picture, "x0")), x1 = std::stod(data_of(picture, "x1"));
    CHECK(data_of(picture, "start") == "0");
    CHECK(data_of(picture, "length") == "203200000");
    CHECK(data_of(picture, "unit") == "in");
    REQUIRE(groups_with(picture, "side", "face").size() == 1);
    REQUIRE(groups_with(picture, "side", "root").size() == 1);
    CHECK(groups_with(picture, "side", "unsaid").empty()); // nothing is on neither
    const auto slag = groups_with(picture, "number", "1");
    REQUIRE(slag.size() == 1);
    const auto *box = std::get_if<PictureBox>(&slag[0].shapes[0]);
    REQUIRE(box);
    CHECK(box->role == Role::kept);
    CHECK(box->x == Approx(x0 + (x1 - x0) * 2 / 8));
    CHECK(box->width == Approx((x1 - x0) * 2 / 8));
    CHECK(box->height == Approx((x1 - x0) * 0.1 / 8));
    const auto pore = groups_with(picture, "number", "2");
    REQUIRE(pore.size() == 1);
    CHECK(std::holds_alternative<PictureEllipse>(pore[0].shapes[0]));
    CHECK(tells(picture, "#1"));
    CHECK(tells(picture, "8 in"));
    CHECK_THAT(picture.told, says("#1 slag inclusion (RT) from 2 in to 4 in, face."));
}

TEST_CASE("a map has the bands that something is on; to be tapped, or with nothing on it, both sides") {
    const auto bands = [](const WeldMap &map, Bands which, const std::string &side) {
        return groups_with(unrolled(map, 780, which), "side", side).size();
    };
    const WeldMap root = mapped("weld-length=8in", {"RT gas pore 0.05 at 6 root"});
    CHECK(bands(root, Bands::used, "root") == 1);
    CHECK(bands(root, Bands::used, "face") == 0);
    CHECK(bands(root, Bands::to_tap, "face") == 1);
    const WeldMap empty = mapped("weld-length=8in", {});
    CHECK(bands(empty, Bands::used, "face") == 1);
    CHECK(bands(empty, Bands::used, "root") == 1);
}

TEST_CASE("what rejects is solid, boxed and bracketed with its limit; what is open has a question mark") {
    const WeldMap map = mapped(
        "weld-length=8in", {"RT gas pore 0.2 at 2 in", "RT gas pore at 4 in", "RT gas pore 0.05 at 6 in"});
    REQUIRE(map.finds.size() == 3);
    CHECK(map.finds[0].state == MappedFind::State::rejects);
    CHECK(map.finds[1].state == MappedFind::State::open);
    CHECK(map.finds[2].state == MappedFind::State::kept);
    const Picture picture = unrolled(map);
    CHECK(tells(picture, "#1: 0.2 in, limit 0.1 in"));
    CHECK(tells(picture, "#2?"));
    CHECK_FALSE(tells(picture, "#3?"));
    CHECK(tells(picture, "cannot say"));
    CHECK(tells(picture, "does not reject"));
    const auto brackets = shapes_of<PicturePath>(picture);
    CHECK(std::count_if(brackets.begin(), brackets.end(),
                        [](const PicturePath &p) { return p.role == Role::bracket; }) == 1);
}

TEST_CASE("a window's reason is bracketed over the window, and never past the end of the weld") {
    const WeldMap map = mapped(
        "weld-length=8in", {"RT gas pore 0.1 at 7.5 in", "RT gas pore 0.1 at 7.8 in"},
        "rules: [{id: r, types: porosity, exams: RT, measure: sum of length, window: 2 in, at most: 0.1 "
        "in, clause: c, standing: {house: x}}]\n");
    REQUIRE(map.reasons.size() == 1);
    CHECK(map.reasons[0].numbers == std::vector<int>{1, 2});
    CHECK(map.reasons[0].words == "#1, #2: 0.2 in within any 2 in, limit 0.1 in");
    CHECK(map.reasons[0].place.to.nm == 8 * nm_per_inch);
    CHECK(map.reasons[0].place.from.nm == 6 * nm_per_inch);
}

TEST_CASE("a reason that is wider than the picture is folded, and its limit is never cut") {
    const WeldMap map = mapped(
        "weld-length=8in",
        {"RT gas pore 0.1 at 3.1 in", "RT gas pore 0.1 at 3.4 in", "RT gas pore 0.1 at 3.7 in"},
        "rules: [{id: r, types: porosity, exams: RT, measure: sum of length, window: 2 in, at most: 0.1 "
        "in, clause: c, standing: {house: x}}]\n");
    REQUIRE(map.reasons.size() == 1);
    const Picture narrow = unrolled(map, 200);
    std::string all;
    for (const auto &text : texts_in(narrow)) {
        CHECK(text.find("...") == std::string::npos);
        all += text + " ";
    }
    CHECK(all.find("limit 0.1 in") != std::string::npos);
    CHECK(all.find(map.reasons[0].words) != std::string::npos);
    CHECK(crowded(narrow).empty());
    CHECK(narrow.height > unrolled(map, 780).height);
}

TEST_CASE("a find without a place stands in a list, none is left out") {
    const WeldMap map = mapped("weld-length=8in", {"RT gas pore 0.2", "RT gas pore 0.05 at 6 in"});
    CHECK(unplaced_words(map) == "Without a place: #1");
    for (const double width : {340.0, 780.0}) {
        const Picture picture = unrolled(map, width);
        CHECK(tells(picture, "without a place"));
        CHECK(groups_with(picture, "number", "1").size() == 1);
        CHECK(groups_with(picture, "number", "2").size() == 1);
    }
    // Also where nobody knows how long the weld is.
    const WeldMap unknown = mapped("joint=groove", {"RT gas pore 0.2", "RT gas pore 0.05 at 6 in"});
    const Picture picture = unrolled(unknown);
    CHECK(data_of(picture, "length") == "0");
    CHECK(tells(picture, "length not known"));
    CHECK(tells(picture, "#1"));
    CHECK(mapped("weld-length=8in", {}).finds.empty());
    CHECK_THAT(unrolled(mapped("weld-length=8in", {})).told, says("Nothing is on record"));
}

TEST_CASE("a find over the datum of a girth weld is drawn on both ends, and once round the ring") {
    const WeldMap map = mapped("form=tube seam=girth diameter=2in", {"RT slag l 0.4 in at 6.1 in"});
    const auto find = groups_with(unrolled(map), "number", "1");
    REQUIRE(find.size() == 1);
    const auto boxes = std::count_if(find[0].shapes.begin(), find[0].shapes.end(), [](const PictureShape &s) {
        const auto *box = std::get_if<PictureBox>(&s);
        return box && box->height < 12; // the label's is higher
    });
    CHECK(boxes == 2);
    const auto round = ring(map);
    REQUIRE(round);
    CHECK(round->kind == "weld-ring");
    CHECK(groups_with(*round, "number", "1").size() == 1);
    for (const char *hour : {"12", "3", "6", "9"}) CHECK(tells(*round, hour));
    CHECK_FALSE(ring(mapped("weld-length=8in", {"RT gas pore 0.2 at 1 in"})));
    CHECK_FALSE(ring(mapped("form=tube seam=girth", {"RT gas pore 0.2"}))); // nobody knows how long
}

TEST_CASE("no two texts of a map overlap, with 1 and with 200 finds, in a hand and on paper") {
    for (const std::size_t count : {1u, 12u, 200u}) {
        const WeldMap plate = mapped("weld-length=8in", many(count, 8));
        const WeldMap tube = mapped("form=tube seam=girth diameter=4in", many(count, 12.5));
        CHECK(plate.finds.size() == count);
        for (const double width : {340.0, 780.0}) {
            INFO(count << " finds, " << width << " wide");
            CHECK(crowded(unrolled(plate, width)) == "");
            CHECK(crowded(unrolled(tube, width)) == "");
            for (const auto &map : {plate, tube}) {
                const Picture picture = unrolled(map, width);
                CHECK(groups_with(picture, "number", "1").size() == 1);
                CHECK(groups_with(picture, "number", std::to_string(count)).size() == 1);
                std::set<std::string> tags;
                for (const auto &text : texts_in(picture))
                    if (text.starts_with("#") && text.find(':') == std::string::npos) tags.insert(text);
                CHECK(tags.size() == count);
            }
        }
        CHECK(crowded(*ring(tube, 20)) == "");
        CHECK(crowded(*ring(tube, 60)) == "");
    }
}

TEST_CASE("of many finds a ring names those that reject, and says how many it does not name") {
    const WeldMap tube = mapped("form=tube seam=girth diameter=4in", many(200, 12.5));
    const Picture picture = *ring(tube, 20);
    CHECK(tells(picture, "numbers of 180 more: unrolled"));
    CHECK(tells(picture, "#1")); // 0.2 in
    const auto texts = texts_in(picture);
    CHECK(std::count(texts.begin(), texts.end(), "#2") == 0); // 0.02 in; those from 20 on are beyond the most
    CHECK(groups_with(picture, "number", "2").size() == 1);   // drawn all the same
}

TEST_CASE("more reasons than can be bracketed are counted") {
    const WeldMap map = mapped("weld-length=8in", many(200, 8));
    CHECK(map.reasons.size() == 12);
    CHECK(map.more_reasons == 38);
    CHECK(tells(unrolled(map), "and 38 more reasons"));
}
