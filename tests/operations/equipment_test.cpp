// Equipment that was out of use for a time.
#include "operations/equipment.hpp"

#include "booth.hpp"
#include "catch.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// A yoke that was withdrawn on 2026-11-20. Its today is 2026-11-25.
struct Withdrawn : Booth {
    Withdrawn() {
        EquipmentRequest yoke;
        yoke.serial = "Y-3";
        yoke.kind = "yoke";
        keep(yoke);
        EquipmentRequest gone;
        gone.serial = "Y-3";
        gone.withdraw = "a cracked leg";
        gone.day = parse_day("2026-11-20");
        keep(gone);
    }
    EquipmentRecord keep(const EquipmentRequest &request) {
        return write([&](Writing &w) { return write_equipment(w, request); }).value.equipment;
    }
    EquipmentRecord back(const char *day) {
        EquipmentRequest request;
        request.serial = "Y-3";
        request.back = true;
        request.day = parse_day(day);
        request.why = "mended and checked";
        return keep(request);
    }
    bool out_on(const char *day) {
        return used_on(book.equipment("Y-3").record, parse_day(day)).withdrawn == parse_day("2026-11-20");
    }
};

} // namespace

TEST_CASE("a piece that is back was out all the same on the days before", "[people]") {
    Withdrawn booth;
    CHECK_THAT(booth.refusal([&] { booth.back("2026-11-19"); }).what(), says("withdrawn on 2026-11-20 only"));
    CHECK_THAT(booth.refusal([&] { booth.back("2026-11-26"); }).what(), says("is to come"));
    booth.coupon();
    booth.exam(Exam::MT, [](ExamRequest &r) {
        Booth::found_none(r);
        r.equipment = {"Y-3"};
        r.date = parse_day("2026-11-22");
    });
    const OutOfUse out{parse_day("2026-11-20"), parse_day("2026-11-23"), "a cracked leg: the left one"};
    CHECK(read_out_of_use(print(out)) == out);
    CHECK(booth.back("2026-11-23").were_out == std::vector{OutOfUse{out.from, out.back, "a cracked leg"}});
    for (const char *day : {"2026-11-20", "2026-11-22"}) CHECK(booth.out_on(day));
    for (const char *day : {"2026-11-19", "2026-11-23"}) CHECK_FALSE(booth.out_on(day));
    CHECK_THAT(booth.office.coupon("T-1").needed_exam(1).open, says("was withdrawn from use on 2026-11-20"));
    // A second time is kept beside the first.
    EquipmentRequest again;
    again.serial = "Y-3";
    again.withdraw = "the other leg";
    again.day = parse_day("2026-11-24");
    booth.keep(again);
    CHECK(booth.back("2026-11-25").were_out.size() == 2);
    CHECK(booth.out_on("2026-11-21"));
}

TEST_CASE("a piece that was taken out of use by mistake was never out", "[people]") {
    Withdrawn booth;
    CHECK(booth.back("2026-11-20").were_out.empty());
    CHECK_FALSE(booth.out_on("2026-11-22"));
}
