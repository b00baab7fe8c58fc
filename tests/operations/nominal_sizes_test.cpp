// Sizes by their numbers, through every door by which a coupon is described. The values are from memory
// (tests/criteria/nominal_size_test.cpp).
#include "booth.hpp"
#include "catch.hpp"
#include "operations/described.hpp"
#include "operations/exported.hpp"
#include "qualify/work.hpp"

#include <nlohmann/json.hpp>

using namespace beadbook;
using namespace beadbook::test;

namespace {

const Booth::Fields pipe_coupon{
    {"joint", "groove"}, {"form", "tube"}, {"diameter", "NPS 2"}, {"thickness", "sch 40"}};

Exact inches(std::int64_t thousandths) { return Exact(thousandths * nm_per_inch / 1000); }

Imported import_into(Booth &booth, const std::string &text, std::optional<Sheet> sheet = {},
                     std::vector<std::string> *notes = nullptr) {
    auto prepared = prepare_import(booth.office, {sheet, text});
    auto done = booth.write([&](Writing &w) { return store_import(w, std::move(prepared)); });
    if (notes) *notes = done.notes;
    return done.value;
}

} // namespace

TEST_CASE("a pipe is registered by NPS and schedule, kept with its sizes, and told") {
    Booth booth;
    const auto done = booth.write([&](Writing &w) { return register_coupon(w, {"T-1", pipe_coupon}); });
    const CouponRecord kept = booth.office.coupon("T-1").record;
    CHECK(kept.get("diameter") == "2.375 in (NPS 2)");
    CHECK(kept.get("thickness") == "0.154 in (NPS 2 sch 40)");
    const Coupon facts = kept.facts();
    CHECK(Exact(facts.values[Quantity::outside_diameter]) == inches(2375));
    CHECK(Exact(facts.values[Quantity::thinner]) == inches(154));
    CHECK(kept.fixed_unit() == Unit::inch); // of bare numbers
    REQUIRE(!done.notes.empty());
    CHECK(done.notes.back() == "diameter: NPS 2 is 2.375 in, thickness: NPS 2 sch 40 is 0.154 in, the "
                               "nominal sizes; no mill tolerance "
                               "is taken off (ASME B36.10M and, with an S, ASME B36.19M, memory)");
    // What is kept is read as what was typed, and tells nothing twice.
    const auto again = booth.write([&](Writing &w) {
        return register_coupon(
            w, {"T-2", {{"diameter", kept.get("diameter")}, {"thickness", kept.get("thickness")}}});
    });
    CHECK(again.value.get("thickness") == kept.get("thickness"));
    for (const auto &note : again.notes) CHECK_THAT(note, !says("nominal"));
}

TEST_CASE("through is the wall by its schedule, and bare numbers beside it are inches") {
    Booth booth;
    auto fields = pipe_coupon;
    fields["weld-thickness"] = "full";
    fields["weld-width"] = "0.3";
    booth.put("T-1", fields);
    const CouponRecord kept = booth.office.coupon("T-1").record;
    CHECK(kept.fields.at("weld-thickness").value == inches(154));
    CHECK(kept.get("weld-width") == "0.3 in");
}

TEST_CASE("a wall by its schedule changes with its pipe, or is refused") {
    Booth booth;
    booth.put("T-1", pipe_coupon);
    const auto change = [&](const Booth::Fields &fields) {
        return booth.write([&](Writing &w) {
            return change_coupon(w, {{"T-1", fields}, {}, "the other pipe"});
        });
    };
    CHECK_THAT(booth.refusal([&] {
                        change({{"diameter", "NPS 3"}});
                    })
                   .what(),
               says("thickness: ") && says("is the wall of another pipe"));
    CHECK_THAT(booth.refusal([&] {
                        change({{"thickness", "sch 45"}});
                    })
                   .what(),
               says("no such wall of NPS 2"));
    change({{"diameter", "NPS 3"}, {"thickness", "sch 40"}});
    CHECK(booth.office.coupon("T-1").record.get("thickness") == "0.216 in (NPS 3 sch 40)");
    change({{"thickness", "sch 80"}}); // of the pipe that is on record
    CHECK(booth.office.coupon("T-1").record.get("thickness") == "0.300 in (NPS 3 sch 80)");
    change({{"diameter", "2 in"}, {"thickness", "0.065 in"}});
}

