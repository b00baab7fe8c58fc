// The table of the technicians' calculations: one entry each, with its formula and where that comes from.
#include "technique/arithmetic.hpp"
#include "technique/calculation.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <numbers>

namespace beadbook::technique {
namespace {

using K = AmountKind;
using In = CalculationInputs;
using Results = std::vector<CalculationResult>;
namespace si = boost::units::si;

CalculationInput needs(std::string name, K kind, std::string help) {
    return {std::move(name), {kind}, std::move(help), "", false, {}};
}
CalculationInput with(std::string name, K kind, std::string help, std::string otherwise) {
    return {std::move(name), {kind}, std::move(help), std::move(otherwise), false, {}};
}
CalculationInput may(std::string name, K kind, std::string help) {
    return {std::move(name), {kind}, std::move(help), "", true, {}};
}
CalculationInput one_of(std::string name, std::vector<std::string> words, std::string help) {
    return {std::move(name), {}, std::move(help), "", false, std::move(words)};
}
/// Radiation in whichever unit people measure; results keep it.
CalculationInput level(std::string name, std::string help) {
    return {std::move(name), {K::radiation, K::dose_rate}, std::move(help), "", false, {}};
}

std::string digits(double value, const char *format = "%.4g") {
    char text[64];
    std::snprintf(text, sizeof text, format, value);
    return text;
}

// What was typed, as typed quantities.
Metres length(const In &in, const std::string &name) { return in.number(name) * 1e-9 * si::metre; }
Amperes current(const In &in, const std::string &name) { return in.number(name) * si::ampere; }
AmperesPerMetre per_length(const In &in, const std::string &name) {
    return in.number(name) * 1e9 * si::ampere / si::metre;
}
Seconds time(const In &in, const std::string &name) { return in.number(name) * si::second; }
Radians angle(const In &in, const std::string &name) {
    return in.number(name) * 1e-6 * std::numbers::pi / 180.0 * si::radian;
}

/// As typed, without the noise of floating point: for comparing with a limit.
Exact exact_inches(const In &in, const std::string &name) {
    return in.amounts.at(name).value / Exact(nm_per_inch);
}

double inches(Metres m) { return m.value() / 0.0254; }
std::string say(Metres m, Unit unit) {
    return unit == Unit::inch ? digits(inches(m)) + " in" : digits(m.value() * 1000.0) + " mm";
}
std::string say(Amperes a) { return digits(a.value(), "%.0f") + " A"; }
std::string say_turns(Amperes a) { return digits(a.value(), "%.0f") + " ampere-turns"; }
std::string say(Seconds s) {
    return s.value() < 120.0    ? digits(s.value()) + " s"
           : s.value() < 7200.0 ? digits(s.value() / 60.0) + " min"
                                : digits(s.value() / 3600.0) + " h";
}

/// A level in the unit that the input has: "18.75 R/h".
std::string level_like(const In &in, const std::string &name, double value) {
    const std::string &typed = in.word(name);
    const std::string unit = typed.substr(typed.find_first_not_of("0123456789.-/ "));
    const double scale = unit == "mR/h" ? 1e-3 : unit == "mSv/h" ? 1e3 : 1.0;
    return digits(value / scale) + " " + unit;
}

/// L/D of a part in a coil, by the limits that the sources set.
double ratio_of(const In &in) {
    const Metres diameter =
        in.has("bore") ? hollow_diameter(length(in, "diameter"), length(in, "bore")) : length(in, "diameter");
    if (in.has("bore") && length(in, "bore") >= length(in, "diameter"))
        throw InputError("the bore is not smaller than the part");
    double ratio = length(in, "length") / diameter;
    if (ratio < 2.0) {
        if (!in.has("least"))
            throw InputError("L/D is " + digits(ratio) +
                             ", under 2: lengthen the part with pole pieces (T.O. 33B-1-1), or, by "
                             "T9074 with a field indicator, give least=2");
        ratio = std::max(ratio, in.number("least"));
    }
    return std::min(ratio, 15.0); // over 15 counts as 15 (memory)
}

Results coil_results(const In &in, double ratio, Amperes needed) {
    Results out{{"L/D", digits(ratio)}, {"needed", say_turns(needed) + ", +/- 10 %"}};
    if (in.has("turns")) out.push_back({"current", say(needed / in.number("turns"))});
    if (in.has("current") && in.has("turns")) {
        const double off = 100.0 * (current(in, "current") * in.number("turns") / needed - 1.0);
        out.push_back({"yours", say_turns(current(in, "current") * in.number("turns")) + ", " +
                                    digits(off, "%+.1f") + " %, " +
                                    (std::abs(off) <= 10.0 ? "within 10 %" : "not within 10 %")});
    } else if (in.has("current")) {
        out.push_back({"turns", digits(std::ceil(needed / current(in, "current") - 1e-9), "%.0f")});
    }
    return out;
}

std::vector<CalculationInput> coil_inputs() {
    return {needs("length", K::length, "of the part along the coil"),
            needs("diameter", K::length, "of the part; a square's diagonal, else perimeter/pi"),
            may("bore", K::length, "of a hollow part"),
            may("turns", K::number, "of the coil"),
            may("current", K::current, "to be used"),
            may("least", K::number, "L/D to use for a shorter part")};
}

// --- tables of numbers; each row's source stands in the calculation ---

struct IqiRow {
    int to_thousandths;
    const char *source_hole, *source_wire, *film_hole, *film_wire;
};
constexpr IqiRow iqi_rows[] = {
    {250, "12-2T", "5 (0.008 in)", "10-2T", "4 (0.0063 in)"},
    {375, "15-2T", "6 (0.010 in)", "12-2T", "5 (0.008 in)"},
    {500, "17-2T", "7 (0.013 in)", "15-2T", "6 (0.010 in)"},
    {750, "20-2T", "8 (0.016 in)", "17-2T", "7 (0.013 in)"},
    {1000, "25-2T", "9 (0.020 in)", "20-2T", "8 (0.016 in)"},
    {1500, "30-2T", "10 (0.025 in)", "25-2T", "9 (0.020 in)"},
    {2000, "35-2T", "11 (0.032 in)", "30-2T", "10 (0.025 in)"},
    {2500, "40-2T", "12 (0.040 in)", "35-2T", "11 (0.032 in)"},
    {4000, "50-2T", "13 (0.050 in)", "40-2T", "12 (0.040 in)"},
};

/// Wires of ASTM E747, in inches.
constexpr double wires[] = {0.0032, 0.004, 0.005, 0.0063, 0.008, 0.010, 0.013, 0.016, 0.020, 0.025, 0.032,
                            0.040,  0.050, 0.063, 0.080,  0.100, 0.126, 0.160, 0.200, 0.250, 0.320};

/// Plaque number to thickness: thousandths, but 7, 12 and 17 are 7.5, 12.5 and 17.5.
double plaque_inches(double number) {
    const double odd = number == 7 || number == 12 || number == 17 ? 0.5 : 0.0;
    return (number + odd) / 1000.0;
}
double hole_inches(double number, double times) {
    constexpr double least[] = {0.010, 0.020, 0.040};
    return std::max(times * plaque_inches(number), least[times == 1 ? 0 : times == 2 ? 1 : 2]);
}

double hole_times(const In &in) { return in.word("hole") == "1T" ? 1 : in.word("hole") == "2T" ? 2 : 4; }
const std::vector<std::string> holes{"1T", "2T", "4T"};

std::string clock(double degrees) {
    const int minutes =
        static_cast<int>(std::lround(degrees * 2.0)) % 720; // a clock hand: 30 degrees an hour
    char text[16];
    std::snprintf(text, sizeof text, "%d:%02d", minutes / 60 == 0 ? 12 : minutes / 60, minutes % 60);
    return text;
}

void add_magnetic(std::vector<Calculation> &out) {
    const std::string notes = "published notes on magnetic particle amperes, read";
    out.push_back(
        {"head-shot",
         "current through the part, or through a central conductor",
         "I = D x (A/in)",
         notes,
         {needs("diameter", K::length, "outside diameter; a square's diagonal, else perimeter/pi"),
          with("rule", K::current_per_length, "300 to 800 A/in are printed, 500 is usual", "500 A/in")},
         [](const In &in) {
             return Results{{"current", say(head_shot(length(in, "diameter"), per_length(in, "rule")))}};
         },
         "diameter=1.5in rule=500A/in"});
    out.push_back({"conductor",
                   "central conductor lying against the bore",
                   "D = d + 2 x wall; zone 4 x d; shots overlap by 10 %",
                   notes,
                   {needs("conductor", K::length, "its diameter"), needs("wall", K::length, "of the tube"),
                    needs("bore", K::length, "of the tube"),
                    with("rule", K::current_per_length, "amperes for each length of diameter", "500 A/in")},
                   [](const In &in) {
                       const Metres d = effective_diameter(length(in, "conductor"), length(in, "wall"));
                       return Results{{"effective diameter", say(d, in.unit())},
                                      {"current", say(head_shot(d, per_length(in, "rule")))},
                                      {"zone along the bore", say(4.0 * length(in, "conductor"), in.unit())},
                                      {"shots", std::to_string(conductor_shots(length(in, "bore"),
                                                                               length(in, "conductor")))}};
                   },
                   "conductor=1in wall=0.25in bore=1.5in"});
    out.push_back(
        {"coil-low",
         "coil, low fill (the coil's section is 10 times the part's or more), part on the coil's wall",
         "N I = 45000 / (L/D)", "T.O. 33B-1-1 page 237, T9074 page 63, read", coil_inputs(),
         [](const In &in) {
             const double r = ratio_of(in);
             return coil_results(in, r, low_fill(r));
         },
         "length=10in diameter=2in turns=5"});
    out.push_back({"coil-centred", "coil, low fill, part in the middle",
                   "N I = 43000 R / (6 L/D - 5), R in inches", "a public formula page, read",
                   [] {
                       auto all = coil_inputs();
                       all.push_back(needs("radius", K::length, "of the coil"));
                       return all;
                   }(),
                   [](const In &in) {
                       const double r = ratio_of(in);
                       return coil_results(in, r, low_fill_centred(r, inches(length(in, "radius"))));
                   },
                   "length=10in diameter=2in radius=6in"});
    out.push_back({"coil-high", "coil, high fill (section under twice the part's) or cable wrap",
                   "N I = 35000 / (L/D + 2)", "ASME V Article 7 T-753 in public notes, read", coil_inputs(),
                   [](const In &in) {
                       const double r = ratio_of(in);
                       return coil_results(in, r, high_fill(r));
                   },
                   "length=10in diameter=2in"});
    out.push_back({"coil-between", "coil, fill from 2 to 10", "N I = (high x (10 - Y) + low x (Y - 2)) / 8",
                   "a public formula page, read",
                   [] {
                       auto all = coil_inputs();
                       all.push_back(needs("fill", K::number, "coil's section over the part's, Y"));
                       return all;
                   }(),
                   [](const In &in) {
                       const double y = in.number("fill"), r = ratio_of(in);
                       if (y < 2 || y >= 10)
                           throw InputError("fill " + digits(y) +
                                            ": from 2 to under 10; else coil-high or coil-low");
                       return coil_results(in, r, between_fill(y, high_fill(r), low_fill(r)));
                   },
                   "length=10in diameter=2in fill=6"});
    out.push_back(
        {"coil-shots",
         "shots along a part longer than the coil reaches",
         "n = 1 + (L - E) / (0.9 E), rounded up",
         "worked out from an overlap of 10 %",
         {needs("length", K::length, "of the part"), needs("reach", K::length, "that one shot examines")},
         [](const In &in) {
             return Results{{"shots", std::to_string(coil_shots(length(in, "length"), length(in, "reach")))}};
         },
         "length=36in reach=18in"});
    out.push_back({"prods",
                   "current for prods",
                   "90 to 110 A/in under 3/4 in of thickness, else 100 to 125 A/in",
                   "ASME V Article 7 T-752 in public notes, read",
                   {needs("spacing", K::length, "of the prods"), needs("thickness", K::length, "of the part"),
                    may("current", K::current, "to be checked")},
                   [](const In &in) {
                       const Exact s = exact_inches(in, "spacing");
                       if (s > Exact(8))
                           throw InputError("prods " + in.word("spacing") + " apart: at most 8 in (T-752.3)");
                       const bool thin = exact_inches(in, "thickness") < Exact::fraction(3, 4);
                       const Exact from = s * Exact(thin ? 90 : 100), to = s * Exact(thin ? 110 : 125);
                       Results r{{"current", "from " + say(from.to_double() * si::ampere) + " to " +
                                                 say(to.to_double() * si::ampere)}};
                       if (s < Exact(3)) r.push_back({"mind", "under 3 in the particles band"});
                       if (in.has("current")) {
                           const Exact yours = in.amounts.at("current").value;
                           r.push_back({"yours", yours >= from && yours <= to ? "in range" : "out of range"});
                       }
                       return r;
                   },
                   "spacing=6in thickness=1/2in"});
    out.push_back(
        {"lift-bar",
         "weight of a steel bar for the lift test",
         "w = a x b x c x 0.283 lb/in3",
         "T.O. 33B-1-1 page 72, read",
         {needs("a", K::length, "side"), needs("b", K::length, "side"), needs("c", K::length, "side")},
         [](const In &in) {
             return Results{{"weight", digits(inches(length(in, "a")) * inches(length(in, "b")) *
                                                  inches(length(in, "c")) * 0.283,
                                              "%.1f") +
                                           " lb"}};
         },
         "a=4in b=1.25in c=7in"});
    out.push_back(
        {"surface-field",
         "field at the surface of a bar that carries the current",
         "H = I / (pi D)",
         "geometry",
         {needs("current", K::current, "through the bar"), needs("diameter", K::length, "of the bar")},
         [](const In &in) {
             const double h = surface_field(current(in, "current"), length(in, "diameter")).value();
             return Results{
                 {"field", digits(h / 1000.0) + " kA/m = " + digits(h / 79.5774715) + " G in air"}};
         },
         "current=1000A diameter=50mm"});
}

void add_penetrant(std::vector<Calculation> &out) {
    out.push_back(
        {"dwell",
         "penetrant dwell at a temperature",
         "by the practice's windows",
         "ASME V Table T-672 and T.O. 33B-1-1 page 147, read",
         {needs("base", K::time, "dwell at ordinary temperature"),
          needs("temperature", K::temperature, "of the part"), one_of("by", {"asme", "to"}, "whose windows")},
         [](const In &in) {
             const double f = in.number("temperature") / 1e6;
             const Seconds base = time(in, "base");
             const bool asme = in.word("by") == "asme";
             if (f < 40 || f > (asme ? 125 : 120))
                 throw InputError("temperature " + in.word("temperature") + ": outside the window, 40 to " +
                                  (asme ? "125" : "120") + " F");
             if (f < (asme ? 50 : 60)) return Results{{"dwell", say(2.0 * base)}};
             const Seconds least = 300.0 * si::second;
             if (!asme && f > 100)
                 return Results{{"dwell", "may be halved to " + say(std::max(base / 2.0, least))}};
             return Results{{"dwell", say(base)}};
         },
         "base=5min temperature=45F by=asme"});
    out.push_back({"dwell-typical",
                   "typical penetrant dwell by metal and product, water-washable",
                   "table",
                   "a table of typical dwell times, read",
                   {one_of("product",
                           {"steel weld", "aluminium weld", "magnesium weld", "steel casting",
                            "aluminium casting", "magnesium casting", "brazed brass", "crack"},
                           "what is examined")},
                   [](const In &in) {
                       const std::string &p = in.word("product");
                       const char *minutes = p == "steel weld"                                 ? "60"
                                             : p == "aluminium casting"                        ? "5 to 15"
                                             : p == "magnesium casting" || p == "brazed brass" ? "15"
                                                                                               : "30";
                       return Results{{"dwell", std::string(minutes) + " min"},
                                      {"mind", "the procedure and the maker's instructions decide"}};
                   },
                   "\"product=steel weld\""});
    out.push_back({"uv",
                   "UV-A irradiance",
                   "1000 uW/cm2 = 1 mW/cm2 = 10 W/m2",
                   "units",
                   {needs("uv", K::irradiance, "uW/cm2, mW/cm2 or W/m2")},
                   [](const In &in) {
                       const double uw = in.number("uv");
                       return Results{{"uW/cm2", digits(uw)},
                                      {"mW/cm2", digits(uw / 1000.0)},
                                      {"W/m2", digits(uw / 100.0)}};
                   },
                   "uv=10W/m2"});
}

void add_geometry(std::vector<Calculation> &out) {
    out.push_back(
        {"unsharpness",
         "geometric unsharpness",
         "Ug = F d / D",
         "university course pages, read",
         {needs("focal", K::length, "size of the source"), needs("distance", K::length, "source to object"),
          needs("behind", K::length, "source side of the object to the film")},
         [](const In &in) {
             return Results{{"unsharpness", say(unsharpness(length(in, "focal"), length(in, "distance"),
                                                            length(in, "behind")),
                                                in.unit())}};
         },
         "focal=3mm distance=100cm behind=50cm"});
    out.push_back({"least-distance",
                   "least distance from source to object",
                   "D = F d / Ug",
                   "worked out from the unsharpness",
                   {needs("focal", K::length, "size of the source"),
                    needs("behind", K::length, "source side of the object to the film"),
                    needs("unsharpness", K::length, "largest allowed")},
                   [](const In &in) {
                       return Results{
                           {"distance", say(least_distance(length(in, "focal"), length(in, "behind"),
                                                           length(in, "unsharpness")),
                                            in.unit())}};
                   },
                   "focal=0.113in behind=1.125in unsharpness=0.020in"});
    out.push_back(
        {"flaw-height",
         "height of a flaw over the film side, marker on the source side",
         "h = t x (flaw shift / marker shift)",
         "university course pages, read",
         {needs("thickness", K::length, "of the part"), needs("flaw", K::length, "shift of its image"),
          needs("marker", K::length, "shift of the marker's image")},
         [](const In &in) {
             return Results{
                 {"height over the film",
                  say(flaw_height(length(in, "thickness"), length(in, "flaw"), length(in, "marker")),
                      in.unit())}};
         },
         "thickness=1.5in flaw=0.18in marker=0.45in"});
    out.push_back({"flaw-height-film",
                   "height of a flaw over the film, from the film alone",
                   "h = G H / (A + G)",
                   "similar triangles",
                   {needs("image", K::length, "shift of the image, G"),
                    needs("source", K::length, "shift of the source, A"),
                    needs("distance", K::length, "source to film, H")},
                   [](const In &in) {
                       return Results{{"height over the film",
                                       say(flaw_height_from_film(length(in, "image"), length(in, "source"),
                                                                 length(in, "distance")),
                                           in.unit())}};
                   },
                   "image=0.5in source=15in distance=36in"});
    out.push_back({"iqi-sensitivity",
                   "equivalent sensitivity of a plaque and hole",
                   "EPS = (100/t) sqrt(T H / 2)",
                   "ASTM E592-15 eq. (1), read; E1025 numbers 7, 12, 17 from memory",
                   {needs("thickness", K::length, "of the part"),
                    needs("plaque", K::number, "its number, thousandths of an inch"),
                    one_of("hole", holes, "that is seen")},
                   [](const In &in) {
                       const double n = in.number("plaque"), t = hole_times(in);
                       const Metres plaque = plaque_inches(n) * 0.0254 * si::metre,
                                    hole = hole_inches(n, t) * 0.0254 * si::metre;
                       return Results{
                           {"sensitivity",
                            digits(iqi_sensitivity(length(in, "thickness"), plaque, hole), "%.2f") + " %"}};
                   },
                   "thickness=0.375in plaque=15 hole=2T"});
    out.push_back({"iqi-level",
                   "equivalent sensitivity of a quality level such as 2-2T",
                   "EPS = a sqrt(b / 2)",
                   "ASTM E592-15 eq. (1), read",
                   {needs("percent", K::number, "plaque, percent of the thickness"),
                    one_of("hole", holes, "that must be seen")},
                   [](const In &in) {
                       return Results{
                           {"sensitivity",
                            digits(in.number("percent") * std::sqrt(hole_times(in) / 2.0), "%.2f") + " %"}};
                   },
                   "percent=2 hole=2T"});
    out.push_back(
        {"iqi-wire",
         "wire that shows what a plaque's hole shows",
         "F^3 d^3 l = T^2 H^2 pi/4, F 0.79, l 0.3 in",
         "training slide on ASTM E747, read; wire sizes from memory",
         {needs("plaque", K::number, "its number"), one_of("hole", holes, "that is seen")},
         [](const In &in) {
             const double n = in.number("plaque");
             const double d = inches(equivalent_wire(plaque_inches(n) * 0.0254 * si::metre,
                                                     hole_inches(n, hole_times(in)) * 0.0254 * si::metre));
             const double nearest =
                 *std::min_element(std::begin(wires), std::end(wires),
                                   [&](double a, double b) { return std::abs(a - d) < std::abs(b - d); });
             return Results{{"diameter", digits(d, "%.5f") + " in"}, {"wire", digits(nearest) + " in"}};
         },
         "plaque=12 hole=2T"});
    out.push_back({"iqi",
                   "plaque or wire for a thickness",
                   "table by the single wall",
                   "ASME V T-276, memory but for one row",
                   {needs("thickness", K::length, "of the single wall"),
                    one_of("side", {"source", "film"}, "where it stands")},
                   [](const In &in) {
                       for (const auto &row : iqi_rows)
                           if (exact_inches(in, "thickness") <= Exact::fraction(row.to_thousandths, 1000)) {
                               const bool source = in.word("side") == "source";
                               return Results{{"plaque", source ? row.source_hole : row.film_hole},
                                              {"wire", source ? row.source_wire : row.film_wire}};
                           }
                       throw InputError("thickness over 4 in is not in this table");
                   },
                   "thickness=7mm side=film"});
    out.push_back(
        {"iqi-2-percent",
         "plaque of 2 %",
         "2 % of the thickness, at least 0.005 in",
         "T9074 Table 3-1 (page 39) and T.O. 33B-1-1 page 571, read",
         {needs("thickness", K::length, "of the part")},
         [](const In &in) {
             return Results{
                 {"plaque", digits(std::max(0.005, 0.02 * inches(length(in, "thickness")))) + " in"}};
         },
         "thickness=0.5in"});
    out.push_back(
        {"film-density",
         "density from two readings of light",
         "D = log10(I0 / I)",
         "T.O. 33B-1-1 page 601, read",
         {needs("in", K::number, "light on the film"), needs("out", K::number, "light through it")},
         [](const In &in) {
             if (in.number("out") > in.number("in")) throw InputError("more light comes out than goes in");
             return Results{{"density", digits(film_density(in.number("in"), in.number("out")), "%.3f")}};
         },
         "in=5000 out=70"});
    out.push_back(
        {"pipe-exposures",
         "exposures for a girth weld",
         "by diameter and view",
         "ASME V Article 2 T-271.2 in a public copy, read",
         {needs("diameter", K::length, "outside"),
          one_of("view", {"single-image", "ellipse", "superimposed", "panoramic"}, "how it is shot")},
         [](const In &in) {
             const std::string &view = in.word("view");
             const Metres od = length(in, "diameter");
             if ((view == "ellipse" || view == "superimposed") &&
                 exact_inches(in, "diameter") > Exact::fraction(7, 2))
                 throw InputError("double-wall viewing is for 3.5 in and under");
             const int n = view == "panoramic" ? 1 : view == "ellipse" ? 2 : 3;
             const char *apart = view == "ellipse"        ? "90 degrees apart"
                                 : view == "superimposed" ? "60 or 120 degrees apart"
                                 : view == "panoramic"    ? "source in the middle"
                                                          : "120 degrees apart";
             return Results{
                 {"exposures", "at least " + std::to_string(n) + ", " + apart},
                 {"weld for each film",
                  say(std::numbers::pi * od / static_cast<double>(n), in.unit()) + " and the overlap"}};
         },
         "diameter=2.375in view=ellipse"});
}

void add_exposure(std::vector<Calculation> &out) {
    const std::string course = "university course pages, read";
    const auto distance_inputs = [](const char *second, const char *help) {
        return std::vector<CalculationInput>{level("level", "as measured"),
                                             needs("at", K::length, "where it was measured"),
                                             needs(second, K::length, help)};
    };
    out.push_back({"inverse-square", "radiation at another distance", "I2 = I1 (D1 / D2)^2", course,
                   distance_inputs("to", "where it is wanted"),
                   [](const In &in) {
                       return Results{{"level", level_like(in, "level",
                                                           at_distance(in.number("level"), length(in, "at"),
                                                                       length(in, "to")))}};
                   },
                   "level=300R/h at=2ft to=8ft"});
    out.push_back(
        {"distance-for",
         "distance at which radiation has fallen to a level",
         "D2 = D1 sqrt(I1 / I2)",
         course,
         {level("level", "as measured"), needs("at", K::length, "where it was measured"),
          level("wanted", "level")},
         [](const In &in) {
             if (in.amounts.at("level").kind != in.amounts.at("wanted").kind)
                 throw InputError("the two levels are of different kinds");
             const double metres =
                 distance_for(in.number("level"), length(in, "at"), in.number("wanted")).value();
             return Results{{"distance", digits(metres) + " m = " + digits(metres / 0.3048) + " ft"}};
         },
         "level=90mR/h at=30ft wanted=10mR/h"});
    out.push_back(
        {"exposure-distance",
         "exposure at another distance",
         "t2 = t1 (D2 / D1)^2; mA min alike",
         course,
         {{"exposure", {K::time, K::number}, "time, or a number of mA min", "", false, {}},
          needs("from", K::length, "old distance"),
          needs("to", K::length, "new distance")},
         [](const In &in) {
             const Seconds t =
                 exposure_at(in.number("exposure") * si::second, length(in, "from"), length(in, "to"));
             return Results{
                 {"exposure", in.amounts.at("exposure").kind == K::time ? say(t) : digits(t.value())}};
         },
         "exposure=10min from=36in to=24in"});
    out.push_back(
        {"exposure-current",
         "exposure time with another current or activity",
         "mA x t, or Ci x t, stays",
         course,
         {needs("time", K::time, "old"), needs("from", K::number, "old mA or Ci"),
          needs("to", K::number, "new mA or Ci")},
         [](const In &in) {
             return Results{{"time", say(time(in, "time") * (in.number("from") / in.number("to")))}};
         },
         "time=12min from=5 to=10"});
    out.push_back({"decay",
                   "activity of a source after some time",
                   "A = A0 2^(-t/T); Ir-192 73.8 d, Co-60 5.27 y",
                   "materials text, read; Se-75 119.8 d from memory",
                   {needs("activity", K::activity, "on the day it is known"),
                    may("elapsed", K::time, "time since then"),
                    may("before", K::time, "time before then"),
                    {"source", {}, "isotope", "", true, {"Ir-192", "Co-60", "Se-75"}},
                    may("half-life", K::time, "instead of a source")},
                   [](const In &in) {
                       if (in.has("source") == in.has("half-life"))
                           throw InputError("give source or half-life");
                       const double days = !in.has("source")               ? 0
                                           : in.word("source") == "Ir-192" ? 73.8
                                           : in.word("source") == "Co-60"  ? 5.27 * 365.25
                                                                           : 119.8;
                       const Seconds half =
                           in.has("source") ? days * 86'400.0 * si::second : time(in, "half-life");
                       if (in.has("elapsed") == in.has("before")) throw InputError("give elapsed or before");
                       const Seconds since = in.has("elapsed") ? time(in, "elapsed") : -time(in, "before");
                       const double now = decayed(in.number("activity"), half, since);
                       return Results{{"activity", digits(now) + " Ci = " + digits(now * 37.0) + " GBq"},
                                      {"exposure", "times " + digits(in.number("activity") / now)}};
                   },
                   "activity=100Ci source=Ir-192 elapsed=7d"});
    out.push_back(
        {"gamma-exposure",
         "gamma exposure from a chart's factor",
         "t = EF x SFD^2 x FF / Ci, min and inches",
         "a public formula sheet, read",
         {needs("factor", K::number, "of the chart, EF"), needs("distance", K::length, "source to film"),
          with("film", K::number, "film factor, FF", "1"), needs("activity", K::activity, "of the source")},
         [](const In &in) {
             const double d = inches(length(in, "distance"));
             return Results{
                 {"time",
                  digits(in.number("factor") * d * d * in.number("film") / in.number("activity"), "%.2f") +
                      " min"}};
         },
         "factor=0.240 distance=20in activity=50Ci"});
    out.push_back({"shield",
                   "radiation behind a shield",
                   "I = I0 2^(-t/HVL)",
                   "course pages and exam keys, read",
                   {level("level", "without it"), needs("thickness", K::length, "of the shield"),
                    needs("half-value", K::length, "layer of its metal")},
                   [](const In &in) {
                       return Results{
                           {"layers", digits(length(in, "thickness") / length(in, "half-value"))},
                           {"level", level_like(in, "level",
                                                behind_shield(in.number("level"), length(in, "thickness"),
                                                              length(in, "half-value")))}};
                   },
                   "level=1600uSv/h thickness=12cm half-value=3cm"});
    out.push_back(
        {"tenth-value",
         "shield for a reduction",
         "t = TVL log10(factor)",
         "exam paper, worked out",
         {needs("tenth-value", K::length, "layer of its metal"), needs("factor", K::number, "of reduction")},
         [](const In &in) {
             return Results{
                 {"thickness", say(length(in, "tenth-value") * std::log10(in.number("factor")), in.unit())}};
         },
         "tenth-value=8.2mm factor=100"});
    out.push_back(
        {"output",
         "radiation of a source",
         "5.9 R/h a Ci at 1 ft for Ir-192, 14.5 for Co-60",
         "exam keys, read",
         {needs("activity", K::activity, "of the source"), one_of("source", {"Ir-192", "Co-60"}, "isotope"),
          with("distance", K::length, "from it", "1 ft")},
         [](const In &in) {
             const double at_foot = in.number("activity") * (in.word("source") == "Ir-192" ? 5.9 : 14.5);
             return Results{
                 {"level",
                  digits(at_distance(at_foot, 0.3048 * si::metre, length(in, "distance"))) + " R/h"}};
         },
         "activity=10Ci source=Ir-192"});
    out.push_back({"dose",
                   "dose over a time",
                   "dose = rate x time",
                   "exam paper, read",
                   {level("level", "that one stands in"), needs("time", K::time, "spent")},
                   [](const In &in) {
                       const double hours = time(in, "time").value() / 3600.0,
                                    value = in.number("level") * hours;
                       return Results{{"dose", in.amounts.at("level").kind == K::radiation
                                                   ? digits(value) + " R (about as many rem)"
                                                   : digits(value) + " uSv"}};
                   },
                   "level=40mR/h time=4h"});
    out.push_back(
        {"equivalent-thickness",
         "thickness of another metal that takes the same exposure",
         "t = t_reference / factor",
         "exam paper, read",
         {needs("thickness", K::length, "of the reference metal"),
          needs("factor", K::number, "radiographic equivalence of the other")},
         [](const In &in) {
             return Results{{"thickness", say(length(in, "thickness") / in.number("factor"), in.unit())}};
         },
         "thickness=0.5in factor=1.4"});
}

void add_weld(std::vector<Calculation> &out) {
    out.push_back({"throat",
                   "theoretical throat of a fillet, and its size",
                   "a b / sqrt(a^2 + b^2); equal legs 0.707 a",
                   "geometry",
                   {needs("leg", K::length, "one leg"), may("leg-2", K::length, "the other, if it differs")},
                   [](const In &in) {
                       const Metres a = length(in, "leg"), b = in.has("leg-2") ? length(in, "leg-2") : a;
                       return Results{
                           {"throat", say(throat(a, b), in.unit())},
                           {"size", say(std::min(a, b), in.unit()) + " (convex or flat: the smaller leg)"}};
                   },
                   "leg=3/8in leg-2=1/2in"});
    out.push_back({"concave-size",
                   "size of a concave fillet",
                   "size = throat / 0.707",
                   "a public page, read",
                   {needs("throat", K::length, "as measured")},
                   [](const In &in) {
                       return Results{{"size", say(length(in, "throat") * std::numbers::sqrt2, in.unit())}};
                   },
                   "throat=0.32in"});
    out.push_back(
        {"skewed-throat",
         "throat of a skewed tee",
         "along the member: s cos(P/2); square to it: (w - gap) / (2 sin(P/2))",
         "geometry",
         {needs("angle", K::angle, "between the members, P"), needs("leg", K::length, "as measured"),
          one_of("leg-is", {"along", "square"}, "measured along the member, or square to it"),
          with("gap", K::length, "at the root", "0 in")},
         [](const In &in) {
             const Radians p = angle(in, "angle");
             if (in.number("angle") >= 180e6) throw InputError("the angle is under 180 deg");
             if (in.word("leg-is") == "along")
                 return Results{{"throat", say(skewed_throat_along(length(in, "leg"), p), in.unit())}};
             if (length(in, "gap") >= length(in, "leg")) throw InputError("the gap is as large as the leg");
             return Results{
                 {"throat", say(skewed_throat_square(length(in, "leg"), length(in, "gap"), p), in.unit())}};
         },
         "angle=60deg leg=1/4in leg-is=square"});
    out.push_back({"arc",
                   "degrees or clock to length along a girth weld",
                   "s = pi D x angle / 360; an hour is 30 degrees",
                   "geometry",
                   {needs("diameter", K::length, "outside"), may("angle", K::angle, "from the datum"),
                    may("hours", K::number, "on the clock, datum at 12"),
                    may("along", K::length, "the other way: length from the datum")},
                   [](const In &in) {
                       const Metres od = length(in, "diameter");
                       if (in.has("angle") + in.has("hours") + in.has("along") != 1)
                           throw InputError("give one of angle, hours or along");
                       const Radians turn = in.has("angle") ? angle(in, "angle")
                                            : in.has("hours")
                                                ? in.number("hours") * std::numbers::pi / 6.0 * si::radian
                                                : angle_of(od, length(in, "along"));
                       const double degrees = turn.value() * 180.0 / std::numbers::pi;
                       return Results{{"along", say(arc(od, turn), in.unit())},
                                      {"angle", digits(degrees, "%.1f") + " deg"},
                                      {"clock", clock(degrees)},
                                      {"girth", say(std::numbers::pi * od, in.unit())}};
                   },
                   "diameter=6.625in along=9in"});
    out.push_back(
        {"light",
         "light in foot-candles and lux",
         "1 fc = 10.764 lx",
         "geometry: a lumen on a square foot, or metre",
         {needs("light", K::light, "fc or lx")},
         [](const In &in) {
             const double lux = in.number("light");
             return Results{{"lux", digits(lux) + " lx"}, {"foot-candles", digits(lux * 0.09290304) + " fc"}};
         },
         "light=100fc"});
}

} // namespace

const std::vector<Calculation> &calculations() {
    static const std::vector<Calculation> table = [] {
        std::vector<Calculation> out;
        add_magnetic(out);
        add_penetrant(out);
        add_geometry(out);
        add_exposure(out);
        add_weld(out);
        return out;
    }();
    return table;
}

} // namespace beadbook::technique
