// What is asked about at first sight. The bounds are common practice without a source; each stands in
// criteria/plausible.yaml and is tried from both sides here.
#include "facts/plausibility.hpp"

#include "catch.hpp"
#include "facts/log_line.hpp"
#include "measure/text.hpp"

#include <set>

using namespace beadbook;

namespace {

const Day today = parse_day("2026-11-25");

CouponRecord coupon_of(const std::map<std::string, std::string> &fields) {
    CouponRecord out;
    out.id = "T-1";
    out.set_all(fields);
    return out;
}

std::set<std::string> rules_of(const std::vector<Unlikely> &found) {
    std::set<std::string> out;
    for (const auto &one : found) out.insert(one.rule);
    return out;
}

bool asks(const std::map<std::string, std::string> &fields, const std::string &rule) {
    return rules_of(Plausibility::shipped().of(coupon_of(fields), today)).contains(rule);
}

bool asks_of(const std::map<std::string, std::string> &fields, const std::string &line,
             const std::string &rule) {
    const CouponRecord coupon = coupon_of(fields);
    const LogLine read = read_log_line(line, coupon.facts().line, coupon.fixed_unit());
    return rules_of(
               Plausibility::shipped().of(coupon, read.found, read.method.value_or(Exam::VT), {}, read.typed))
        .contains(rule);
}

const std::map<std::string, std::string> girth{
    {"form", "tube"}, {"seam", "girth"}, {"diameter", "2 in"}, {"units", "in"}};

} // namespace

