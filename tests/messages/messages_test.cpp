// What the program says to a mistake: each mistake is a text file in this folder, see README.md.
#include "catch.hpp"
#include "command_file.hpp"

#include <cstdlib>
#include <map>
#include <regex>
#include <sstream>

using namespace beadbook;
using namespace beadbook::test;

namespace {

struct MessageCase {
    std::string told; ///< the mistake, in a sentence
    std::string record = "bench";
    std::map<std::string, std::string> files;
    std::vector<Command> commands;
    int code = -1;
    std::string expected; ///< the whole of standard error
};

/// \xNN stands for a byte that no text file holds.
std::string with_bytes(const std::string &line) {
    std::string out;
    for (std::size_t i = 0; i < line.size(); ++i)
        if (line.compare(i, 2, "\\x") == 0 && i + 3 < line.size()) {
            out += static_cast<char>(std::stoi(line.substr(i + 2, 2), nullptr, 16));
            i += 3;
        } else {
            out += line[i];
        }
    return out;
}

/// Everything above the text that is expected; `head` is what a new expectation leaves as it is.
MessageCase read_case(const std::string &text, std::string &head) {
    MessageCase out;
    std::istringstream lines(text);
    std::string *file = nullptr;
    for (std::string line; out.code < 0 && std::getline(lines, line);) {
        if (line.starts_with("# ")) {
            out.told += line.substr(2) + " ";
        } else if (line.starts_with("record: ")) {
            out.record = line.substr(8);
        } else if (line.starts_with("file: ")) {
            file = &out.files[line.substr(6)];
        } else if (line.starts_with("times: ")) {
            REQUIRE(file);
            const std::string once = *file;
            for (int more = std::stoi(line.substr(7)); more > 1; --more) *file += once;
        } else if (line.starts_with("|")) {
            REQUIRE(file);
            *file += with_bytes(line.substr(line.size() > 1 && line[1] == ' ' ? 2 : 1)) + "\n";
        } else if (line.starts_with("< ")) {
            REQUIRE(!out.commands.empty());
            out.commands.back().input += input_text(line.substr(2));
        } else if (line.starts_with("$ ")) {
            out.commands.push_back({shell_words(line.substr(2)), ""});
        } else if (line.starts_with("code: ")) {
            out.code = std::stoi(line.substr(6));
            break;
        } else {
            FAIL("a line that says nothing: " << line);
        }
        head += line + "\n";
    }
    out.expected = {std::istreambuf_iterator<char>(lines), {}};
    return out;
}

/// The bytes of a record that is made once and copied for every case.
const std::string &prepared(const std::string &name) {
    static std::map<std::string, std::string> made;
    if (const auto found = made.find(name); found != made.end()) return found->second;
    if (name == "none") return made[name];
    const Program run;
    std::istringstream lines(read_file(BEADBOOK_SOURCE "/tests/messages/prepared/" + name + ".txt"));
    std::vector<Command> commands;
    for (std::string line; std::getline(lines, line);)
        if (!line.empty() && !line.starts_with("#")) commands.push_back({shell_words(line), ""});
    const Run last = run_commands(run, commands);
    INFO(last.err);
    REQUIRE(last.code == 0);
    return made[name] = read_file(run.book());
}

/// A case names its files as a user would who stands in their folder.
class Standing {
public:
    explicit Standing(const std::filesystem::path &in) : before_(std::filesystem::current_path()) {
        std::filesystem::current_path(in);
    }
    ~Standing() { std::filesystem::current_path(before_); }
    Standing(const Standing &) = delete;

private:
    std::filesystem::path before_;
};

/// Folders differ from run to run, hashes with every change of a shipped file.
std::string without_names(std::string text, const std::string &folder) {
    for (const auto &[path, mark] : std::vector<std::pair<std::string, std::string>>{
             {folder, "{folder}/"}, {BEADBOOK_SOURCE, "{source}"}})
        for (std::size_t at = 0; (at = text.find(path, at)) != std::string::npos; at += mark.size())
            text.replace(at, path.size(), mark);
    return std::regex_replace(text, std::regex("\\b[0-9a-f]{64}\\b"), "{hash}");
}

void run_case(const std::filesystem::path &path) {
    INFO(path.filename().string());
    std::string head;
    const MessageCase one = read_case(read_file(path.string()), head);
    REQUIRE(!one.told.empty());
    REQUIRE(one.code >= 0);
    const Program run;
    if (one.record != "none") write_file(run.book(), prepared(one.record));
    for (const auto &[name, text] : one.files) write_file(run.file(name), text);
    const Standing there(run.file(""));
    const Run done = run_commands(run, one.commands);
    const std::string said = without_names(done.err, run.file(""));
    if (std::getenv("BEADBOOK_NEW_MESSAGES"))
        write_file(path.string(), head + "code: " + std::to_string(done.code) + "\n" + said);
    INFO("it printed\n" << done.out);
    CHECK(done.code == one.code);
    CHECK(said == one.expected);
}

} // namespace

TEST_CASE("each mistake gets the message that its file holds", "[messages][long]") {
    const auto files = command_files("messages");
    CHECK(files.size() >= 200);
    for (const auto &file : files) run_case(file);
}
