// Amperes, turns and shots for magnetic particle examination.
#include "technique/calculation_tables.hpp"
#include "technique/calculation_words.hpp"

#include <algorithm>
#include <cmath>

namespace beadbook::technique {

using namespace words;

namespace {

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

} // namespace

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
    out.push_back(
        {"coil-high", "coil, high fill (section under twice the part's) or cable wrap",
         "N I = 35000 / (L/D + 2) from L/D 4 up; 45000 / (L/D) from 2 to under 4",
         "ASME V Article 7 T-753: bands and first formula in public notes, read; the second from memory",
         coil_inputs(),
         [](const In &in) {
             // The first formula would leave a short part with half of the field that it needs.
             const double r = ratio_of(in);
             const bool long_enough = r >= 4.0;
             Results out = coil_results(in, r, long_enough ? high_fill(r) : low_fill(r));
             if (!long_enough) out.push_back({"formula", "45000 / (L/D), for L/D under 4 (memory)"});
             return out;
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

} // namespace beadbook::technique