TEST_CASE("each rule about a coupon asks on one side of its bound, and not at it") {
    using Fields = std::map<std::string, std::string>;
    struct Row {
        std::string rule;
        Fields common;
        std::string field, at_bound, beyond;
    };
    const std::vector<Row> rows{
        {"wall-too-thick", {}, "thickness", "6 in", "152.400001 mm"},
        {"wall-too-thin", {}, "thickness", "0.004 in", "0.101599 mm"},
        {"wall-over-radius", {{"form", "tube"}, {"diameter", "2 in"}}, "thickness", "1 in", "25.400001 mm"},
        {"diameter-too-large", {}, "diameter", "120 in", "3048.000001 mm"},
        {"diameter-too-small", {}, "diameter", "0.05 in", "1.269999 mm"},
        {"weld-too-long", {}, "weld-length", "420 in", "10668.000001 mm"},
        {"girth-not-girth",
         {{"seam", "girth"}, {"diameter", "2 in"}},
         "weld-length",
         "6.4 in",
         "162.560001 mm"},
        {"girth-not-girth",
         {{"seam", "girth"}, {"diameter", "2 in"}},
         "weld-length",
         "6.16 in",
         "156.463999 mm"},
        {"weld-over-wall",
         {{"joint", "groove"}, {"thickness", "0.1 in"}},
         "weld-thickness",
         "0.1 in",
         "2.540001 mm"},
        {"bead-over-wall", {{"thickness", "0.1 in"}}, "bead-thickness", "0.2 in", "5.080001 mm"},
        {"throat-over-wall", {{"thickness", "0.1 in"}}, "throat", "0.3 in", "7.620001 mm"},
        {"fillet-over-wall", {{"thickness", "0.1 in"}}, "fillet-size", "0.4 in", "10.160001 mm"},
        {"leg-not-fillet", {{"fillet-size", "0.1 in"}}, "leg", "0.2 in", "5.080001 mm"},
        {"throat-over-leg", {{"leg", "0.1 in"}}, "throat", "0.075 in", "1.905001 mm"},
        {"throat-over-drawing", {{"fillet-size", "0.1 in"}}, "throat", "0.075 in", "1.905001 mm"},
        {"leg-under-drawing", {{"fillet-size", "0.1 in"}}, "leg", "0.1 in", "2.539999 mm"},
        {"throat-under-drawing", {{"fillet-size", "0.1 in"}}, "throat", "0.06 in", "1.523999 mm"},
        {"tube-of-foil", {{"thickness", "0.01 in"}}, "diameter", "5 in", "127.000001 mm"},
        {"width-over-drawing",
         {{"joint", "fillet"}, {"fillet-size", "0.1 in"}},
         "weld-width",
         "0.3 in",
         "7.620001 mm"},
        {"weld-over-thinner",
         {{"joint", "groove"}, {"thickness", "0.1 in"}, {"thickness-2", "1 in"}},
         "weld-thickness",
         "0.1 in",
         "2.540001 mm"},
        {"fillet-weld-over-wall",
         {{"joint", "fillet"}, {"thickness", "0.1 in"}},
         "weld-thickness",
         "0.3 in",
         "7.620001 mm"},
        {"girth-length-of-straight",
         {{"seam", "longitudinal"}, {"diameter", "2 in"}},
         "weld-length",
         "6.159 in",
         "6.16 in"},
        {"girth-length-of-straight",
         {{"seam", "straight"}, {"diameter", "2 in"}},
         "weld-length",
         "6.401 in",
         "6.4 in"},
        {"tube-position-of-straight", {{"form", "tube"}, {"seam", "longitudinal"}}, "position", "1G", "6GR"},
        {"groove-of-lap", {{"joint", "groove"}}, "joint-form", "tee", "lap"},
        {"width-over-wall", {{"thickness", "0.1 in"}}, "weld-width", "3 in", "76.200001 mm"},
        {"too-many-layers", {}, "layers", "200", "201"},
        {"too-hot", {}, "temperature", "2500 F", "2500.1 F"},
        {"tube-position-of-plate", {{"form", "plate"}, {"joint", "groove"}}, "position", "4G", "6G"},
        {"tube-position-of-plate", {{"form", "sheet"}, {"joint", "groove"}}, "position", "PE", "H-L045"},
        {"girth-of-plate", {{"seam", "girth"}}, "form", "tube", "plate"},
        {"fillet-of-butt", {{"joint", "fillet"}}, "joint-form", "tee", "butt"},
        {"groove-in-fillet-position", {{"joint", "groove"}}, "position", "3G", "3F"},
        {"group-of-another-metal", {{"material", "4130 steel"}}, "metal-group", "P5A", "P8"},
        {"group-of-another-metal", {{"material", "stainless steel"}}, "metal-group", "P 10H", "P-No. 1"},
        {"group-of-another-metal", {{"metal-group", "P23"}}, "material", "aluminium 6061", "steel"},
        {"group-of-another-metal", {{"material", "stainless steel"}}, "metal-group", "IIa", "IV"},
        {"group-of-another-metal", {{"metal-group", "IIIa"}}, "material", "A286 stainless steel", "titanium"},
        {"group-of-another-metal", {{"metal-group", "aluminium"}}, "material", "6061 aluminum", "steel"},
        {"fillet-size-of-butt",
         {{"joint", "groove"}, {"fillet-size", "0.2 in"}},
         "joint-form",
         "tee",
         "butt"},
        {"fillet-size-of-butt", {{"joint-form", "butt"}, {"throat", "0.2 in"}}, "joint", "fillet", "groove"},
        {"plug-of-butt", {{"joint", "plug"}}, "joint-form", "lap", "butt"},
        {"rotated-plate", {{"rotated", "yes"}}, "form", "tube", "plate"},
        {"rotated-straight", {{"form", "tube"}, {"rotated", "yes"}}, "seam", "girth", "longitudinal"},
        {"sides-of-closed", {{"sides", "both"}}, "inside", "accessible", "closed"},
        {"sides-of-closed", {{"inside", "closed"}}, "backing", "ss nb", "bs"},
        {"sides-of-closed", {{"inside", "closed"}}, "backing", "backing", "backgouge"},
        {"backing-of-other-sides", {{"backing", "DS NB"}}, "sides", "both", "one"},
        {"backing-of-other-sides", {{"sides", "both"}}, "backing", "with", "ss mb"},
        {"runs-of-other-layers", {{"runs", "sl"}}, "layers", "1", "2"},
        {"runs-of-other-layers", {{"runs", "ML"}}, "layers", "2", "1"},
        {"runs-of-other-layers",
         {{"process", "GTAW + SMAW"}, {"runs", "sl + ml"}},
         "layers",
         "1 + 2",
         "2 + 1"},
        {"runs-of-other-layers", {{"process", "GTAW + SMAW"}, {"runs", "sl"}}, "layers", "2", "3"},
        {"runs-of-other-layers", {{"process", "GTAW + SMAW"}, {"runs", "ml"}}, "layers", "4", "3"},
        {"layers-under-processes", {{"process", "GTAW + SMAW"}}, "layers", "2", "1"},
        {"filler-beside-none", {{"filler", "none"}}, "filler-group", "n/a", "F6"},
        {"filler-beside-none", {{"filler-type", "nm"}}, "filler", "none", "ER70S-2"},
        {"filler-beside-none", {{"process", "142"}}, "filler-type", "nm", "S"},
        {"filler-beside-none", {{"process", "142 + 111"}}, "filler-type", "nm + B", "S + B"},
        {"electrode-without-filler", {{"filler", "none"}}, "process", "GTAW", "SMAW"},
        {"electrode-without-filler", {{"process", "GTAW + 111"}}, "filler", "none + E7018", "ER70S-2 + none"},
        {"fillet-without-filler", {{"fillet-size", "1/8 in"}}, "process", "141", "142"},
        {"fillet-without-filler", {{"leg", "1/8 in"}}, "filler", "tbd", "none"},
        {"fillet-without-filler",
         {{"throat", "0.1 in"}, {"process", "142 + 111"}},
         "filler",
         "E7018",
         "none"},
        {"filler-of-another-metal", {{"material", "6061 aluminum"}}, "filler-group", "F23", "F6"},
        {"filler-of-another-metal", {{"material", "4130 steel"}}, "filler", "ENi-1", "ER4043"},
        {"filler-of-another-metal", {{"material", "titanium"}}, "filler", "ERTi-2", "ER308L"},
        {"filler-of-another-metal", {{"filler-group", "FM5"}}, "material", "nickel alloy", "aluminium"},
        {"filler-of-another-process", {{"process", "SMAW"}}, "filler", "E7018-1", "ER70S-6"},
        {"filler-of-another-process", {{"process", "FCAW"}}, "filler", "E71T-1", "E7018"},
        {"filler-of-another-process", {{"filler", "E7018"}}, "process", "GTAW + SMAW", "GTAW"},
        {"filler-of-another-process",
         {{"process", "GTAW + SMAW"}},
         "filler",
         "ER70S-2 + E7018",
         "E7018 + ER70S-2"},
        {"filler-of-another-process", {{"process", "111"}}, "filler-type", "B", "S"},
        {"filler-of-another-process", {{"process", "135"}}, "filler-type", "S", "RR"},
        {"transfer-of-another-process", {{"transfer", "spray"}}, "process", "GMAW", "SMAW"},
        {"transfer-of-another-process",
         {{"process", "GTAW + GMAW"}},
         "transfer",
         "none + spray",
         "spray + spray"},
        {"flux-falls-off", {{"process", "SAW"}}, "position", "2G", "3G"},
        {"flux-falls-off", {{"position", "4G"}}, "process", "GTAW + SAW", "SAW"},
        {"process-of-another-metal", {{"material", "titanium"}}, "process", "GTAW", "SMAW"},
        {"process-of-another-metal", {{"process", "136"}}, "material", "steel", "magnesium AZ31"},
        {"rotated-round-fixed-tube", {{"rotated", "yes"}}, "position", "1G", "6G"},
        {"rotated-round-fixed-tube", {{"position", "PH"}}, "rotated", "no", "yes"},
        {"diameter-of-plate", {{"diameter", "2 in"}}, "form", "tube", "plate"},
        {"gauge-of-another-metal",
         {{"thickness", "16 ga aluminium"}},
         "material",
         "6061 aluminum",
         "4130 steel"},
        {"magnetic-metal", {{"magnetic", "yes"}}, "material", "4130 steel", "304L stainless steel"},
        {"welded-long-ago", {}, "welded", "2011-11-25", "2011-11-24"},
    };
    std::set<std::string> tried;
    for (const auto &row : rows) {
        INFO(row.rule << " " << row.field);
        Fields fields = row.common;
        fields[row.field] = row.at_bound;
        CHECK_FALSE(asks(fields, row.rule));
        fields[row.field] = row.beyond;
        CHECK(asks(fields, row.rule));
        tried.insert(row.rule);
    }
    for (const auto &rule : Plausibility::shipped().rules())
        if (rule.about == PlausibilityRule::About::coupon) {
            INFO(rule.id);
            CHECK(tried.contains(rule.id));
        }
}

