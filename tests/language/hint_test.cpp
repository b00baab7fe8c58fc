// What people really type is refused with the word that they want.
#include "catch.hpp"
#include "criteria/load.hpp"

using namespace beadbook;

namespace {

std::string refusal(const std::string &when, const std::string &limit) {
    std::string out;
    for (const auto &issue :
         load_criteria(
             "set: s\ntitle: t\nedition: e\nunits: in\nclasses: [A]\nquantities: {T: thinner member}\n"
             "rules:\n  - {id: r, types: porosity, exams: RT, when: '" +
             when + "', measure: size, at most: '" + limit + "', clause: c, standing: {house: x}}\n")
             .issues)
        if (issue.severity == Severity::error) out += issue.text + "\n";
    return out;
}

} // namespace

TEST_CASE("hints for numbers and signs as people type them") {
    const std::vector<std::pair<std::string, std::string>> limits{
        {"2,5 in", "a decimal with a point"},
        {"\u00bd in", "found '\u00bd'"},
        {"\u00bd in", "write '1/2'"},
        {"\u2264 1 in", "write 'at most'"},
        {"2T", "write 'x' between a number and a name"},
        {"10 % of T", "write 'x', as in 10 % x T"},
        {"2 \u00d7 T", "write 'x'"},
        {"0.060", "a unit is missing"},
        {"t/3", "did you mean 'T'?"},
    };
    for (const auto &[limit, hint] : limits) {
        const std::string text = refusal("T over 0 in", limit);
        INFO(limit << ": " << text);
        CHECK(text.find(hint) != std::string::npos);
    }
    const std::vector<std::pair<std::string, std::string>> conditions{
        {"T > 1/8 in", "write 'over'"},     {"T \u2265 1/8 in", "write 'at least'"},
        {"T <= 1/8 in", "write 'at most'"}, {"T < 1/8 in", "write 'under'"},
        {"joint = groove", "write 'is'"},   {"T between 1 in and 2 in", "write 'from ... to ...'"},
    };
    for (const auto &[when, hint] : conditions) {
        const std::string text = refusal(when, "1 in");
        INFO(when << ": " << text);
        CHECK(text.find(hint) != std::string::npos);
    }
    // What is right gets none.
    CHECK(refusal("T over 1/8 in to 2 in", "lesser of 2 x T and 2.5 in").empty());
}
