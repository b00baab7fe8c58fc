#include "operations/summarizing.hpp"

#include "booth.hpp"
#include "catch.hpp"
#include "operations/board.hpp"

#include <algorithm>

using namespace beadbook;
using namespace beadbook::test;

namespace {

CountedCoupon counted(const std::string &welder, std::optional<Verdict> verdict, bool first = false) {
    CountedCoupon out{"groove", welder, "2026-W48", verdict, first, {}, {}};
    return out;
}

std::string text_of(const Summary &s) {
    std::string out;
    const auto add = [&](const std::string &name, std::initializer_list<std::size_t> numbers) {
        out += name;
        for (const auto n : numbers) out += " " + std::to_string(n);
        out += "; ";
    };
    const auto add_outcome = [&](const Outcome &o) {
        add(o.name, {o.coupons, o.accepted, o.rejected, o.cannot_say, o.not_judged, o.share.count, o.share.of,
                     o.first_pass.count, o.first_pass.of});
    };
    add_outcome(s.all);
    for (const auto &list : {s.joints, s.welders, s.weeks})
        for (const auto &one : list) add_outcome(one);
    for (const auto &list : {s.imperfections, s.places})
        for (const auto &one : list) add(one.name, {one.finds, one.rejecting, one.coupons});
    for (const auto &one : s.rules) add(one.name, {one.reasons, one.coupons.count, one.coupons.of});
    return out;
}

std::vector<CountedCoupon> mixed() {
    std::vector<CountedCoupon> out{counted("L2", Verdict::accept, true), counted("L1", Verdict::reject, true),
                                   counted("L1", Verdict::accept), counted("L2", Verdict::cannot_say, true),
                                   counted("", {}, false)};
    out[1].finds = {
        {"crack", WeldPart::at_9, true}, {"crack", WeldPart::at_3, true}, {"pore", WeldPart::at_3, false}};
    out[1].rejected_by = {"set: cracks", "set: cracks", "set: sum"};
    out[2].finds = {{"pore", WeldPart::unknown, false}, {"arc strike", WeldPart::at_3, false}};
    return out;
}

} // namespace

TEST_CASE("a summary counts outcomes, finds, places and rules") {
    const Summary s = summary_of(mixed());
    CHECK(s.finds == 5);
    // name, coupons, accepted, rejected, cannot say, not judged, share, first pass
    CHECK(text_of(s) == " 5 2 1 1 1 2 3 1 2; "
                        "groove 5 2 1 1 1 2 3 1 2; "
                        "L1 2 1 1 0 0 1 2 0 1; L2 2 1 0 1 0 1 1 1 1;  1 0 0 0 1 0 0 0 0; "
                        "2026-W48 5 2 1 1 1 2 3 1 2; "
                        "crack 2 2 1; pore 2 0 2; arc strike 1 0 1; "
                        "3:00 to 6:00 3 1 2; 9:00 to 12:00 1 1 1; place not known 1 0 1; "
                        "set: cracks 2 1 1; set: sum 1 1 1; ");
    CHECK(s.all.share.low == share_of(2, 3).low);
    CHECK(s.all.first_pass.high == share_of(1, 2).high);
}

TEST_CASE("what was measured and held is counted apart, as no find of any kind or place") {
    auto coupons = mixed();
    coupons[0].finds = {{"fillet size", WeldPart::at_3, false, true},
                        {"pore", WeldPart::at_3, false},
                        {"throat", WeldPart::at_3, false, false, true}};
    const Summary s = summary_of(coupons);
    CHECK(s.held == 1);
    CHECK(s.unjudged == 1);
    CHECK(s.finds == 6);
    CHECK(std::none_of(s.imperfections.begin(), s.imperfections.end(),
                       [](const FindCount &one) { return one.name == "fillet size"; }));
    CHECK(s.places.at(0).finds == 4);
}

TEST_CASE("a summary is the same in any order, and of nothing it is empty") {
    auto coupons = mixed();
    const std::string expected = text_of(summary_of(coupons));
    for (int turn = 0; turn < 5; ++turn) {
        std::rotate(coupons.begin(), coupons.begin() + 1, coupons.end());
        CHECK(text_of(summary_of(coupons)) == expected);
    }
    const Summary none = summary_of({});
    CHECK(text_of(none) == " 0 0 0 0 0 0 0 0 0; ");
    CHECK(none.all.share.high == 1);
}

TEST_CASE("a find counts in the quarter where it begins, to the nanometre") {
    const auto part = [](std::int64_t at, std::optional<std::int64_t> length, bool closed) {
        WeldLine line;
        if (length) line.length = Length{*length};
        line.closed = closed;
        return part_of(Span{{at}, {at + 1}}, line);
    };
    CHECK(part(0, 400, true) == WeldPart::at_12);
    CHECK(part(99, 400, true) == WeldPart::at_12);
    CHECK(part(100, 400, true) == WeldPart::at_3);
    CHECK(part(200, 400, true) == WeldPart::at_6);
    CHECK(part(399, 400, true) == WeldPart::at_9);
    CHECK(part(400, 400, true) == WeldPart::at_12); // the datum again
    CHECK(part(401, 402, true) == WeldPart::at_9);
    CHECK(part(99, 402, true) == WeldPart::at_12);
    CHECK(part(100, 402, true) == WeldPart::at_3); // 100.5 is the border, and 3:00 is read as 100
    CHECK(part(101, 402, true) == WeldPart::at_3);
    CHECK(part(0, 400, false) == WeldPart::first);
    CHECK(part(100, 400, false) == WeldPart::second);
    CHECK(part(299, 400, false) == WeldPart::third);
    CHECK(part(400, 400, false) == WeldPart::fourth); // the far end
    CHECK(part(100, std::nullopt, true) == WeldPart::unknown);
    CHECK(part(100, std::nullopt, false) == WeldPart::unknown);
    CHECK(part_of({}, {Length{400}, true}) == WeldPart::unknown);
}