TEST_CASE("each rule about a find asks on one side of its bound, and not at it") {
    const std::map<std::string, std::string> wall{{"thickness", "0.1 in"}},
        weld{{"weld-length", "8 in"}, {"weld-width", "0.5 in"}, {"weld-thickness", "0.1 in"}};
    const std::map<std::string, std::string> metric{{"units", "mm"}}, inches{{"units", "in"}};
    struct Row {
        std::string rule;
        std::map<std::string, std::string> fields;
        std::string at_bound, beyond;
    };
    const std::vector<Row> rows{
        {"depth-over-wall", wall, "undercut d 0.1 in", "undercut d 2.540001 mm"},
        {"depth-over-weld", weld, "undercut d 0.2 in", "undercut d 5.080001 mm"},
        {"depth-too-large", {}, "undercut d 6 in", "undercut d 152.400001 mm"},
        {"height-over-wall", wall, "overlap h 1 in", "overlap h 25.400001 mm"},
        {"length-over-weld", weld, "crack l 8 in", "crack l 203.200001 mm"},
        {"size-over-weld", weld, "crack 8 in", "crack 203.200001 mm"},
        {"round-over-wall", wall, "pore 1 in", "pore 25.400001 mm"},
        {"round-but-long", {}, "pore 3in x 1in", "pore 76.200001mm x 25.4mm"},
        {"linear-but-round", {}, "crack 25.400001mm x 1in", "crack 1in x 1in"},
        {"width-over-weld", weld, "slag 2in x 1.5in", "slag 2in x 38.100001mm"},
        {"size-too-large", {}, "crack 420 in", "crack 10668.000001 mm"},
        {"length-too-large", {}, "crack l 420 in", "crack l 10668.000001 mm"},
        {"size-too-small", {}, "pore 0.1 mm", "pore 0.099999 mm"},
        {"length-too-small", {}, "crack l 0.1 mm", "crack l 0.099999 mm"},
        {"angle-over-turn", {}, "weld toe angle angle 180", "weld toe angle angle 181"},
        {"size-over-length", {}, "crack s 1.5in l 1in", "crack s 38.100001mm l 1in"},
        {"height-and-depth", {}, "linear misalignment h 0.1in d 2.54mm", "mismatch h 0.1in d 2.540001mm"},
        {"height-and-depth", {}, "undercut h 0.1in d 0.1in", "undercut h 2.540001mm d 0.1in"},
        {"concavity-leaves-nothing", wall, "root concavity h 0.025in", "root concavity h 0.634999mm"},
        {"height-and-depth",
         {{"thickness", "0.3 in"}},
         "root concavity h 0.3in d 0.01in",
         "sagging h 0.3in d 0.01in"},
        {"pore-too-deep", {}, "surface pore s 0.1in d 0.3in", "surface pore s 0.1in d 7.620001mm"},
        {"round-by-length", {}, "root porosity l 1in w 1in", "root porosity l 1in"},
        {"round-by-length", {}, "gas pore s 1in from 1in to 2in", "gas pore from 1in to 2in"},
        {"depth-too-small", metric, "undercut d 0.1", "undercut d 0.099999"},
        {"depth-under-limits", metric, "undercut d 0.0125 mm", "undercut d 0.012499 mm"},
        {"height-too-small", metric, "overlap h 0", "overlap h 0.099999"},
        {"width-too-small", metric, "crack 1x0.05", "crack 1x0.049999"},
        // Of a coupon without a unit of its own too.
        {"depth-too-fine", {{"units", "in"}}, "undercut d 0.001", "undercut d 0.0009"},
        {"depth-too-fine", {}, "undercut d 0.0254 mm", "undercut d 0.025399 mm"},
        {"height-too-fine", {{"units", "in"}}, "overlap h 0.001", "overlap h 0.0009"},
        {"height-too-fine", {}, "overlap h 0.0254 mm", "overlap h 0.025399 mm"},
        {"width-too-fine", {{"units", "in"}}, "crack 1x0.001", "crack 1x0.0009"},
        {"width-too-fine", {}, "crack 1mm x 0.0254mm", "crack 1mm x 0.025399mm"},
        {"inches-on-millimetres", metric, "undercut d 0.5 mm l 3/8 in at 1/2", "undercut d 0.5 at 3/8"},
        {"inches-on-millimetres", metric, "crack 3/4", "crack 1-1/2"},
        {"inches-on-millimetres", {{"units", "in"}}, "undercut d 1/32", "undercut d 1/32mm"},
        {"inches-on-millimetres", {{"units", "in"}}, "undercut d 1/4 mm", "undercut d 3/64 MM"},
        {"bare-size", metric, "pore 0.5", "pore 0.499999"},
        {"bare-size", metric, "pore 0.25mm", "pore .25"},
        {"bare-length", metric, "crack l 0.5", "crack 0.375 x 0.2"},
        {"bare-length", metric, "crack 0.25 mm x 0.2 mm", "crack l 0.25"},
        {"bare-depth", metric, "undercut d 0.2", "undercut d 0.199999"},
        {"bare-depth", metric, "undercut d 0.15mm", "undercut d 0.15"},
        {"bare-height", metric, "overlap h 0.2", "overlap h 0.199999"},
        {"bare-height", metric, "overlap h 0", "overlap h 0.125"},
        {"size-in-other-unit", inches, "pore 0.5 mm", "pore 0.499999 mm"},
        {"size-in-other-unit", inches, "pore 0.01 in", "pore 0.19 mm"},
        {"length-in-other-unit", inches, "crack l 0.5 mm", "crack l 0.499999 mm"},
        {"depth-in-other-unit", inches, "undercut d 0.2 mm", "undercut d 0.199999 mm"},
        {"height-in-other-unit", inches, "overlap h 0.2 mm", "overlap h 0.199999 mm"},
        {"micro-by-eye", {}, "crack l 0.5mm", "microcrack l 0.5mm"},
        {"micro-by-eye", {}, "incomplete fusion l 0.5mm", "RT micro lack of fusion l 0.5mm"},
        {"micro-too-long", {}, "microcrack l 1mm", "microcrack l 1.000001mm"},
        {"micro-too-large", {}, "microcrack 1mm", "microcrack 1.000001mm"},
        {"depth-unmeasured", {}, "VT undercut d 0.1in", "PT undercut d 0.1in"},
        {"depth-unmeasured", {}, "RT crack d 0.1in", "MT crack d 0.1in"},
        {"depth-on-film", {}, "VT crack d 0.1in", "RT crater crack d 0.1in"},
        {"height-unmeasured", {}, "VT overlap h 0.1in", "MT overlap h 0.1in"},
        {"depth-over-length", {}, "PT undercut l 1in d 1in", "PT undercut l 1in d 25.400001mm"},
        {"depth-over-size", {}, "MT crack 1in d 1in", "MT crack 1in d 25.400001mm"},
        {"loss-through-wall", wall, "undercut d 2.539999 mm", "shrinkage groove d 0.1in"},
        {"measured-over-drawing", {{"fillet-size", "0.1 in"}}, "fillet size 0.3in", "fillet size 7.620001mm"},
        {"measured-fillet-over-wall", wall, "fillet size 0.4in", "fillet size 10.160001mm"},
        {"measured-throat-over-drawing", {{"fillet-size", "0.1 in"}}, "throat 0.225in", "throat 5.715001mm"},
        {"measured-throat-over-leg", {{"leg", "0.1 in"}}, "throat 0.075in", "throat 1.905001mm"},
        {"fillet-size-of-longest-leg",
         {{"leg", "0.1 in"}, {"joint", "fillet"}},
         "fillet size 2.539999mm",
         "fillet size 0.1in"},
        {"measured-throat-over-wall", wall, "throat 0.3in", "throat 7.620001mm"},
        {"reinforcement-over-wall", wall, "excess weld metal h 8.08mm", "excess weld metal h 8.080001mm"},
        {"area-over-size", {}, "slag 0.1in area 0.01in2", "slag 0.1in area 0.010001in2"},
        {"area-over-length", {}, "slag l 0.1in area 0.01in2", "slag l 0.1in area 0.010001in2"},
        {"area-over-width", {}, "slag .2in x .1in area 0.02in2", "slag .2in x .1in area 0.020001in2"},
        {"area-under-size", {}, "pore 0.2in area 0.02in2", "pore 0.2in area 0.019999in2"},
        {"cap-over-weld", weld, "excess weld metal w 0.5in", "excess weld metal w 12.700001mm"},
        {"cap-under-weld", weld, "excessive convexity w 0.5in", "excessive convexity w 12.699999mm"},
        {"overlap-over-weld", weld, "overlap w 0.625in", "overlap w 15.875001mm"},
        {"root-over-weld", weld, "excess penetration h 1mm w 0.5in",
         "excess penetration h 1mm w 12.700001mm"},
        {"root-on-face", {}, "excess penetration h 1mm root", "excess penetration h 1mm face"},
        {"root-on-face", {}, "undercut d 1mm face", "root undercut d 1mm face"},
        {"face-at-root", {{"sides", "one"}}, "excess weld metal h 1mm face", "excess weld metal h 1mm root"},
        {"across-beyond-weld", weld, "pore .1in across 1.25in", "pore .1in across left 31.750001mm"},
        {"across-beyond-wall", wall, "pore .1in across left 2.5in", "pore .1in across 63.500001mm"},
        {"area-under-length", {}, "pore .2in x .1in area 0.01in2", "pore .2in x .1in area 0.009999in2"},
        {"area-under-width", {}, "slag .2in x .1in area 0.01in2", "slag .2in x .1in area 0.009999in2"},
        {"area-of-a-line", {}, "slag l 100mm area 10mm2", "slag l 100mm area 9.9999mm2"},
        {"area-of-a-size", {}, "slag 100mm area 10mm2", "slag 100mm area 9.9999mm2"},
    };
    std::set<std::string> tried;
    for (const auto &row : rows) {
        INFO(row.rule);
        CHECK_FALSE(asks_of(row.fields, row.at_bound, row.rule));
        CHECK(asks_of(row.fields, row.beyond, row.rule));
        tried.insert(row.rule);
    }
    tried.insert("throat-over-fillet"); // of two finds, below
    for (const auto &rule : Plausibility::shipped().rules())
        if (rule.about == PlausibilityRule::About::indication) {
            INFO(rule.id);
            CHECK(tried.contains(rule.id));
        }
    // Of a coupon in mm, or of no unit of its own, and of what a weld is measured for.
    CHECK_FALSE(asks_of(metric, "pore 0.19", "size-in-other-unit"));
    CHECK_FALSE(asks_of({}, "pore 0.19 mm", "size-in-other-unit"));
    CHECK_FALSE(asks_of(inches, "pore 0.19", "bare-size"));
    CHECK_FALSE(asks_of(metric, "fillet size 0.25", "bare-size"));
    CHECK_FALSE(asks_of(inches, "fillet size 0.19 mm", "size-in-other-unit"));
    // A crack may run along its whole weld; a fillet's size is no imperfection of the metal.
    CHECK_FALSE(asks_of({{"thickness", "0.1 in"}}, "crack 3 in", "round-over-wall"));
    CHECK_FALSE(asks_of({{"thickness", "0.1 in"}}, "fillet size s 0.5 in d 0.5 in", "depth-over-wall"));
    // Of a weld from both sides either may be called the face.
    CHECK_FALSE(asks_of({{"sides", "both"}}, "excess weld metal h 1mm root", "face-at-root"));
    // Some pores are long by their name, and of a group it is the extent.
    CHECK_FALSE(asks_of({}, "worm-hole l 1in", "round-by-length"));
    CHECK_FALSE(asks_of({}, "clustered porosity l 1in", "round-by-length"));
    CHECK_FALSE(asks_of({}, "clustered porosity 20mm x 10mm area 30mm2", "area-under-width"));
    CHECK_FALSE(asks_of({}, "worm-hole s 0.1in d 1in", "pore-too-deep"));
    // A crack may go through its wall; a fillet is tested in G where its plate stands so.
    CHECK_FALSE(asks_of(wall, "crack d 0.1in", "loss-through-wall"));
    CHECK_FALSE(asks({{"joint", "fillet"}, {"position", "3G"}}, "groove-in-fillet-position"));
    // A depth that nobody can read in millimetres is asked about once.
    CHECK_FALSE(asks_of(metric, "undercut d 0.01", "depth-too-fine"));
    // Where nobody knows the metal, or the unit is inches, nothing contradicts.
    CHECK_FALSE(asks({{"thickness", "16 ga stainless"}, {"material", "304L"}}, "gauge-of-another-metal"));
    // Other groups, numbers that no metal is known of, and metals that are not named say nothing.
    for (const char *group : {"8.1", "FM5", "P41", "P", "P100", "P8AB"}) {
        INFO(group);
        CHECK_FALSE(asks({{"metal-group", group}, {"material", "steel"}}, "group-of-another-metal"));
    }
    CHECK_FALSE(asks({{"metal-group", "P8"}, {"material", "304L"}}, "group-of-another-metal"));
    CHECK_FALSE(asks_of({{"units", "in"}}, "undercut d 1/32", "inches-on-millimetres"));
    // The smallest depth that a shipped set limits is measured, in mm as well.
    CHECK_FALSE(asks_of({{"units", "in"}}, "undercut d 0.002", "depth-too-fine"));
    for (const char *rule : {"depth-too-small", "depth-too-fine", "depth-under-limits", "bare-depth"})
        CHECK_FALSE(asks_of(metric, "undercut d 0.05 mm", rule));
}

