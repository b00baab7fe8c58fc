#include "criteria/shipped.hpp"

#include "criteria/embedded.hpp"

#include <algorithm>
#include <stdexcept>

namespace beadbook {

const std::string &shipped_file(const std::string &name) {
    const auto found = embedded_files().find(name);
    if (found == embedded_files().end()) throw std::out_of_range("no shipped file " + name);
    return found->second;
}

std::vector<std::string> shipped_in(const std::string &folder) {
    std::vector<std::string> out;
    const std::string_view ending = ".yaml";
    for (const auto &[name, text] : embedded_files()) {
        if (!name.ends_with(ending) || !name.starts_with(folder)) continue;
        const std::string stem = name.substr(folder.size(), name.size() - folder.size() - ending.size());
        if (stem.find('/') == std::string::npos && stem != "vocabulary" && stem != "plausible" &&
            stem != "nominal-sizes")
            out.push_back(stem);
    }
    std::sort(out.begin(), out.end()); // a file's ending sorts otherwise than no ending
    return out;
}

std::vector<std::string> shipped_sets() { return shipped_in(""); }

} // namespace beadbook
