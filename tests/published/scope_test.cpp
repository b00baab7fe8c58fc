// What the shipped sets cover, by the words of the standards, and the fillet size of the drawing.
#include "case.hpp"
#include "catch.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

std::string verdict(const std::string &set, const std::string &coupon,
                    const std::vector<std::string> &log = {}) {
    const std::string all = judged(set, {coupon, log}).verdicts();
    const std::size_t begin = all.rfind(", ") == std::string::npos ? 0 : all.rfind(", ") + 2;
    return all.substr(all.find(' ', begin) + 1); // of the last class
}

const std::string open = "cannot say";

} // namespace

TEST_CASE("ISO 5817 covers 0.5 mm and over, steel, nickel and titanium, and no beam welding", "[published]") {
    // 0.5 mm: the first band of Table 1, read. Processes 11 to 15 and 31 on steel, 51 and 52 not: read second
    // hand. The metals: title of the standard, memory.
    const auto level_d = [](const std::string &thickness, const std::string &material,
                            const std::string &process) {
        return verdict("iso-5817", "joint=groove weld-length=200mm thickness=" + thickness +
                                       " material=" + material + " process=" + process);
    };
    CHECK(level_d("0.5mm", "steel", "141") == "accept");
    CHECK(level_d("0.499999mm", "steel", "141") == open);
    for (const char *metal : {"steel", "nickel", "titanium"}) CHECK(level_d("2mm", metal, "141") == "accept");
    for (const char *metal : {"aluminium", "copper", "magnesium"})
        CHECK(level_d("2mm", metal, "141") == open);
    for (const char *process : {"111", "114", "12", "121", "131", "135", "136", "138", "141", "15", "311"})
        CHECK(level_d("2mm", "steel", process) == "accept");
    for (const char *process : {"51", "52", "21", "42"}) CHECK(level_d("2mm", "steel", process) == open);
    CHECK(level_d("2mm", "nickel", "311") == open);
}

TEST_CASE("MIL-HDBK-1890 Table III covers arc and oxyfuel welds in iron, nickel and cobalt alloys",
          "[published]") {
    // Heading of Table III, page 11, read.
    const auto class_3 = [](const std::string &material, const std::string &process) {
        return verdict("mil-hdbk-1890-table-3", "joint=groove magnetic=yes thickness=0.15in material=" +
                                                    material + " process=" + process);
    };
    for (const char *metal : {"iron", "steel", "nickel", "cobalt"}) CHECK(class_3(metal, "GTAW") == "accept");
    for (const char *metal : {"aluminium", "titanium", "magnesium"}) CHECK(class_3(metal, "GTAW") == open);
    for (const char *process : {"SMAW", "GMAW", "PAW", "OFW"}) CHECK(class_3("steel", process) == "accept");
    for (const char *process : {"EBW", "LBW", "RSW"}) CHECK(class_3("steel", process) == open);
}

TEST_CASE("46 CFR 56.70-15 Table 1 covers girth and longitudinal butt welds", "[published]") {
    // Heading of Table 1, read.
    const std::string pipe = "sides=one thickness=1/4in temperature=100F ";
    const auto measured = [&](const std::string &weld) {
        return verdict("cfr-46-56.70-15", pipe + weld, {"VT reinforcement h 1/8 at 1 face"});
    };
    CHECK(measured("joint=groove joint-form=butt seam=girth diameter=4in") == "accept");
    CHECK(measured("joint=groove joint-form=butt seam=longitudinal") == "accept");
    CHECK(measured("joint=groove joint-form=butt seam=straight") == open);
    CHECK(measured("joint=fillet joint-form=lap seam=girth diameter=4in") == open);
    CHECK(verdict("cfr-46-56.70-15", pipe + "joint=fillet joint-form=lap seam=girth diameter=4in") == open);
}

TEST_CASE("MIL-STD-2219A 5.4.3.5: the fillet size of the drawing is a minimum beside Table IV",
          "[published]") {
    // Page 31, read: T 0.063 in, one side: 0.12 in by the table.
    const auto class_c = [](const std::string &drawing, const std::string &size) {
        return verdict("mil-std-2219a",
                       "joint=fillet sides=one thickness=0.063in magnetic=yes material=steel" + drawing,
                       {"VT fillet size " + size});
    };
    CHECK(class_c(" fillet-size=0.20in", "0.20 in") == "accept");
    CHECK(class_c(" fillet-size=0.20in", "0.19 in") == "reject");
    CHECK(class_c(" fillet-size=0.10in", "0.12 in") == "accept");
    CHECK(class_c(" fillet-size=0.10in", "0.11 in") == "reject");
    CHECK(class_c("", "0.20 in") == open);
}