TEST_CASE("a throat is held against the largest fillet that its exam measured on its side") {
    const CouponRecord coupon = coupon_of({});
    const auto find = [&](const std::string &line, int number, int exam = 1) {
        IndicationRecord out = parse_log_line(line, {}, Unit::inch);
        out.number = number;
        out.exam = exam;
        return out;
    };
    const auto asked = [&](const IndicationRecord &one, const std::vector<IndicationRecord> &others) {
        return rules_of(Plausibility::shipped().of(coupon, one, Exam::VT, others))
            .contains("throat-over-fillet");
    };
    const auto fillet = find("fillet size 0.2in", 1);
    CHECK_FALSE(asked(find("throat 0.15in", 2), {fillet}));
    CHECK(asked(find("throat 3.810001mm", 2), {fillet}));
    // Whichever of them comes last.
    CHECK(asked(fillet, {find("throat 3.810001mm", 2)}));
    CHECK_FALSE(asked(find("throat 0.2in", 2), {fillet, find("fillet size 0.3in", 3)}));
    // Each alone says nothing, nor does another exam, or the other side; itself is not held against itself.
    CHECK_FALSE(asked(find("throat 9in", 2), {}));
    CHECK_FALSE(asked(find("throat 9in", 2, 2), {fillet}));
    CHECK_FALSE(asked(find("throat 9in root", 2), {find("fillet size 0.2in face", 1)}));
    CHECK(asked(find("throat 9in root", 2), {fillet}));
    CHECK_FALSE(asked(find("fillet size 9in", 1), {fillet, find("throat 5in", 2)}));
    CHECK_FALSE(asked(find("pore 0.1in", 3), {fillet, find("throat 9in", 2)}));
}

