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
    return "silence:\n  - {check: " + check + ", of: " + of + ", reason: the standard means it}\n";
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
        const std::string answered = text + silence_of(before.issues.front(), check);
        const Loaded after = load_criteria(answered);
        INFO(path.filename() << "\n" << told(after, answered));
        CHECK(after.issues.empty());
    }
}

TEST_CASE("every check that can be silenced has a doubtful set") {
    std::set<std::string> seen;
    for (const auto &path : doubtful_files()) seen.insert(expected_in(read_file(path)));
    for (const auto &name : check_names()) {
        INFO(name);
        CHECK(seen.contains(name));
    }
}
