#include "operations/program_beside.hpp"

#include <filesystem>
#include <system_error>
#include <unistd.h>

namespace beadbook {

std::string program_beside(const std::string &name) {
    std::error_code error;
    const auto own = std::filesystem::read_symlink("/proc/self/exe", error).parent_path();
    for (const auto &folder : {own, own / "../libexec/beadbook"})
        if (const auto path = folder / name; access(path.c_str(), X_OK) == 0) return path.string();
    return "";
}

} // namespace beadbook
