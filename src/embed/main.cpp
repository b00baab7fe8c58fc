// A program of the build: writes the files that are built in as C++, YAML among them read already.
//     beadbook-embed OUTPUT FILES, where FILES has a path a line.
#include "language/packed_yaml.hpp"

#include <algorithm>
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

/// Below the folder that it is of: criteria, records, src/web, or src.
std::string name_of(const std::string &path) {
    std::size_t at = 0;
    for (const std::string folder : {"/criteria/", "/records/", "/src/", "/src/web/"})
        if (const std::size_t found = path.rfind(folder); found != std::string::npos)
            at = std::max(at, found + folder.size());
    return path.substr(at);
}

/// A string_view with its size told, which the compiler need not count. Raw, because as hexadecimal digits it
/// compiles twice as long.
std::string quoted(const std::string &text) {
    return "{R\"beadbook(" + text + ")beadbook\", " + std::to_string(text.size()) + "}";
}

} // namespace

int main(int argc, char **argv) {
    if (argc != 3) return 2;
    std::ofstream out(argv[1], std::ios::binary);
    out << "#include \"criteria/embedded.hpp\"\n\nnamespace beadbook {\n\n"
           "std::span<const EmbeddedFile> embedded_files() {\n    static constexpr EmbeddedFile files[]{\n";
    std::ifstream files(argv[2]);
    for (std::string path; std::getline(files, path);) {
        const std::string text = read(path);
        std::string tree;
        if (path.ends_with(".yaml")) {
            beadbook::Issues issues;
            tree = beadbook::packed(beadbook::read_yaml(text, issues));
            for (const auto &issue : issues.all()) std::cerr << beadbook::print(issue, path, text);
            if (issues.any_error()) return 1;
        }
        out << "        {" << quoted(name_of(path)) << ", " << quoted(text) << ", " << quoted(tree) << "},\n";
    }
    out << "    };\n    return files;\n}\n\n} // namespace beadbook\n";
    return out.flush() ? 0 : 1;
}
