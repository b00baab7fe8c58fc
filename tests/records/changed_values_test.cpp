#include "records/changed_values.hpp"

#include "catch.hpp"
#include "operations/booth.hpp"
#include "operations/looking.hpp"
#include "operations/moving.hpp"
#include "records/described_since.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// "name: before -> now" of the newest entry.
std::string last_change(Booth &booth) {
    const auto history = history_of_coupon(booth.office, "T-1");
    std::string out;
    for (const auto &one : changed_values(history, history.back()))
        out += (out.empty() ? "" : "; ") + one.name + ": " + one.before + " -> " + one.now;
    return out;
}

} // namespace

TEST_CASE("every change shows its values before and after") {
    Booth booth;
    booth.coupon("T-1", {{"note", "bent"}});
    CHECK_THAT(last_change(booth), says("thickness:  -> 0.150in"));
    booth.write([](Writing &w) {
        return change_coupon(
            w, {{"T-1", {{"thickness", "0.2in"}, {"welder", "L1"}}}, {"note"}, "measured again"});
    });
    CHECK(last_change(booth) == "note: bent -> ; thickness: 0.150in -> 0.2in; welder:  -> L1");
    booth.exams();
    booth.log("crack 0.2 at 3");
    CHECK_THAT(last_change(booth), says("at:  -> 3 in"));
    booth.write([](Writing &w) { correct_indication(w, "T-1", 1, "crack 0.3 at 3", "scale"); });
    CHECK(last_change(booth) == "size: 0.2 in -> 0.3 in");
    booth.write([](Writing &w) { return move_indication(w, {"T-1", 1, 2, "", "seen with MT"}); });
    CHECK_THAT(last_change(booth), says("exam: 3 -> 2"));
    booth.finish();
    CHECK_THAT(last_change(booth), says("found:  -> 0"));
    booth.write([](Writing &w) { judge_and_keep(w, "T-1"); });
    CHECK_THAT(last_change(booth), says("class 2:  -> cannot say"));
    booth.write([](Writing &w) { withdraw_indication(w, "T-1", 1, "gone"); });
    CHECK_THAT(last_change(booth), says("size: 0.3 in -> "));
    booth.write([](Writing &w) { judge_and_keep(w, "T-1"); });
    CHECK_THAT(last_change(booth), says("class 2: cannot say -> accept"));
}

TEST_CASE("a coupon's form is shown among its values") {
    Booth booth;
    booth.put("T-1", {{"joint", "groove"}, {"form", "plate"}});
    booth.write([](Writing &w) {
        return change_coupon(w, {{"T-1", {{"form", "tube"}}}, {}, "typed wrong"});
    });
    CHECK(last_change(booth) == "form: plate -> tube");
}

TEST_CASE("what stands again as it did at an entry is not told otherwise than at it") {
    Booth booth;
    booth.coupon("T-1", {});
    const auto since = [&](std::int64_t entry) {
        std::string out;
        for (const auto &one : described_since(history_of_coupon(booth.office, "T-1"), entry))
            for (const auto &value : one.values) out += value.name + " " + value.now + "; ";
        return out;
    };
    const auto change = [&](const char *field, const char *to) {
        booth.write([&](Writing &w) { return change_coupon(w, {{"T-1", {{field, to}}}, {}, "the card"}); });
        return history_of_coupon(booth.office, "T-1").back().seq;
    };
    const auto graded = change("purpose", "practice");
    const auto tested = change("purpose", "test");
    change("thickness", "0.2in");
    CHECK(since(graded) == "purpose test; thickness 0.2in; ");
    change("purpose", "practice");
    CHECK(since(graded) == "thickness 0.2in; ");
    CHECK(since(tested) == "thickness 0.2in; purpose practice; ");
}