TEST_CASE("a stretch that is longer than three quarters of the turn is asked about") {
    const std::string rule = "most-of-the-turn";
    CHECK(asks_of(girth, "undercut d .01 from 2:30 to 2:00", rule));
    CHECK(asks_of(girth, "undercut d .01 from 1:00 to 10:01", rule));
    CHECK_FALSE(asks_of(girth, "undercut d .01 from 1:00 to 10:00", rule));
    CHECK_FALSE(asks_of(girth, "undercut d .01 from 11:00 to 1:00", rule));
    CHECK_FALSE(asks_of({{"weld-length", "8 in"}, {"units", "in"}}, "undercut d .01 from 0 to 8", rule));
    const CouponRecord coupon = coupon_of(girth);
    const auto find = read_log_line("uc d .01 from 2:30 to 2:00", coupon.facts().line, Unit::inch).found;
    const auto found = Plausibility::shipped().of(coupon, find, Exam::VT, {});
    REQUIRE(found.size() == 1);
    CHECK_THAT(found[0].reading, says("was it from 2:00 to 2:30?"));
}

TEST_CASE("a stretch from an hour to the same hour is a point or the whole turn") {
    const std::string rule = "point-or-turn";
    CHECK(asks_of(girth, "undercut d .01 from 12:00 to 12:00", rule));
    CHECK(asks_of(girth, "undercut d .01 at 12:00 # nearly all round", rule));
    CHECK_FALSE(asks_of(girth, "undercut d .01 at 12:00", rule));
    CHECK_FALSE(asks_of(girth, "undercut d .01 from 12:00 to 12:01", rule));
    CHECK_FALSE(asks_of({{"weld-length", "8 in"}, {"units", "in"}}, "undercut d .01 from 2 to 2", rule));
    const CouponRecord coupon = coupon_of(girth);
    const auto find = read_log_line("uc d .01 from 12:00 to 12:00", coupon.facts().line, Unit::inch).found;
    const auto found = Plausibility::shipped().of(coupon, find, Exam::VT, {});
    REQUIRE(found.size() == 1);
    CHECK_THAT(found[0].reading, says("what goes all round is written 'l 6.283 in at 12:00'"));
    // What is told to be written is believed.
    for (const char *way : {"uc d .01 l 6.283 in at 12:00", "uc d .01 at 12:00"})
        CHECK(Plausibility::shipped()
                  .of(coupon, read_log_line(way, coupon.facts().line, Unit::inch).found, Exam::VT, {})
                  .empty());
}

