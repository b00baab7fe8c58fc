#include "criteria/shipped.hpp"

#include "criteria/embedded.hpp"

#include <stdexcept>

namespace beadbook {

const std::string &shipped_file(const std::string &name) {
    const auto found = embedded_files().find(name);
    if (found == embedded_files().end()) throw std::out_of_range("no shipped file " + name);
    return found->second;
}

std::vector<std::string> shipped_sets() {
    std::vector<std::string> out;
    const std::string_view ending = ".yaml";
    for (const auto &[name, text] : embedded_files())
        if (name.ends_with(ending) && name != "vocabulary.yaml")
            out.push_back(name.substr(0, name.size() - ending.size()));
    return out;
}

} // namespace beadbook
