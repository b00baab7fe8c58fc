// Radiography: distance, time, decay, shielding and dose.
#include "technique/calculation_tables.hpp"
#include "technique/calculation_words.hpp"

#include <cmath>

namespace beadbook::technique {

using namespace words;

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

} // namespace beadbook::technique
