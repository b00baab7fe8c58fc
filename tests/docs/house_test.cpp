// How the house is built: which folder may include which, who may use which library, how long a file is.
#include "catch.hpp"
#include "temporary.hpp"

#include <algorithm>
#include <filesystem>
#include <map>
#include <regex>
#include <set>
#include <sstream>

using namespace beadbook::test;

namespace {

/// From the ground up. A file includes only from its own folder and from floors below; folders of one floor
/// do not know each other.
const std::vector<std::vector<std::string>> floors{
    {"measure"},
    {"language"},
    {"criteria", "embed"},
    {"judge"},
    {"qualify", "technique"},
    {"facts"},
    {"records"},
    {"operations"},
    {"report"},
    {"render"},
    {"web", "terminal"},
    {"prompt"},
    {"cli"},
    {"pages"},
};
/// A program of its own: it includes nothing of the others, and none of them includes it.
const std::string apart = "solver";

/// The command line, which alone knows how it spells a field.
const std::set<std::string> shells{"terminal", "prompt", "cli", "pages"};

constexpr std::size_t most_lines = 400;

enum class Rule { length, floor, circle, program_options, http, json, stream_header, option_in_text };

/// What does not hold yet. Whoever mends one takes its row out: a row without need fails the test.
const std::set<std::pair<Rule, std::string>> exceptions{
    // The bounds of what the two programs say to each other, which both must know.
    {Rule::floor, "operations/outside_solver.cpp"},
    // How nginx and the bench find each other: a file of these two, and no part of any record.
    {Rule::json, "web/tablet_door.cpp"},
    // The words of another program, chromium, which it starts.
    {Rule::option_in_text, "render/pdf_printer.cpp"},
};

struct Source {
    std::string path; ///< below src: "judge/judge.cpp"
    std::string text;
};

/// Where a rule is broken: the file, and a word about it.
using Breaches = std::multimap<std::string, std::string>;

std::string folder(const std::string &path) { return path.substr(0, path.find('/')); }

/// Floor of a folder from 0, or -1 if there is none.
int floor_of(const std::string &name) {
    for (std::size_t i = 0; i < floors.size(); ++i)
        if (std::find(floors[i].begin(), floors[i].end(), name) != floors[i].end())
            return static_cast<int>(i);
    return -1;
}

/// What follows each #include, with its quotes or brackets.
std::vector<std::string> includes(const std::string &text) {
    std::vector<std::string> out;
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);) {
        const std::size_t at = line.find_first_not_of(" \t");
        if (at == std::string::npos || line[at] != '#') continue;
        const std::size_t word = line.find_first_not_of(" \t", at + 1);
        if (word == std::string::npos || line.compare(word, 7, "include") != 0) continue;
        const std::size_t begin = line.find_first_of("\"<", word);
        if (begin == std::string::npos) continue;
        const std::size_t end = line.find(line[begin] == '<' ? '>' : '"', begin + 1);
        out.push_back(line.substr(begin, end == std::string::npos ? end : end - begin + 1));
    }
    return out;
}

/// Those of our own, as paths below src.
std::vector<std::string> own_includes(const Source &source) {
    std::vector<std::string> out;
    for (const auto &one : includes(source.text))
        if (one.front() == '"') out.push_back(one.substr(1, one.size() - 2));
    return out;
}

Breaches too_long(const std::vector<Source> &sources) {
    Breaches out;
    for (const auto &s : sources) {
        const auto lines = static_cast<std::size_t>(std::count(s.text.begin(), s.text.end(), '\n'));
        if (lines > most_lines) out.emplace(s.path, std::to_string(lines) + " lines");
    }
    return out;
}

Breaches upward(const std::vector<Source> &sources) {
    Breaches out;
    for (const auto &s : sources) {
        const std::string here = folder(s.path);
        if (here != apart && floor_of(here) < 0) out.emplace(s.path, "stands on no floor");
        for (const auto &include : own_includes(s)) {
            const std::string there = folder(include);
            if (here == there) continue;
            if (here == apart || floor_of(there) < 0 || floor_of(there) >= floor_of(here))
                out.emplace(s.path, "includes " + include);
        }
    }
    return out;
}

