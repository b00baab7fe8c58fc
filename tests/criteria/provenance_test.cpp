// What a set that is not shipped says otherwise than the shipped one that it extends.
#include "catch.hpp"
#include "criteria/load.hpp"
#include "criteria/provenance.hpp"
#include "criteria/shipped.hpp"

using namespace beadbook;

namespace {

std::vector<LackingRules> lacking_with(const std::string &more) {
    const Loaded loaded =
        load_criteria("set: shop\ntitle: Shop pieces\nedition: house 2026\nextends: iso-5817\n" + more);
    REQUIRE(loaded.set);
    return lacking_beside_shipped(*loaded.set);
}

} // namespace

TEST_CASE("who cites a set, and is less sure of it, says nothing otherwise") {
    CHECK(lacking_with("cited as: ISO 5817\n").empty());
    CHECK(lacking_with("inherited: {second hand: a transcription}\n").empty());
}

TEST_CASE("who calls read what the shipped set has from memory is told") {
    const std::string &text = shipped_file("aws-d17.1.yaml");
    const auto copy = [&](const std::string &from, const std::string &to) {
        std::string own = text;
        own.replace(own.find("set: aws-d17.1"), 14, "set: shop");
        if (!from.empty()) own.replace(own.find(from), from.size(), to);
        const Loaded loaded = load_criteria(own);
        REQUIRE(loaded.set);
        return lacking_beside_shipped(*loaded.set);
    };
    CHECK(copy("", "").empty());
    const auto surer = copy("{second hand: \"one transcription of Table 7.1\"}", "{read: \"our copy\"}");
    REQUIRE(surer.size() == 1);
    CHECK(surer[0].called_read == std::vector<std::string>{"forbidden"});
    // Who decides what is left to a person there, or asks it of fewer finds.
    const auto decides = copy("allowed: {A: a person decides, B: does not apply, C: does not apply}",
                              "allowed: {A: no limit, B: does not apply, C: does not apply}");
    REQUIRE(decides.size() == 1);
    CHECK(decides[0].decided == std::vector<std::string>{"undercut-mean-A"});
    const auto fewer = copy("depth over 0.002 in, nearest like gap at most L",
                            "depth over 0.002 in, nearest like gap at most 0.001 in");
    REQUIRE(fewer.size() == 1);
    CHECK(fewer[0].asked_otherwise == std::vector<std::string>{"undercut-means-A"});
    // Who need not measure what the shipped set wants measured.
    std::string fillets = shipped_file("cfr-46-56.70-15.yaml");
    fillets.replace(fillets.find("set: cfr-46-56.70-15"), 20, "set: shop");
    fillets.replace(fillets.find("    must be measured: yes\n"), 26, "");
    const Loaded unmeasured = load_criteria(fillets);
    REQUIRE(unmeasured.set);
    const auto less = lacking_beside_shipped(*unmeasured.set);
    REQUIRE(less.size() == 1);
    CHECK(less[0].unmeasured.size() == 1);
    // What it does not speak of at all is not said to be lacking any more.
    const std::string gap =
        "  - text: \"convexity of a weld by class was not read\"\n    types: excessive convexity\n";
    const auto silent = copy(gap, "");
    REQUIRE(silent.size() == 1);
    CHECK(silent[0].unsaid == std::vector<std::string>{"convexity of a weld by class was not read"});
}

TEST_CASE("a copy is known by what its rules say, whatever they are called and cite") {
    std::string own = shipped_file("aws-d17.1.yaml");
    const auto put = [&](const std::string &was, const std::string &now) {
        for (auto at = own.find(was); at != std::string::npos; at = own.find(was, at + now.size()))
            own.replace(at, was.size(), now);
    };
    put("set: aws-d17.1", "set: own-sheet");
    put("title: Fusion welding for aerospace applications, classes A, B and C", "title: Sheet one");
    put("AWS D17.1", "Our sheet");
    put("  - id: ", "  - id: k-");
    put("{id: ", "{id: k-");
    put("blank ", "blank k-");
    put("Table 7.1", "Sheet 1");
    const Loaded loaded = load_criteria(own);
    REQUIRE(loaded.set);
    const auto alike = shipped_alike(*loaded.set);
    REQUIRE(alike.size() == 1);
    CHECK(alike[0]->name == "aws-d17.1");
    CHECK(lacking_beside_shipped(*loaded.set).at(0).asked_otherwise.empty());
    // What is softened is told by the shipped set's own id.
    put("allowed: {A: a person decides, B: does not apply, C: does not apply}",
        "allowed: {A: no limit, B: does not apply, C: does not apply}");
    const Loaded softened = load_criteria(own);
    REQUIRE(softened.set);
    const auto lacking = lacking_beside_shipped(*softened.set);
    REQUIRE(lacking.size() == 1);
    CHECK(lacking[0].asked_otherwise == std::vector<std::string>{"undercut-mean-A", "undercut-means-A",
                                                                 "underfill-mean-A", "underfill-means-A"});
}

TEST_CASE("who leaves out an exam says otherwise what stands under it") {
    const auto lacking = lacking_with("without: [visual]\n");
    REQUIRE(lacking.size() == 1);
    CHECK(lacking[0].parts == std::vector<std::string>{"required exams"});
}

TEST_CASE("who decides what the shipped set leaves open is told, and who leaves the same open is not") {
    const auto of = [](const std::string &more) {
        const Loaded loaded =
            load_criteria("set: shop\ntitle: Shop pieces\nedition: house 2026\nextends: aws-d17.1\n" + more);
        REQUIRE(loaded.set);
        return lacking_beside_shipped(*loaded.set);
    };
    CHECK(of("").empty());
    const auto &gaps = shipped_criteria("aws-d17.1")->gaps;
    std::size_t tried = 0;
    for (const auto &gap : gaps) {
        if (!gap.beside_rules) continue;
        ++tried;
        const auto lacking = of("without:\n  - \"" + gap.text + "\"\n");
        REQUIRE(lacking.size() == 1);
        CHECK(lacking[0].gaps == std::vector<std::string>{gap.text});
    }
    CHECK(tried > 0);
}
