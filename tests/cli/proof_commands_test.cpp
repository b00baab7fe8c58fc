#include "catch.hpp"
#include "run.hpp"
#include "schema.hpp"
#include "test_coupon.hpp"

#include <nlohmann/json.hpp>

using namespace beadbook;
using namespace beadbook::test;

namespace {

std::string flat_text(std::string text) {
    std::string out;
    for (const char c : text)
        if (c != '\n' && c != ' ')
            out += c;
        else if (!out.empty() && out.back() != ' ')
            out += ' ';
    return out;
}

} // namespace

TEST_CASE("judge and why print what proves an accept, in full on demand and always as JSON", "[proof]") {
    const Program run;
    run.ok({"enrol", "L1"});
    test_coupon(run, "Q-1", "2026-10-05");
    for (const char *command : {"judge", "why"}) {
        const std::string brief = flat_text(run.ok({command, "Q-1"}));
        CHECK_THAT(brief, says("What proves class 3"));
        CHECK_THAT(brief, says("Examined: VT 2026-10-05 by A. Field, level II, none found"));
        CHECK_THAT(brief, says("Nothing was found"));
        CHECK_THAT(brief, says("clauses behind it were read"));
        CHECK_THAT(brief, !says("Examinations that were asked"));
        const std::string whole = flat_text(run.ok({command, "Q-1", "--proof"}));
        CHECK_THAT(whole, says("Examinations that were asked"));
        CHECK_THAT(whole, says("Facts of the coupon that it rests on"));
        const auto json = nlohmann::json::parse(run.ok({command, "Q-1", "--json"}));
        const auto &proof = json.at("classes").back().at("proof");
        CHECK(proof.at("exams").at(0).at("examiner") == "A. Field");
        CHECK(proof.at("facts").at("magnetic") == "yes");
        CHECK(schema_faults(command, json.dump()).empty());
    }
    CHECK(run({"judge", "--all", "--proof"}).code == 2);
    CHECK_THAT(run.ok({"verify", "--replay"}), says("all the same"));
}

TEST_CASE("what is not accepted has no proof to print", "[proof]") {
    const Program run;
    run.ok({"register", "T-1", "--criteria", "mil-hdbk-1890-table-3", "--class", "2"});
    const Run done = run({"judge", "T-1", "--proof"});
    CHECK(done.code == 5);
    CHECK_THAT(done.out, !says("What proves"));
}
