#include "cli/json.hpp"

#include "catch.hpp"
#include "cli/schema.hpp"

namespace beadbook::test {

nlohmann::json json(const Program &run, std::vector<std::string> words, int code, const std::string &input) {
    words.push_back("--json");
    const Run done = run(words, input);
    CAPTURE(done.err);
    REQUIRE(done.code == code);
    CHECK(schema_faults(words[0], done.out) == "");
    return nlohmann::json::parse(done.out);
}

} // namespace beadbook::test
