// One table of units: wherever a measurement is typed, its unit means the same.
#include "catch.hpp"
#include "criteria/set_names.hpp"
#include "facts/coupon_record.hpp"
#include "facts/log_line.hpp"
#include "language/formula_parser.hpp"
#include "qualify/range_rules.hpp"
#include "technique/calculation.hpp"
#include "technique/known_conditions.hpp"

using namespace beadbook;

namespace {

Exact of_coupon_field(const std::string &field, Quantity q, const std::string &text) {
    CouponRecord record;
    record.set(field, text);
    return record.facts().values[q];
}

Exact of_calculation(const std::string &name, const std::string &input, const std::string &text) {
    std::vector<std::string> words{input + "=" + text};
    if (name == "dwell") words.insert(words.end(), {"base=5 min", "by=asme"});
    return technique::compute(*technique::calculation(name), words).inputs.amounts.at(input).value;
}

Exact of_condition(const std::string &name, const std::string &text) {
    return read_condition_value(*condition_info(name), text).amount;
}

Exact of_rules_for_welders(const std::string &text) {
    const auto loaded =
        load_range_rules("rules: r\ntitle: t\nedition: e\nunits: in\nusual sizes: {thickness: ['" + text +
                         "']}\nvariables: [joint]\n"
                         "ranges: [{id: a, of: joint, allows: any, clause: c, standing: {house: x}}]\n"
                         "validity: [{id: v, use every: 6 months, clause: c, standing: {house: x}}]\n");
    REQUIRE(loaded.rules);
    return loaded.rules->usual_sizes[index_of(Trait::thickness)].at(0);
}

} // namespace

TEST_CASE("a length is the same in fields, log lines, files, conditions and calculations") {
    const Exact quarter = Exact(nm_per_inch / 4);
    for (const std::string text :
         {"0.25 in", "1/4 in", "0.25 inch", "0.25 inches", "1/4\"", "250 thou", "250 mil", "250 mils",
          "6350 um", "6350 \u00b5m", "6350 \u03bcm", "6.35 mm", "0.635 cm", "0.00635 m"}) {
        INFO(text);
        CHECK(parse_typed(text, Dimension::length, {}).value == quarter);
        CHECK(parse_formula(text, {}).constant_value() == quarter);
        CHECK(of_coupon_field("thickness", Quantity::thinner, text) == quarter);
        const auto line = parse_log_line("gas pore " + text + " at 1 in", {Length{8 * nm_per_inch}, false},
                                         Unit::inch, Vocabulary::shipped());
        CHECK(line.measures.at(Quantity::size).value == quarter);
        CHECK(of_condition("distance", text) == quarter);
        CHECK(of_calculation("head-shot", "diameter", text) == quarter);
        CHECK(of_rules_for_welders(text) == quarter);
    }
}

TEST_CASE("a temperature is the same in fields, files, conditions and calculations") {
    const Exact room = 68'000'000;
    for (const std::string text : {"68 F", "68 deg F", "68 \u00b0F", "20 C", "20 deg C", "20 \u00b0C"}) {
        INFO(text);
        CHECK(parse_typed(text, Dimension::temperature, {}).value == room);
        CHECK(parse_formula(text, {}).constant_value() == room);
        CHECK(of_coupon_field("temperature", Quantity::design_temperature, text) == room);
        CHECK(of_condition("temperature", text) == room);
        CHECK(of_calculation("dwell", "temperature", text) == room);
    }
}

