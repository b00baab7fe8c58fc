#include "catch.hpp"
#include "criteria/environment.hpp"
#include "criteria/set_names.hpp"
#include "language/condition_parser.hpp"
#include "language/formula_parser.hpp"

using namespace beadbook;

namespace {

Names names() {
    Names n;
    n.add({"T", Name::Kind::quantity, slot_of(Quantity::thinner), Dimension::length, {}});
    n.add({"L", Name::Kind::quantity, slot_of(Quantity::weld_length), Dimension::length, {}});
    add_set_names(n);
    return n;
}

Exact inch(std::int64_t thousandths) { return Exact(thousandths) * Exact(nm_per_inch) / Exact(1000); }

/// With T = 0.3 in, L = 8 in, an indication 0.2 long, 0.1 wide and deep.
Exact value(const std::string &text) {
    Environment::Values coupon, local;
    coupon.set(Quantity::thinner, inch(300));
    coupon.set(Quantity::weld_length, inch(8000));
    local.set(Quantity::length, inch(200));
    local.set(Quantity::width, inch(100));
    local.set(Quantity::depth, inch(100));
    local.set(Quantity::larger_size, inch(50));
    const Evaluated e = parse_formula(text, names()).evaluate(Environment{coupon, &local});
    REQUIRE(e.known());
    return e.value;
}

Truth truth(const std::string &text) {
    Environment::Values coupon, local;
    coupon.set(Quantity::thinner, inch(125));
    local.set(Quantity::length, inch(300));
    local.set(Quantity::width, inch(100));
    Missing missing;
    return parse_condition(text, names()).compare(Environment{coupon, &local}, missing);
}

std::string why_not(const std::string &text) {
    try {
        parse_formula(text, names());
    } catch (const InputError &e) {
        return std::to_string(e.column) + ": " + e.what();
    }
    return "taken";
}

} // namespace

TEST_CASE("formulas") {
    CHECK(value("T/3") == inch(100));
    CHECK(value("lesser of T/3 and 0.060 in") == inch(60));
    CHECK(value("greater of T/3 and 0.060 in") == inch(100));
    CHECK(value("lesser of T and 0.2 in and 0.1 in") == inch(100));
    CHECK(value("10 % x length + 0.03 in") == inch(50));
    CHECK(value("2 x (lesser of T/3 and 0.060 in)") == inch(120));
    CHECK(value("T - 1/32 in") == inch(300) - Exact(nm_per_inch) / Exact(32));
    CHECK(value("5 x larger size") == inch(250));
    CHECK(value("length / width") == Exact(2));
    CHECK(value("7 % x 1 in x T") == Exact::fraction(7, 100) * inch(1000) * inch(300));
    CHECK(value("2-1/4 in") == inch(2250));
    CHECK(value("12 x T") == inch(3600));
    CHECK(value("1.5 mm + 0.15 x T") == Exact(1'500'000) + Exact::fraction(3, 20) * inch(300));
    CHECK(value("40 % x L") == inch(3200));
}

TEST_CASE("a formula without its number says which is missing") {
    const Environment::Values nothing;
    const Evaluated e = parse_formula("lesser of T/3 and depth", names()).evaluate(Environment{nothing});
    CHECK_FALSE(e.known());
    CHECK(names_of(e.missing) == std::vector<std::string>{"the thickness (thinner member)", "the depth"});
}

TEST_CASE("mistakes in formulas are told with their column") {
    CHECK(why_not("T + 3") == "2: adds a length and a number");
    CHECK(why_not("T x T x T") == "6: multiplies an area by a length");
    CHECK(why_not("3 / T") == "2: divides a number by a length");
    CHECK(why_not("lesser of T and 3").find("16: chooses between a length and a number") == 0);
    CHECK(why_not("thiner").find("0: found 'thiner'; expected a number with its unit") == 0);
    CHECK(why_not("lenght").find("did you mean 'length'?") != std::string::npos);
    CHECK(why_not("(T").find("a bracket is not closed") != std::string::npos);
    CHECK(why_not("T T").find("where the formula should end") != std::string::npos);
    CHECK(why_not("").find("found the end") != std::string::npos);
    CHECK(why_not("table none").find("there is no table 'none'") != std::string::npos);
    CHECK(why_not("limit of none").find("no rule above") != std::string::npos);
    CHECK(why_not("lesser of T").find("expected 'and'") != std::string::npos);
    CHECK(why_not(std::string(200, '(')).find("nested too deeply") != std::string::npos);
}

TEST_CASE("conditions and bands, edges on the side that the words say") {
    CHECK(truth("length over 3 x width") == Truth::no); // exactly 3 to 1 is rounded
    CHECK(truth("length at least 3 x width") == Truth::yes);
    CHECK(truth("T over 1/8 in to 1/4 in") == Truth::no);
    CHECK(truth("T from 1/8 in to 1/4 in") == Truth::yes);
    CHECK(truth("T up to 1/8 in") == Truth::yes);
    CHECK(truth("T below 1/8 in") == Truth::no);
    CHECK(truth("depth over 1 in") == Truth::unknown);
    CHECK_THROWS_WITH(parse_condition("joint is groov", names()), says("did you mean 'groove'?"));
    CHECK_THROWS_WITH(parse_condition("T", names()), says("expected a comparison"));
    CHECK_THROWS_WITH(parse_condition("T over 3", names()), says("compares a length with a number"));
}

TEST_CASE("a table rounds before it looks, and has no value outside its bands") {
    Table table;
    table.by = formula_of(Quantity::thinner);
    table.step = inch(1);
    for (const auto &[band, v] :
         {std::pair{"from 0.010 in to 0.025 in", 40}, {"from 0.026 in to 0.050 in", 75}})
        table.rows.push_back({parse_band(band, names(), Dimension::length),
                              Formula::constant(inch(v), Dimension::length), band});
    REQUIRE(table.row_for(inch(25) + Exact(1000)) != nullptr); // 0.02504 rounds to 0.025
    CHECK(table.row_for(inch(25) + Exact(1000))->text == "from 0.010 in to 0.025 in");
    CHECK(table.row_for(inch(26))->text == "from 0.026 in to 0.050 in");
    CHECK(table.row_for(inch(51)) == nullptr);
    CHECK(table.row_for(inch(9)) == nullptr);
}
