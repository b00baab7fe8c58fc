// The planner against a plain search: every coupon of the words and sizes, every set of coupons by number, on
// work that is sampled finely instead of being cut at edges.
#include "catch.hpp"
#include "qualify/plan.hpp"
#include "qualify/set_cover.hpp"

#include <cstdlib>
#include <functional>
#include <random>

using namespace beadbook;

namespace {

struct Small {
    std::string text;
    std::vector<Weld> samples; ///< welds of the work
    std::vector<Weld> tests;   ///< all coupons that could be welded
};

const std::vector<std::string> test_positions{"1G", "2G", "3G", "4G"}, work_positions{"F", "H", "V", "O"};
constexpr std::int64_t thou = 25'400;

/// A few sheet welds of few thicknesses (in thousandths of an inch), and three thicknesses in stock.
Small random_work(std::mt19937 &random) {
    const auto pick = [&](int from, int to) { return std::uniform_int_distribution<int>(from, to)(random); };
    Small out;
    std::vector<int> stock;
    for (int i = 0; i < 3; ++i) stock.push_back(pick(20, 120));
    out.text = "rules: mil-std-1595a\nunits: in\nstock: {thickness: [";
    for (const int s : stock) out.text += std::to_string(s) + " thou, ";
    out.text += "]}\nwork:\n";
    out.text.replace(out.text.find(", ]"), 3, "]");
    const int jobs = pick(1, 4);
    for (int j = 0; j < jobs; ++j) {
        const int from = pick(15, 200), to = from + pick(0, 150);
        const std::string joint = pick(0, 3) == 0 ? "fillet" : "groove";
        out.text += "  - {id: j" + std::to_string(j) + ", joint: " + joint +
                    ", form: sheet, process: GTAW, metal group: I, thickness: " + std::to_string(from) +
                    " thou to " + std::to_string(to) + " thou, position: [";
        std::string positions;
        for (const auto &p : work_positions) {
            if (pick(0, 1) == 0 && !(positions.empty() && p == "O")) continue;
            positions += (positions.empty() ? "" : ", ") + p;
            for (int t = from * 10; t <= to * 10; ++t) { // every ten-thousandth of an inch
                Weld w;
                w.word(Trait::joint) = joint;
                w.word(Trait::form) = "sheet";
                w.word(Trait::process) = "GTAW";
                w.word(Trait::metal_group) = "I";
                w.word(Trait::position) = p;
                w.size(Trait::thickness) = Exact(t * thou / 10);
                out.samples.push_back(std::move(w));
            }
        }
        out.text += positions + "]}\n";
    }
    for (const std::string joint : {"groove", "fillet"})
        for (std::string position : test_positions)
            for (const int s : stock) {
                if (joint == "fillet") position[1] = 'F';
                Weld w;
                w.word(Trait::joint) = joint;
                w.word(Trait::form) = "sheet";
                w.word(Trait::process) = "GTAW";
                w.word(Trait::metal_group) = "I";
                w.word(Trait::position) = position;
                w.size(Trait::thickness) = Exact(s * thou);
                out.tests.push_back(std::move(w));
            }
    return out;
}

/// The smallest number of tests that cover all that any of them covers, by trying one number after the other.
std::size_t fewest(const std::vector<Bits> &covers, const Bits &all, std::size_t most) {
    for (std::size_t n = 0; n <= most; ++n) {
        const std::function<bool(std::size_t, std::size_t, Bits)> found = [&](std::size_t from,
                                                                              std::size_t left, Bits have) {
            if (have == all) return true;
            if (left == 0) return false;
            for (std::size_t c = from; c < covers.size(); ++c)
                if (found(c + 1, left - 1, have | covers[c])) return true;
            return false;
        };
        if (found(0, n, Bits(all.size()))) return n;
    }
    return most + 1;
}

/// A few groove welds of tubes, and three walls and diameters in stock, of which some make no tube together.
Small random_tubes(std::mt19937 &random) {
    const auto pick = [&](int from, int to) { return std::uniform_int_distribution<int>(from, to)(random); };
    const auto weld_of = [](const std::string &form, const std::string &position) {
        Weld w;
        w.word(Trait::joint) = "groove";
        w.word(Trait::form) = form;
        w.word(Trait::process) = "GTAW";
        w.word(Trait::metal_group) = "P1";
        w.word(Trait::filler_group) = "F6";
        w.word(Trait::backing) = "without";
        w.word(Trait::position) = position;
        return w;
    };
    const auto listed_stock = [](const std::vector<int> &all) {
        std::string out;
        for (const int one : all) out += (out.empty() ? "" : ", ") + std::to_string(one) + " thou";
        return out;
    };
    Small out;
    std::vector<int> welds, diameters;
    for (int i = 0; i < 3; ++i) {
        welds.push_back(pick(50, 490));
        diameters.push_back(pick(200, 4000));
    }
    out.text = "rules: asme-ix\nunits: in\nstock: {weld thickness: [" + listed_stock(welds) +
               "], diameter: [" + listed_stock(diameters) + "]}\nwork:\n";
    const int jobs = pick(1, 4);
    for (int j = 0; j < jobs; ++j) {
        const int weld = pick(40, 900), diameter = pick(2 * weld + 1, 5000);
        out.text += "  - {id: j" + std::to_string(j) +
                    ", joint: groove, form: tube, process: GTAW, metal group: P1, filler group: F6, "
                    "backing: without, position: H, weld thickness: " +
                    std::to_string(weld) + " thou, diameter: " + std::to_string(diameter) + " thou}\n";
        Weld w = weld_of("tube", "H");
        w.size(Trait::weld_thickness) = Exact(weld * thou);
        w.size(Trait::diameter) = Exact(diameter * thou);
        out.samples.push_back(std::move(w));
    }
    for (const int weld : welds) {
        Weld plate = weld_of("plate", "2G");
        plate.size(Trait::weld_thickness) = Exact(weld * thou);
        out.tests.push_back(std::move(plate));
        for (const int diameter : diameters) {
            if (2 * weld >= diameter) continue;
            Weld w = weld_of("tube", "2G");
            w.size(Trait::weld_thickness) = Exact(weld * thou);
            w.size(Trait::diameter) = Exact(diameter * thou);
            out.tests.push_back(std::move(w));
        }
    }
    return out;
}

void check_against_plain_search(const Small &small, const RangeRules &rules) {
    INFO(small.text);
    const LoadedWork loaded = load_work(small.text, "", shipped_range_rules);
    REQUIRE(loaded.work);
    const Plan plan = plan_tests(*loaded.work);
    const auto bits_of = [&](const Weld &test) {
        const auto range = range_of(rules, test);
        Bits out(small.samples.size());
        for (std::size_t s = 0; s < small.samples.size(); ++s)
            out[s] = covers(range, small.samples[s]).covered == Truth::yes;
        return out;
    };
    std::vector<Bits> covers;
    Bits all(small.samples.size());
    for (const auto &test : small.tests) {
        covers.push_back(bits_of(test));
        all |= covers.back();
    }
    Bits planned(small.samples.size());
    for (const auto &coupon : plan.coupons) planned |= bits_of(coupon.test);
    CHECK((all - planned).none());
    CHECK(plan.minimal);
    CHECK(plan.at_least == plan.coupons.size());
    // Fewer for the samples would mean fewer for the work, unless a need lies between two samples.
    if (plan.coupons.size() <= 5) CHECK(fewest(covers, all, plan.coupons.size()) == plan.coupons.size());
    CHECK((plan.uncovered.empty() == all.all()));
}

int rounds_asked() {
    const char *given = std::getenv("BEADBOOK_RANDOM_PLANS");
    return given ? std::atoi(given) : 30;
}

} // namespace

TEST_CASE("no plain search finds fewer coupons, and the plan covers all that can be covered",
          "[properties][long]") {
    std::mt19937 random(20261125);
    const auto rules = shipped_range_rules("mil-std-1595a");
    for (int round = 0; round < rounds_asked(); ++round)
        check_against_plain_search(random_work(random), *rules);
}

TEST_CASE("nor does one of tubes, of which only those count that can be made", "[properties]") {
    std::mt19937 random(20261128);
    const auto rules = shipped_range_rules("asme-ix");
    for (int round = 0; round < rounds_asked(); ++round)
        check_against_plain_search(random_tubes(random), *rules);
}