TEST_CASE("an exam of long ago is asked about") {
    ExamRecord exam;
    exam.date = parse_day("2011-11-25");
    CHECK(Plausibility::shipped().of(coupon_of({{"welded", "2011-11-20"}}), exam, today).empty());
    exam.date = parse_day("2011-11-24");
    const auto found = Plausibility::shipped().of(coupon_of({{"welded", "2011-11-20"}}), exam, today);
    REQUIRE(found.size() == 1);
    CHECK(found[0].rule == "examined-long-ago");
    CHECK_THAT(found[0].reading, says("examined 2011-11-24: an exam of so long ago"));
}

TEST_CASE("an exam of a weld without a day is held against the day on which its coupon was registered") {
    ExamRecord exam;
    const Day registered = parse_day("2026-11-01");
    const Plausibility &all = Plausibility::shipped();
    exam.date = parse_day("2025-11-01");
    CHECK(all.of(coupon_of({}), exam, today, registered).empty());
    exam.date = parse_day("2025-10-31");
    const auto found = all.of(coupon_of({}), exam, today, registered);
    REQUIRE(found.size() == 1);
    CHECK(found[0].rule == "examined-before-registered");
    CHECK_THAT(found[0].reading, says("more than a year before the coupon was registered"));
    CHECK(all.of(coupon_of({{"welded", "2025-10-30"}}), exam, today, registered).empty());
    exam.date = today;
    CHECK(all.of(coupon_of({}), exam, today, registered).empty());
}

