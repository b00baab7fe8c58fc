// Sets that load and that an engineer would doubt: each stands in doubtful/, its first line names the check.
#include "catch.hpp"
#include "criteria/doubts.hpp"
#include "criteria/load.hpp"
#include "temporary.hpp"

#include <filesystem>
#include <set>

using namespace beadbook;
using namespace beadbook::test;

namespace {

std::vector<std::filesystem::path> doubtful_files() {
    std::vector<std::filesystem::path> out;
    for (const auto &entry : std::filesystem::directory_iterator(BEADBOOK_SOURCE "/tests/criteria/doubtful"))
        if (entry.path().extension() == ".yaml") out.push_back(entry.path());
    return out;
}

/// "# never-together: a joint is not two things": the check.
std::string expected_in(const std::string &text) {
    REQUIRE(text.starts_with("# "));
    return text.substr(2, text.find(':') - 2);
}

std::string told(const Loaded &loaded, const std::string &text) {
    std::string out;
    for (const auto &issue : loaded.issues) out += print(issue, "set.yaml", text);
    return out;
}

/// The silence that answers the only doubt of a set.
std::string silence_of(const Issue &issue, const std::string &check) {
    std::string of = issue.path.substr(issue.path.find('.') + 1);
    if (issue.path == "gaps") of = "long and short";
    if (check == "gap-on-covered-type") of = "the note on pores was not read";
    if (issue.path == "required exams" || issue.path == "rules") of = "doubtful"; // of the set as a whole
    return "  - {check: " + check + ", of: " + of + ", reason: the standard means it}\n";
}

/// Put in front of what the set is silent on already, if there is anything.
std::string answered(std::string text, const std::string &silence) {
    const std::string key = "silence:\n";
    const std::size_t at = text.find("\n" + key);
    if (at == std::string::npos) return text + key + silence;
    return text.insert(at + 1 + key.size(), silence);
}

} // namespace

TEST_CASE("each doubtful set is told of once, by its check") {
    const auto files = doubtful_files();
    CHECK(files.size() >= 37);
    for (const auto &path : files) {
        const std::string text = read_file(path);
        const std::string check = expected_in(text);
        const Loaded loaded = load_criteria(text);
        INFO(path.filename() << "\n" << told(loaded, text));
        CHECK(loaded.set != nullptr);
        REQUIRE(loaded.issues.size() == 1);
        CHECK(loaded.issues.front().severity == Severity::warning);
        CHECK_THAT(loaded.issues.front().text, Catch::EndsWith("[" + check + "]"));
    }
}

TEST_CASE("each doubt can be answered in the file") {
    for (const auto &path : doubtful_files()) {
        const std::string text = read_file(path);
        const std::string check = expected_in(text);
        const Loaded before = load_criteria(text);
        REQUIRE(before.issues.size() == 1);
        const std::string quiet = answered(text, silence_of(before.issues.front(), check));
        const Loaded after = load_criteria(quiet);
        INFO(path.filename() << "\n" << told(after, quiet));
        CHECK(after.issues.empty());
    }
}

TEST_CASE("a doubt about a clause stands at its line") {
    const std::string text = read_file(BEADBOOK_SOURCE "/tests/criteria/doubtful/ignored-however-large.yaml");
    const Loaded loaded = load_criteria(text);
    REQUIRE(loaded.issues.size() == 1);
    const auto line = static_cast<std::size_t>(loaded.issues[0].where.line);
    std::size_t at = 0;
    for (std::size_t i = 1; i < line; ++i) at = text.find('\n', at) + 1;
    CHECK(text.substr(at).starts_with("  - {id: thick, types: porosity"));
}

TEST_CASE("every check that can be silenced has a doubtful set") {
    std::set<std::string> seen;
    for (const auto &path : doubtful_files()) seen.insert(expected_in(read_file(path)));
    for (const auto &name : check_names()) {
        INFO(name);
        CHECK(seen.contains(name));
    }
}

TEST_CASE("cracks pass where neither a rule nor a gap stops them, and the doubt says where") {
    const auto doubt = [](const std::string &file, const std::string &more) {
        const std::string text = read_file(BEADBOOK_SOURCE "/tests/criteria/doubtful/" + file) + more;
        const Loaded loaded = load_criteria(text);
        REQUIRE(loaded.set != nullptr);
        return told(loaded, text);
    };
    CHECK_THAT(doubt("cracks-over-a-thickness.yaml", ""),
               says("where thinner member over 0.25 in up to 1 in"));
    CHECK_THAT(doubt("cracks-beside-narrow-gap.yaml", ""),
               says("where thinner member over 0.25 in up to 1 in"));
    const std::string thick = "  - {text: what is thick was not read, types: crack, exams: VT, when: T over ";
    CHECK(doubt("cracks-beside-narrow-gap.yaml", thick + "1/4 in}\n").empty());
    CHECK_THAT(doubt("cracks-beside-narrow-gap.yaml", thick + "1/2 in}\n"),
               says("where thinner member over 0.25 in up to 0.5 in"));
}