Breaches circles(const std::vector<Source> &sources) {
    std::map<std::string, std::vector<std::string>> next;
    for (const auto &s : sources) next[s.path] = own_includes(s);
    Breaches out;
    std::set<std::string> done, open;
    const auto visit = [&](const auto &self, const std::string &path) -> void {
        if (done.count(path) > 0) return;
        open.insert(path);
        for (const auto &include : next[path])
            if (open.count(include) > 0)
                out.emplace(path, "comes back to " + include);
            else
                self(self, include);
        open.erase(path);
        done.insert(path);
    };
    for (const auto &s : sources) visit(visit, s.path);
    return out;
}

/// Files that hold `word` though their path begins with none of `allowed`.
Breaches word_outside(const std::vector<Source> &sources, const std::string &word,
                      const std::vector<std::string> &allowed) {
    Breaches out;
    for (const auto &s : sources)
        if (s.text.find(word) != std::string::npos &&
            std::none_of(allowed.begin(), allowed.end(),
                         [&](const std::string &begin) { return s.path.starts_with(begin); }))
            out.emplace(s.path, "holds " + word);
    return out;
}

/// Below the shells nothing is printed, so no header there knows a stream, and the report has none at all.
Breaches stream_headers(const std::vector<Source> &sources) {
    const std::set<std::string> streams{"<ostream>", "<iostream>", "<istream>", "<fstream>", "<sstream>"};
    Breaches out;
    for (const auto &s : sources) {
        if (!s.path.ends_with(".hpp") || folder(s.path) == apart ||
            floor_of(folder(s.path)) > floor_of("report"))
            continue;
        for (const auto &include : includes(s.text))
            if (streams.count(include) > 0) out.emplace(s.path, "includes " + include);
    }
    return out;
}

/// A library does not know how the command line spells a field.
Breaches options_in_texts(const std::vector<Source> &sources) {
    static const std::regex option(R"re("[^"\n]*--[a-z][^"\n]*")re");
    Breaches out;
    for (const auto &s : sources) {
        if (shells.count(folder(s.path)) > 0 || folder(s.path) == apart) continue;
        std::istringstream lines(s.text);
        for (std::string line; std::getline(lines, line);) {
            std::smatch found;
            const bool comment = line.find_first_not_of(" \t") == line.find("//");
            if (!comment && std::regex_search(line, found, option))
                out.emplace(s.path, "says " + found.str());
        }
    }
    return out;
}

std::vector<Source> all_sources() {
    const std::filesystem::path root(BEADBOOK_SOURCE "/src");
    std::vector<Source> out;
    for (const auto &file : std::filesystem::recursive_directory_iterator(root))
        if (file.path().extension() == ".hpp" || file.path().extension() == ".cpp")
            out.push_back({file.path().lexically_relative(root).generic_string(), read_file(file.path())});
    return out;
}

Breaches breaches_of(Rule rule, const std::vector<Source> &sources) {
    switch (rule) {
    case Rule::length: return too_long(sources);
    case Rule::floor: return upward(sources);
    case Rule::circle: return circles(sources);
    case Rule::program_options:
        return word_outside(sources, "boost/program_options", {"terminal/options.cpp"});
    case Rule::http: return word_outside(sources, "httplib.h", {"web/server.cpp"});
    case Rule::json: return word_outside(sources, "nlohmann", {"records/codecs/", "render/"});
    case Rule::stream_header: return stream_headers(sources);
    case Rule::option_in_text: break;
    }
    return options_in_texts(sources);
}

} // namespace

TEST_CASE("the house keeps its rules, but for the exceptions that are listed") {
    const auto sources = all_sources();
    REQUIRE(sources.size() > 150);
    std::set<std::pair<Rule, std::string>> needed;
    for (const Rule rule : {Rule::length, Rule::floor, Rule::circle, Rule::program_options, Rule::http,
                            Rule::json, Rule::stream_header, Rule::option_in_text})
        for (const auto &[path, what] : breaches_of(rule, sources)) {
            needed.emplace(rule, path);
            INFO("src/" << path << " " << what);
            CHECK(exceptions.count({rule, path}) == 1);
        }
    for (const auto &exception : exceptions) {
        INFO("src/" << exception.second << " keeps the rule now: take it out of the exceptions");
        CHECK(needed.count(exception) == 1);
    }
}

