// A program of the build: reads the YAML files that are built in and writes them as C++, read already.
//     beadbook-embed OUTPUT FILES, where FILES has a path a line.
#include "language/packed_yaml.hpp"

#include <fstream>
#include <iostream>
#include <sstream>

namespace beadbook {
/// Nothing is built into this program.
std::optional<std::string_view> packed_tree_of(std::string_view) { return std::nullopt; }
} // namespace beadbook

namespace {

std::string read(const std::string &path) {
    std::ifstream file(path, std::ios::binary);
    std::ostringstream out;
    out << file.rdbuf();
    return out.str();
}

/// As .cmake/embed.cmake names it: below criteria.
std::string name_of(const std::string &path) { return path.substr(path.rfind("/criteria/") + 10); }

} // namespace

int main(int argc, char **argv) {
    if (argc != 3) return 2;
    std::ofstream out(argv[1], std::ios::binary);
    out << "#include \"criteria/embedded.hpp\"\n#include \"language/packed_yaml.hpp\"\n\n#include "
           "<vector>\n\n"
           "namespace beadbook {\n\n"
           "std::optional<std::string_view> packed_tree_of(std::string_view text) {\n"
           "    static const std::vector<std::pair<std::string_view, std::string_view>> trees{\n";
    std::ifstream files(argv[2]);
    for (std::string path; std::getline(files, path);) {
        if (!path.ends_with(".yaml")) continue;
        const std::string text = read(path);
        beadbook::Issues issues;
        const std::string tree = beadbook::packed(beadbook::read_yaml(text, issues));
        for (const auto &issue : issues.all()) std::cerr << beadbook::print(issue, path, text);
        if (issues.any_error()) return 1;
        out << "        {embedded_files().at(\"" << name_of(path) << "\"), R\"beadbook(" << tree
            << ")beadbook\"},\n";
    }
    out << "    };\n    for (const auto &[of, tree] : trees)\n        if (of == text) return tree;\n"
           "    return std::nullopt;\n}\n\n} // namespace beadbook\n";
    return out.flush() ? 0 : 1;
}
