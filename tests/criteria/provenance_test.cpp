// What a set that is not shipped says otherwise than the shipped one that it extends.
#include "catch.hpp"
#include "criteria/load.hpp"
#include "criteria/provenance.hpp"

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