TEST_CASE("each rule of the house sees a breach of it") {
    const std::string include = "#include ";
    const auto broken = [](Rule rule, std::vector<Source> sources) {
        std::vector<std::string> out;
        for (const auto &[path, what] : breaches_of(rule, sources)) out.push_back(path + " " + what);
        return out;
    };
    using Found = std::vector<std::string>;
    CHECK(broken(Rule::length, {{"judge/a.cpp", std::string(400, '\n')}}).empty());
    CHECK(broken(Rule::length, {{"judge/a.cpp", std::string(401, '\n')}}) == Found{"judge/a.cpp 401 lines"});

    CHECK(
        broken(Rule::floor, {{"facts/a.cpp", include + "\"judge/b.hpp\"\n" + include + "\"facts/c.hpp\"\n"}})
            .empty());
    CHECK(broken(Rule::floor, {{"judge/a.cpp", "  #  include \"facts/b.hpp\" // why\n"}}) ==
          Found{"judge/a.cpp includes facts/b.hpp"});
    CHECK(broken(Rule::floor, {{"qualify/a.cpp", include + "\"technique/b.hpp\"\n"}}).size() == 1);
    CHECK(broken(Rule::floor, {{"solver/a.cpp", include + "\"measure/b.hpp\"\n"}}).size() == 1);
    CHECK(broken(Rule::floor, {{"cli/a.cpp", include + "\"solver/b.hpp\"\n"}}).size() == 1);
    CHECK(broken(Rule::floor, {{"solver/a.cpp", include + "\"solver/b.hpp\"\n" + include + "<vector>\n"}})
              .empty());
    CHECK(broken(Rule::floor, {{"attic/a.cpp", ""}}) == Found{"attic/a.cpp stands on no floor"});

    CHECK(broken(Rule::circle, {{"a/a.hpp", include + "\"a/b.hpp\"\n" + include + "\"a/c.hpp\"\n"},
                                {"a/b.hpp", include + "\"a/c.hpp\"\n"},
                                {"a/c.hpp", ""}})
              .empty());
    CHECK(broken(Rule::circle, {{"a/a.hpp", include + "\"a/b.hpp\"\n"},
                                {"a/b.hpp", include + "\"a/c.hpp\"\n"},
                                {"a/c.hpp", include + "\"a/a.hpp\"\n"}}) ==
          Found{"a/c.hpp comes back to a/a.hpp"});
    CHECK(broken(Rule::circle, {{"a/a.hpp", include + "\"a/a.hpp\"\n"}}).size() == 1);

    const std::string po = include + "<boost/program_options.hpp>\n", json = "nlohmann::json x;\n";
    CHECK(broken(Rule::program_options, {{"terminal/options.cpp", po}}).empty());
    CHECK(broken(Rule::program_options, {{"terminal/options.hpp", po}, {"terminal/run.cpp", po}}).size() ==
          2);
    const std::string http = include + "<httplib.h>\n";
    CHECK(broken(Rule::http, {{"web/server.cpp", http}}).empty());
    CHECK(broken(Rule::http, {{"web/server.hpp", http}, {"cli/run.cpp", http}}).size() == 2);
    CHECK(broken(Rule::json, {{"records/codecs/a.cpp", json}, {"render/json_a.hpp", json}}).empty());
    CHECK(broken(Rule::json, {{"records/a.cpp", json}, {"cli/a.cpp", json}, {"facts/a.hpp", json}}).size() ==
          3);

    CHECK(broken(Rule::stream_header, {{"report/a.hpp", include + "<ostream>\n"}}).size() == 1);
    CHECK(broken(Rule::stream_header, {{"judge/a.cpp", include + "<sstream>\n"}}).empty());
    CHECK(broken(Rule::stream_header, {{"cli/a.hpp", include + "<ostream>\n"}}).empty());

    CHECK(broken(Rule::option_in_text, {{"operations/a.cpp", "refused(\"give --why\");\n"}}) ==
          Found{"operations/a.cpp says \"give --why\""});
    CHECK(broken(Rule::option_in_text,
                 {{"operations/a.cpp", "// \"--why\"\n--count; \"a -- b\"; x = \"-\";\n"}})
              .empty());
    CHECK(broken(Rule::option_in_text, {{"cli/a.cpp", "\"--why\"\n"}}).empty());
}