TEST_CASE("the gauge of sheet follows from the metal of the coupon, and of a tube it is asked") {
    Booth booth;
    booth.put("S-1", {{"form", "sheet"}, {"material", "304 stainless steel"}, {"thickness", "16 ga"}});
    CHECK(booth.office.coupon("S-1").record.get("thickness") == "0.0625 in (16 ga stainless)");
    CHECK_THAT(
        booth.refusal([&] {
                 booth.put("S-2", {{"form", "sheet"}, {"thickness", "16 ga"}});
             })
            .what(),
        says("thickness: '16 ga' is another thickness in each table of gauges: 16 ga steel is 0.0598 in"));
    CHECK_THAT(
        booth
            .refusal([&] {
                booth.put("S-3", {{"form", "tube"}, {"material", "stainless steel"}, {"thickness", "16 ga"}});
            })
            .what(),
        says("16 ga BWG is 0.065 in; write which"));
    booth.put("S-4", {{"form", "tube"}, {"diameter", "2 in"}, {"thickness", "BWG 16"}});
    CHECK(booth.office.coupon("S-4").record.fields.at("thickness").value == inches(65));
    CHECK_THAT(booth.refusal([&] {
                        booth.put("S-5", {{"thickness", "0.2 in (NPS 2 sch 40)"}});
                    })
                   .what(),
               says("'0.2 in' is not NPS 2 sch 40, which is 0.154 in"));
}

TEST_CASE("imports take sizes by their numbers, and give back what is kept") {
    Booth booth;
    std::vector<std::string> notes;
    import_into(booth, R"({"format": "beadbook exchange", "version": 1, "coupons": [{"id": "J-1", "fields":
        {"thickness": "sch 80", "diameter": "NPS 2", "form": "tube"}}]})",
                {}, &notes);
    REQUIRE(notes.size() == 1);
    CHECK_THAT(notes[0],
               says("J-1: diameter: NPS 2 is 2.375 in, thickness: NPS 2 sch 80 is 0.218 in, the nominal "
                    "sizes"));
    notes.clear();
    CHECK(booth.office.coupon("J-1").record.get("thickness") == "0.218 in (NPS 2 sch 80)");
    import_into(booth, "coupon,diameter,thickness\r\nC-1,NPS 6,sch 40\r\n", Sheet::coupons, &notes);
    CHECK(booth.office.coupon("C-1").record.get("thickness") == "0.280 in (NPS 6 sch 40)");
    REQUIRE(notes.size() == 1);
    CHECK_THAT(notes[0], says("C-1") && says("NPS 6 is 6.625 in"));
    const std::string json = exported(booth.office, {}).text,
                      csv = exported(booth.office, Sheet::coupons).text;
    Booth other, third;
    import_into(other, json);
    import_into(third, csv, Sheet::coupons);
    for (const char *mark : {"J-1", "C-1"}) {
        CHECK(other.office.coupon(mark).record == booth.office.coupon(mark).record);
        CHECK(third.office.coupon(mark).record == booth.office.coupon(mark).record);
    }
    CHECK_THAT(booth
                   .refusal([&] {
                       import_into(booth, R"({"format": "beadbook exchange", "version": 1, "coupons":
                            [{"id": "J-2", "fields": {"thickness": "sch 80"}}]})");
                   })
                   .what(),
               says("thickness: 'sch 80' is of which pipe?"));
}

TEST_CASE("a weld that is only described takes sizes by their numbers too") {
    CHECK(described_coupon({{"thickness", "XS"}, {"diameter", "NPS 1"}}).get("thickness") ==
          "0.179 in (NPS 1 XS)");
    Booth booth;
    CHECK(field_of(booth.refusal([] { described_coupon({{"thickness", "16 ga"}}); })) == "thickness");
}

TEST_CASE("a work file takes NPS, schedule and gauge") {
    const std::string head =
        "rules: asme-ix\nunits: in\nwork:\n  - {id: w, joint: groove, form: tube, process: GTAW, ";
    const auto job = [&](const std::string &sizes) {
        return load_work(head + sizes + "}\n", "", shipped_range_rules);
    };
    const auto pipes = job("diameter: NPS 2 to NPS 6, thickness: 0.1 in to 0.3 in");
    REQUIRE(pipes.work);
    const auto of = [](const LoadedWork &loaded, Trait trait) {
        return *loaded.work->jobs[0].sizes[index_of(trait)];
    };
    CHECK(of(pipes, Trait::diameter).from == inches(2375));
    CHECK(of(pipes, Trait::diameter).to == inches(6625));
    const auto one = job("thickness: sch 40 to sch 80, diameter: NPS 2");
    REQUIRE(one.work);
    CHECK(of(one, Trait::thickness).from == inches(154));
    CHECK(of(one, Trait::thickness).to == inches(218));
    CHECK(of(job("weld thickness: 16 ga steel"), Trait::weld_thickness).to ==
          Exact(598 * nm_per_inch / 10000));
    for (const char *sizes :
         {"diameter: NPS 2 to NPS 6, thickness: sch 40", "thickness: 16 ga", "diameter: NPS 7"}) {
        const auto refused = job(sizes);
        CHECK_FALSE(refused.work);
        REQUIRE_FALSE(refused.issues.empty());
        CHECK_THAT(refused.issues.front().text,
                   says("of which pipe?") || says("write which") || says("is no pipe of the table"));
    }
}
