// Dwell, and UV-A.
#include "technique/calculation_tables.hpp"
#include "technique/calculation_words.hpp"

#include <algorithm>

namespace beadbook::technique {

using namespace words;

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

} // namespace beadbook::technique