TEST_CASE("the units of settings: each spelling, and no unit for another kind") {
    const std::vector<std::tuple<std::string, std::string, Dimension>> same{
        {"60 s", "1 min", Dimension::time},
        {"90 minutes", "1.5 hours", Dimension::time},
        {"2 days", "48 h", Dimension::time},
        {"1 kA", "1000 A", Dimension::current},
        {"25.4 A/mm", "645.16 A/in", Dimension::current_per_length},
        {"1 mW/cm2", "1000 uW/cm2", Dimension::irradiance},
        {"10 W/m2", "1000 \u00b5W/cm2", Dimension::irradiance},
        {"1 kg", "1000 g", Dimension::weight},
        {"1 kA/m", "1000 A/m", Dimension::field},
        {"1 mT", "10 G", Dimension::field},
        {"2 mL", "2 ml/100ml", Dimension::concentration},
        {"37 GBq", "1 Ci", Dimension::activity},
        {"1 R/h", "1000 mR/h", Dimension::radiation},
        {"1 mSv/h", "1000 \u00b5Sv/h", Dimension::dose_rate},
        {"90 deg", "90\u00b0", Dimension::angle},
        {"1 in2", "645.16 mm\u00b2", Dimension::area},
        {"40 %", "0.4", Dimension::number},
    };
    for (const auto &[a, b, dimension] : same) {
        INFO(a << " and " << b);
        CHECK(parse_amount(a, dimension) == parse_amount(b, dimension));
        CHECK(parse_formula(a, {}).dimension() == dimension);
        for (std::size_t d = 0; d <= static_cast<std::size_t>(Dimension::dose_rate); ++d)
            if (static_cast<Dimension>(d) != dimension)
                CHECK_THROWS_AS(parse_amount(a, static_cast<Dimension>(d)), InputError);
    }
    // A foot-candle is a lumen on a square foot: 929.0304 square centimetres.
    CHECK(parse_amount("1000 fc", Dimension::light) * Exact(9'290'304) ==
          parse_amount("1000 lx", Dimension::light) * Exact(100'000'000));
    // 1 lb is 453.59237 g (international yard and pound agreement, from memory).
    CHECK(parse_amount("100000 lb", Dimension::weight) == Exact(45'359'237));
    // Settings need not be whole base units; what is kept in the record does.
    CHECK(parse_amount("1/3 in", Dimension::length) * Exact(3) == Exact(nm_per_inch));
    CHECK_THROWS_WITH(parse_typed("1/3 in", Dimension::length, {}), says("finer than can be kept exactly"));
    CHECK_THROWS_WITH(parse_amount("1,5 min", Dimension::time), says("write a decimal point"));
    CHECK_THROWS_WITH(parse_amount("5", Dimension::light),
                      says("'5' has no unit; expected an amount of light such as 100 fc or 1000 lx"));
    CHECK_THROWS_WITH(parse_amount("5 fc", Dimension::time),
                      says("'5 fc' is an amount of light; expected a time"));
    CHECK_THROWS_WITH(parse_amount("-5 A", Dimension::current), says("is negative"));
    CHECK_THROWS_WITH(parse_amount("5 A/ft", Dimension::current),
                      says("'/ft' in '5 A/ft' is not understood"));
}

TEST_CASE("in a log line the letters of measures are no units") {
    const auto line = parse_log_line("gas pore s 0.1 d 0.05 h 0.02 at 3.2 l 0.1",
                                     {Length{8 * nm_per_inch}, false}, Unit::inch, Vocabulary::shipped());
    CHECK(line.measures.at(Quantity::depth).value == Exact(nm_per_inch / 20));
    CHECK(line.measures.at(Quantity::height).value == Exact(nm_per_inch / 50));
    const auto at = parse_log_line("gas pore at 3.2 s 0.04", {Length{8 * nm_per_inch}, false}, Unit::inch,
                                   Vocabulary::shipped());
    CHECK(at.at->value == Exact(nm_per_inch) * Exact::fraction(16, 5));
    CHECK(at.measures.at(Quantity::size).value == Exact(nm_per_inch / 25));
}

TEST_CASE("products and quotients measure what they should") {
    CHECK(product_of(Dimension::length, Dimension::length) == Dimension::area);
    CHECK(product_of(Dimension::length, Dimension::current_per_length) == Dimension::current);
    CHECK(quotient_of(Dimension::current, Dimension::length) == Dimension::current_per_length);
    CHECK(quotient_of(Dimension::current, Dimension::current_per_length) == Dimension::length);
    CHECK(quotient_of(Dimension::area, Dimension::length) == Dimension::length);
    CHECK(quotient_of(Dimension::time, Dimension::time) == Dimension::number);
    CHECK_FALSE(product_of(Dimension::time, Dimension::length));
    CHECK_FALSE(quotient_of(Dimension::length, Dimension::area));
    // 90 A/in over 6 in is 540 A.
    CHECK(parse_formula("90 A/in x 6 in", {}).constant_value() == Exact(540));
    CHECK(parse_formula("540 A / 90 A/in", {}).constant_value() == Exact(6 * nm_per_inch));
}