TEST_CASE("what nobody measured is never unlikely") {
    CHECK(Plausibility::shipped().of(coupon_of({}), today).empty());
    CHECK(Plausibility::shipped().of(coupon_of({{"thickness", "0.1 in"}}), today).empty());
    CHECK_FALSE(asks_of({}, "undercut d 5 in", "depth-over-wall"));
    // A wall is held against the radius of a tube alone.
    CHECK_FALSE(asks({{"diameter", "2 in"}, {"thickness", "2 in"}}, "wall-over-radius"));
}

TEST_CASE("a question echoes the reading, and one that was set aside is not asked again") {
    const CouponRecord coupon = coupon_of({{"thickness", "0.065in"}});
    const IndicationRecord find = parse_log_line("crack d 5 at 1", {}, Unit::inch);
    const auto found = Plausibility::shipped().of(coupon, find, Exam::VT);
    REQUIRE(found.size() == 1);
    CHECK(question_of(found[0]) ==
          "is that meant? depth 5 in, thicker member 0.065 in: an imperfection is not "
          "deeper than the metal that it is in (depth-over-wall)");
    CHECK_THROWS_AS(set_aside_by(found, false), Unsure);
    CHECK_THROWS_AS(set_aside_by(found, false, {"size-over-weld"}), Unsure);
    const std::vector<std::string> kept{"depth-over-wall"};
    CHECK(set_aside_by(found, true) == kept);
    CHECK(set_aside_by(found, false, kept) == kept);
    CHECK(set_aside_by({}, true, kept).empty());
    try {
        set_aside_by(found, false);
    } catch (const Unsure &e) {
        CHECK(e.field() == "sure");
        CHECK(e.missing());
    }
}

