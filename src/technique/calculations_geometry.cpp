// Radiography: unsharpness, place of a flaw, IQIs, density, number of exposures.
#include "technique/calculation_tables.hpp"
#include "technique/calculation_words.hpp"

#include <algorithm>
#include <cmath>

namespace beadbook::technique {

using namespace words;

namespace {

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

} // namespace

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

} // namespace beadbook::technique
