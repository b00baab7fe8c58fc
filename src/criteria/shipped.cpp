#include "criteria/shipped.hpp"

#include "criteria/embedded.hpp"
#include "language/packed_yaml.hpp"

#include <algorithm>
#include <stdexcept>

namespace beadbook {

std::string shipped_file(std::string_view name) {
    for (const auto &file : embedded_files())
        if (file.name == name) return std::string(file.text);
    throw std::out_of_range("no shipped file " + std::string(name));
}

std::optional<std::string_view> packed_tree_of(std::string_view text) {
    for (const auto &file : embedded_files())
        if (!file.tree.empty() && file.text == text) return file.tree;
    return std::nullopt;
}

std::vector<std::string> shipped_in(const std::string &folder) {
    std::vector<std::string> out;
    const std::string_view ending = ".yaml";
    for (const auto &file : embedded_files()) {
        const std::string_view name = file.name;
        if (!name.ends_with(ending) || !name.starts_with(folder)) continue;
        const std::string stem(name.substr(folder.size(), name.size() - folder.size() - ending.size()));
        if (stem.find('/') == std::string::npos && stem != "vocabulary" && stem != "plausible" &&
            stem != "nominal-sizes")
            out.push_back(stem);
    }
    std::sort(out.begin(), out.end()); // a file's ending sorts otherwise than no ending
    return out;
}

const std::vector<std::string> &shipped_sets() {
    static const auto names = shipped_in("");
    return names;
}

} // namespace beadbook