TEST_CASE("mistakes of such a file are named, and every shipped rule has its reason and standing") {
    const auto first_issue = [](const std::string &rule) {
        Issues issues;
        Plausibility::read("rules:\n  - " + rule + "\n", issues);
        return issues.all().empty() ? std::string("none") : issues.all().front().text;
    };
    const std::string rest = ", why: w, standing: {common practice: none}}";
    CHECK(first_issue("{id: a, about: coupon, expect: layers at most 2" + rest) == "none");
    CHECK_THAT(first_issue("{id: a, about: weld, expect: layers at most 2" + rest),
               says("'weld'; expected coupon, exam or indication"));
    CHECK_THAT(first_issue("{id: a, about: coupon, expect: layrs at most 2" + rest), says("layrs"));
    CHECK_THAT(first_issue("{id: a, about: coupon, expect: joint is groove" + rest),
               says("expected a comparison or a day"));
    CHECK_THAT(first_issue("{id: a, about: coupon, expect: layers at most 2, why: w}"),
               says("'standing' is missing"));
    for (const auto &rule : Plausibility::shipped().rules()) {
        INFO(rule.id);
        CHECK_FALSE(rule.why.empty());
        CHECK(rule.standing.kind == Standing::Kind::common_practice);
    }
}

TEST_CASE("a remark that tells nothing but how many there are, or that they are a group, is asked about") {
    const std::string rule = "remark-tells-several";
    for (const char *said :
         {"four", "x3", "3x", "each toe", "(4)", "both toes", "scattered", "row of 5", "12",
          "smooth, two of them", "two pores", "chain of small pores", "in a row", "a pair", "many"}) {
        INFO(said);
        CHECK(asks_of({}, std::string("pore 0.1 in at 3 in # ") + said, rule));
    }
    for (const char *said : {"toe", "run 2", "seen twice", "one", "1", "left of the tee", "photo 12",
                             "both runs ground flush", "2026", "2 in", "no other"}) {
        INFO(said);
        CHECK_FALSE(asks_of({}, std::string("pore 0.1 in at 3 in # ") + said, rule));
    }
}

TEST_CASE("the plural of what is one find is asked about where it has a size") {
    const std::string rule = "plural-of-one";
    for (const char *line :
         {"pores 0.1 in at 3 in", "inclusions 0.1 in at 3 in", "cracks l 0.1 in at 3 in"}) {
        INFO(line);
        CHECK(asks_of({}, line, rule));
    }
    for (const char *line :
         {"pores at 3 in", "pore 0.1 in at 3 in", "porosity 0.1 in at 3 in", "pore 0.1 in # pores",
          "excessive convexity h 0.1 in", "clustered porosity 0.3 in"}) {
        INFO(line);
        CHECK_FALSE(asks_of({}, line, rule));
    }
}