TEST_CASE("a summary of a record judges afresh and knows a first attempt that was not asked for") {
    Booth booth;
    const auto weld = [&](const std::string &mark, const std::string &found, const Booth::Fields &more) {
        booth.coupon(mark, more);
        booth.exams(mark);
        if (found.empty())
            booth.finish(3, mark);
        else
            booth.finds(found, mark);
    };
    weld("T-1", "crack l 0.2 at 2in",
         {{"welder", "L1"}, {"welded", "2026-11-02"}, {"seam", "girth"}, {"weld-length", ""}});
    weld("T-2", "", {{"welder", "L1"}, {"welded", "2026-11-09"}, {"purpose", "test"}});
    weld("T-3", "", {{"welder", "L2"}, {"welded", "2026-11-09"}});
    weld("T-4", "", {{"welder", "L2"}, {"welded", "2026-11-09"}, {"purpose", "practice"}});
    booth.put("T-5", {{"welder", "L3"}});
    weld("T-6", "", {});
    booth.coupon("T-7", {{"welder", "L4"}});
    booth.write([](Writing &w) { return withdraw_coupon(w, "T-7", "the wrong plate"); });

    const Summary all = summarize(booth.office, {Selection{}}).groups.at(0).summary;
    CHECK(all.all.coupons == 6);
    CHECK(all.all.accepted == 4);
    CHECK(all.all.rejected == 1);
    CHECK(all.all.not_judged == 1);
    // T-2 is a second attempt, as T-1 is a test that nobody calls so; practice is a kind of its own, T-6
    // names nobody.
    CHECK(all.all.first_pass.count == 2);
    CHECK(all.all.first_pass.of == 3);
    REQUIRE(all.rules.size() == 1);
    CHECK(all.rules[0].name == "mil-hdbk-1890-table-3: crack");
    CHECK(all.rules[0].title == "Crack in weld or base metal");
    CHECK(all.rules[0].reasons == 1); // of the class sought alone
    CHECK(all.imperfections.at(0).rejecting == 1);
    CHECK(all.places.at(0).name == "3:00 to 6:00"); // 2 in of 6.28 in
    REQUIRE(all.weeks.size() == 3);
    CHECK(all.weeks[0].name == "2026-W45");
    CHECK(all.weeks[2].name.empty());

    Selection later;
    later.from = parse_day("2026-11-09");
    Selection of_one;
    of_one.welder = "L1";
    const auto two = summarize(booth.office, {later, of_one}).groups;
    CHECK(two.at(0).summary.all.coupons == 3);
    CHECK(two.at(0).summary.all.first_pass.of == 2); // T-2 is still a second one
    CHECK(two.at(1).summary.all.coupons == 2);
    CHECK(two.at(1).summary.all.first_pass.count == 0);
    CHECK(two.at(1).summary.all.first_pass.of == 1);
}

TEST_CASE("nobody's first-pass yield rises as a coupon that its finds reject is withdrawn") {
    Booth booth;
    for (const auto &[mark, joint_form] : {std::pair{"F-1", "butt"}, {"F-2", "corner"}}) {
        booth.coupon(mark, {{"welder", "L1"}, {"welded", "2026-11-02"}, {"joint-form", joint_form}});
        booth.exams(mark);
    }
    booth.finds("crack l 0.2 at 2in", "F-1");
    booth.finish(3, "F-2");
    const auto yield = [&] { return summarize(booth.office, {Selection{}}).groups.at(0).summary; };
    const Share before = yield().all.first_pass;
    booth.write([](Writing &w) { return withdraw_coupon(w, "F-1", "mixed up"); });
    const Summary after = yield();
    CHECK(after.all.first_pass.count == before.count);
    CHECK(after.all.first_pass.of == before.of);
    CHECK(after.withdrawn_rejects == 1);
    CHECK(after.all.coupons == 1);
    CHECK(after.rules.empty());
    CHECK(after.finds == 0);
}

TEST_CASE("welders stand in natural order, in a summary and on the board; those not known last") {
    std::vector<CountedCoupon> all;
    for (const char *welder : {"L10", "", "L2", "L1"}) all.push_back(counted(welder, Verdict::accept));
    std::vector<std::string> names;
    for (const auto &one : summary_of(all).welders) names.push_back(one.name);
    CHECK(names == std::vector<std::string>{"L1", "L2", "L10", ""});
    Booth booth;
    int number = 0;
    for (const char *welder : {"L10", "L2", "L1"})
        booth.put("T-" + std::to_string(++number), {{"welder", welder}});
    booth.put("T-9");
    names.clear();
    for (const auto &line : board_of(booth.office, {}, 100).lines) names.push_back(line.welder);
    CHECK(names == std::vector<std::string>{"L1", "L2", "L10", ""});
}
