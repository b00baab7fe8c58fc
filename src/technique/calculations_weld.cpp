// Sizes of welds, places round a tube, and light.
#include "technique/calculation_tables.hpp"
#include "technique/calculation_words.hpp"

#include <algorithm>
#include <cmath>

namespace beadbook::technique {

using namespace words;

namespace {

std::string clock(double degrees) {
    const int minutes =
        static_cast<int>(std::lround(degrees * 2.0)) % 720; // a clock hand: 30 degrees an hour
    char text[16];
    std::snprintf(text, sizeof text, "%d:%02d", minutes / 60 == 0 ? 12 : minutes / 60, minutes % 60);
    return text;
}

} // namespace

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

} // namespace beadbook::technique
