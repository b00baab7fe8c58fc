// A record of form 1, as the program wrote it before verdicts and ranges were kept without sentences: bodies
// by hand in that shape.
#include "case.hpp"
#include "catch.hpp"
#include "criteria/shipped.hpp"
#include "measure/sha256.hpp"
#include "operations/desk.hpp"
#include "operations/keeping.hpp"

#include <nlohmann/json.hpp>

using namespace beadbook;
using namespace beadbook::test;

namespace {

using What = ReplayFault::What;
using Json = nlohmann::json;

const std::string set_text =
    head() +
    "rules:\n  - {id: size, types: porosity, exams: RT, measure: size, at most: {A: 0.03 in, B: 0.06 in}, "
    "clause: c1, standing: {house: x}}\n";

Json typed(const std::string &text, std::int64_t nm) { return {{"typed", text}, {"nm", nm}}; }

Json coupon_body() {
    return {{"id", "T-1"},
            {"fields",
             {{"criteria", "/home/welder/set.yaml"},
              {"class", "A"},
              {"joint", "groove"},
              {"form", "tube"},
              {"process", "GTAW"},
              {"position", "6G"},
              {"welder", "W1"},
              {"welded", "2026-01-05"},
              {"diameter", typed("2 in", 50'800'000)},
              {"thickness", typed("0.25 in", 6'350'000)},
              {"weld-thickness", typed("0.25 in", 6'350'000)},
              {"weld-length", typed("6 in", 152'400'000)}}}};
}

Json finding(const std::string &kind, const std::string &effect, std::int64_t limit) {
    return {{"kind", kind},
            {"effect", effect},
            {"sentence", "#1: words of an older program, which nobody says any more"},
            {"authority", "[c1; house]"},
            {"rule", "size"},
            {"clause", "c1"},
            {"standing", "house"},
            {"source", "x"},
            {"measured", {{"text", "0.05 in"}, {"exact", "1270000"}}},
            {"limit", {{"text", "0.0? in"}, {"exact", std::to_string(limit)}}},
            {"margin", {{"text", "-0.02 in"}, {"exact", "-508000"}}},
            {"ratio", 1.6666666666666667},
            {"indications", {1}},
            {"place", {{"from nm", 25'400'000}, {"to nm", 25'400'000}, {"text", "at 1 in"}}}};
}

Json verdict_body(const std::string &a, const std::string &b) {
    return {{"criteria", {{"set", "test"}, {"edition", "test"}, {"hash", sha256(set_text)}}},
            {"classes",
             {{{"class", "A"}, {"verdict", a}, {"findings", {finding("out of limit", "reject", 762'000)}}},
              {{"class", "B"},
               {"verdict", b},
               {"findings", Json::array()},
               {"nearest", finding("within", "accept", 1'524'000)}}}}};
}

/// A rule's part of a range, as it was printed.
Json part(const std::string &rule, const std::string &allows) {
    return {{"allows", allows}, {"rule", rule}, {"clause", "c"}, {"standing", "read"}, {"source", "s"}};
}

/// The rules W1 was qualified by: text and hash as the record keeps them.
const std::string rules_text = R"(rules: r
title: t
edition: e
units: in
quantities: {T: weld thickness}
words: {position: {test: [6G], work: [F, H, V]}}
examinations: [{id: seen, one of: [VT], clause: c, standing: {house: x}}]
variables: [thickness, position]
ranges:
  - {id: thin, of: thickness, allows: from 0.5 x T to 2 x T, clause: c, standing: {house: x}}
  - {id: all-round, of: position, by test: {6G: [F, H, V]}, clause: c, standing: {house: x}}
validity: [{id: v, clause: c, standing: {house: x}}]
)";

Json qualification_body(const Json &range) {
    return {
        {"number", 1},
        {"welded", "2026-01-05"},
        {"test", coupon_body()},
        {"rules", "r"},
        {"rules hash", sha256(rules_text)},
        {"way", "v"},
        {"override", "the owner agrees"},
        {"overridden", {"no VT on record [c, house]"}},
        {"evidence",
         {{"grade",
           {{"class", "A"}, {"by", "R. Quay"}, {"at", "2026-01-07T10:00:00Z"}, {"against verdict", false}}},
          {"exams",
           {{{"number", 1}, {"method", "RT"}, {"date", "2026-01-06"}, {"conditions", {{"film", "D7"}}}}}},
          {"retest after", "coupon T-0 failed on 2026-01-02"},
          {"coupons", {"T-1"}},
          {"criteria", {{"set", "test"}, {"edition", "test"}, {"hash", sha256(set_text)}}},
          {"verdict", "reject"}}},
        {"range", range}};
}

Json good_range() {
    return {{{"variable", "thickness"}, {"parts", {part("thin", "from 0.125 in to 0.5 in")}}},
            {{"variable", "position"}, {"parts", {part("all-round", "F, H and V")}}}};
}

class OldRecord : public Desk {
public:
    explicit OldRecord(const Json &verdict = verdict_body("reject", "accept"),
                       const Json &range = good_range()) {
        write([&](Writing &w) {
            w.ledger().keep_criteria(sha256(set_text), "test", set_text);
            w.ledger().keep_criteria(sha256(rules_text), "r", rules_text);
            const auto add = [&](const char *kind, const char *subject, std::optional<int> exam,
                                 std::optional<int> number, const Json &body) {
                Entry e;
                e.kind = kind;
                e.subject = subject;
                e.exam = exam;
                e.number = number;
                e.body = body.dump();
                w.add(std::move(e));
            };
            add("coupon", "T-1", {}, {}, coupon_body());
            add("exam", "T-1", 1, {},
                {{"number", 1},
                 {"method", "RT"},
                 {"date", "2026-01-06"},
                 {"examiner", "A. Field"},
                 {"level", "II"}});
            add("indication", "T-1", 1, 1,
                {{"number", 1},
                 {"exam", 1},
                 {"type", "gas pore"},
                 {"size", typed("0.05 in", 1'270'000)},
                 {"at", typed("1 in", 25'400'000)}});
            add("verdict", "T-1", {}, {}, verdict);
            add("remark", "T-1", {}, {}, {{"text", "an old remark"}});
            add("grade", "T-1", {}, {}, {{"decision", "passed"}, {"class", "B"}, {"remark", "as B"}});
            add("welder", "W1", {}, {}, {{"name", "R. Quay"}});
            add("qualification", "W1", {}, 1, qualification_body(range));
            add("use", "W1", {}, {}, {{"day", "2026-03-01"}, {"process", "GTAW"}, {"text", "frame 4"}});
        });
    }
    /// Its rules load, so that a fault is one of the range.
    static void check_rules() { REQUIRE(load_range_rules(rules_text).issues.empty()); }
    Verified verified() { return verify(office, {true, ""}); }
};

} // namespace

TEST_CASE("a record of form 1 opens, verifies and replays") {
    OldRecord::check_rules();
    OldRecord desk;
    const CouponState state = desk.office.coupon("T-1");
    REQUIRE(state.verdicts.size() == 1);
    CHECK(state.verdicts[0].form == 1);
    CHECK(state.verdicts[0].verdict_of("A") == "reject");
    CHECK(state.verdicts[0].verdict_of("B") == "accept");
    CHECK(state.indications.size() == 1);
    CHECK(state.grade->decision() == "passed");
    const WelderState welder = desk.book.welder("W1");
    REQUIRE(welder.qualifications.size() == 1);
    CHECK(welder.qualifications[0].form == 1);
    CHECK(welder.qualifications[0].evidence->graded_by == "R. Quay");
    CHECK(welder.qualifications[0].evidence->exams.at(0).method == "RT");
    CHECK(welder.qualifications[0].evidence->retest_after == "coupon T-0 failed on 2026-01-02");
    REQUIRE(welder.qualifications[0].overridden.size() == 1);
    CHECK(welder.qualifications[0].overridden[0].kind == Shortcoming::Kind::told);
    CHECK(welder.qualifications[0].overridden[0].text == "no VT on record [c, house]");
    CHECK(welder.events.size() == 1);
    const Verified v = desk.verified();
    CHECK(v.holds());
    CHECK(v.chain.entries == 9);
    REQUIRE(v.replay);
    CHECK(v.replay->verdicts == 1);
    CHECK(v.replay->ranges == 1);
    CHECK(v.replay->faults.empty());
}

TEST_CASE("the words of form 1 do not matter, its verdicts do") {
    Json reworded = verdict_body("reject", "accept");
    reworded["classes"][0]["findings"][0]["sentence"] = "Anything else";
    reworded["classes"][0]["findings"][0]["measured"]["text"] = "1.27 mm";
    Json range = good_range();
    range[0]["parts"][0]["allows"] = "between 3.18 mm and 12.7 mm";
    CHECK(OldRecord(reworded, range).verified().holds());

    const Verified wrong = OldRecord(verdict_body("accept", "accept")).verified();
    CHECK_FALSE(wrong.holds());
    REQUIRE(wrong.replay->faults.size() == 1);
    const ReplayFault &fault = wrong.replay->faults[0];
    CHECK(fault.what == What::verdict);
    CHECK(fault.part == "A");
    CHECK(fault.was == "accept");
    CHECK(fault.now == "reject");
    CHECK(fault.entry == 4);
    CHECK_FALSE(fault.other_engine); // form 1 does not say by which it was judged

    Json left_out = verdict_body("reject", "accept");
    left_out["classes"].erase(1);
    const Verified missing = OldRecord(left_out).verified();
    REQUIRE(missing.replay->faults.size() == 1);
    CHECK(missing.replay->faults[0].part == "B");
    CHECK(missing.replay->faults[0].was.empty());
    Json extra = verdict_body("reject", "accept");
    extra["classes"].push_back({{"class", "C"}, {"verdict", "accept"}, {"findings", Json::array()}});
    CHECK(OldRecord(extra).verified().replay->faults.at(0).part == "C");
}

TEST_CASE("a range of form 1 is held to its variables and rules") {
    Json other_rule = good_range();
    other_rule[0]["parts"][0]["rule"] = "thick";
    Json one_less = good_range();
    one_less.erase(1);
    for (const Json &range : {other_rule, one_less}) {
        const Verified v = OldRecord(verdict_body("reject", "accept"), range).verified();
        REQUIRE(v.replay->faults.size() == 1);
        CHECK(v.replay->faults[0].what == What::range);
        CHECK(v.replay->faults[0].family == Family::welder);
        CHECK(v.replay->faults[0].subject == "W1");
        CHECK(v.replay->faults[0].number == 1);
    }
}
